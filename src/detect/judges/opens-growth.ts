import type { Judge } from '../../model/detector.js';
import { DAY_MS, HOUR_MS } from '../../model/time-units.js';
import { burstiness, dispersion } from '../../maths/dispersion.js';
import { mannKendall } from '../../maths/mann-kendall.js';
import { judgeZones, symptomOf } from '../shared/basics/judge-zones.js';
import { mainLifeOf, opensIn, untilLong, type Life } from '../shared/opens/repair-lives.js';
import { burstStarts } from '../shared/opens/opens.js';
import { ownOpensOf } from '../shared/opens/own-opens.js';
import { exposureBetween } from '../shared/readings/exposure.js';
import { rateFacts } from '../shared/opens/rate-facts.js';

export interface OpensGrowthSettings {
  /** Shorter lives have no first and last days (own choice). */
  readonly fewestHours: number;
}

/**
 * Whether opens become more: first half against second half of the zone's life, up to the first long open, by the
 * hours in which it gave readings; and how they bunch together.
 */
export const opensGrowth: Judge<OpensGrowthSettings> = {
  meta: {
    id: 'opens-growth',
    sees: 'opens that become more from day to day, or come in bursts',
    needs: ['reading'],
    source:
      'Exact conditional test of two Poisson rates; Mann–Kendall trend of daily counts; burstiness (σ − μ)/(σ + μ) of the times between opens (Goh & Barabási 2008, from memory).',
    defaults: { fewestHours: 24 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'opens-growth', (zone) => {
      const own = ownOpensOf(evidence)[zone.index]!;
      const life = untilLong(mainLifeOf(evidence, zone), own);
      const hours = (life.endMs - life.startMs) / HOUR_MS;
      if (hours < settings.fewestHours) {
        return `Zone ${zone.name}: ${hours.toFixed(1)} h up to the first long open or repair, needed ${settings.fewestHours}.`;
      }
      const opens = opensIn(own, life);
      if (opens.length < 2) return [];
      const middleMs = (life.startMs + life.endMs) / 2;
      const starts = opens.map((open) => open.startMs);
      const bursts = burstStarts(opens).map((open) => open.startMs);
      const hoursBetween = (fromMs: number, toMs: number) =>
        exposureBetween(evidence, zone.index, fromMs, toMs).loggedHours;
      const firstHours = hoursBetween(life.startMs, middleMs);
      const lastHours = hoursBetween(middleMs, life.endMs);
      const lastBursts = bursts.filter((ms) => ms >= middleMs).length;
      const rates = rateFacts(
        { events: lastBursts, exposure: lastHours },
        { events: bursts.length - lastBursts, exposure: firstHours },
      );
      const lastCount = starts.filter((ms) => ms >= middleMs).length;
      const daily = countsPerDay(starts, life);
      const spread = dispersion(daily);
      return [
        symptomOf('opens-growth', starts[0]!, starts.at(-1)!, opens.length, {
          firstCount: opens.length - lastCount,
          lastCount,
          firstHours,
          lastHours,
          rateRatio: rates.ratio,
          rateLowRatio: rates.lowRatio,
          growthPValue: rates.higherPValue,
          burstCount: bursts.length,
          opensPerBurstRatio: opens.length / bursts.length,
          burstinessRatio: burstiness(starts),
          dispersionRatio: spread.index,
          dispersionPValue: spread.pHigher,
          daysWithOpensCount: daily.filter((count) => count > 0).length,
          dayCount: daily.length,
          trendPValue: daily.length >= 4 ? mannKendall(daily).pTwoSided : NaN,
          trendSignRatio: daily.length >= 4 ? Math.sign(mannKendall(daily).s) : NaN,
        }),
      ];
    });
  },
};

/** By parts of the life that are alike and about a day long: a last part of hours would count as a quiet day. */
function countsPerDay(startsMs: readonly number[], life: Life): number[] {
  const lifeMs = life.endMs - life.startMs;
  const days = new Array<number>(Math.max(1, Math.round(lifeMs / DAY_MS))).fill(0);
  for (const ms of startsMs) {
    days[Math.min(days.length - 1, Math.floor(((ms - life.startMs) / lifeMs) * days.length))]!++;
  }
  return days;
}
