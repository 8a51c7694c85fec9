import type { Judge } from '../../model/detector.js';
import { conditionsOf, exposureBetween, exposuresOf, stood } from '../shared/readings/exposure.js';
import { judgeZones, symptomOf } from '../shared/basics/judge-zones.js';
import { burstStarts } from '../shared/opens/opens.js';
import { ownOpensOf } from '../shared/opens/own-opens.js';
import { rateFacts } from '../shared/opens/rate-facts.js';
import { openSpanOf } from '../shared/opens/repair-lives.js';

export interface OpensByHeatSettings {
  /** With less time on one side, the sides cannot be compared (own choice). */
  readonly fewestHoursEachSide: number;
}

/**
 * Opens per hour near operating temperature against opens per hour clearly below it. A crack in the element opens as
 * it expands and closes on cooling. Only the time from the first open to the long one, or to the end, counts; bursts
 * count once. The counts while hot and standing show whether heat alone
 * brings the opens, or the machine that runs only when it is hot.
 */
export const opensByHeat: Judge<OpensByHeatSettings> = {
  meta: {
    id: 'opens-by-heat',
    sees: 'whether opens come more often near operating temperature than cold',
    needs: ['reading'],
    source: 'Exact conditional test of two Poisson rates (Przyborowski & Wilenski 1940, from memory).',
    defaults: { fewestHoursEachSide: 2 },
  },
  judge(evidence, { fewestHoursEachSide }) {
    const exposures = exposuresOf(evidence);
    const conditions = conditionsOf(evidence);
    return judgeZones(evidence, 'opens-by-heat', (zone) => {
      const exposure = exposures[zone.index]!;
      const lessHours = Math.min(exposure.hotHours, exposure.coldHours);
      if (lessHours < fewestHoursEachSide) {
        return `Zone ${zone.name}: ${lessHours.toFixed(1)} h on the lesser side of hot and cold, needed ${fewestHoursEachSide}.`;
      }
      const own = ownOpensOf(evidence)[zone.index]!;
      const known = own.filter((open) => !Number.isNaN(open.hot));
      const span = openSpanOf(evidence, zone, known);
      if (!span) return [];
      const { opens } = span;
      const within = exposureBetween(evidence, zone.index, span.fromMs, span.toMs);
      const bursts = burstStarts(opens);
      const hotBursts = bursts.filter((open) => open.hot === 1).length;
      const rates = rateFacts(
        { events: hotBursts, exposure: within.hotHours },
        { events: bursts.length - hotBursts, exposure: within.coldHours },
      );
      const hot = opens.filter((open) => open.hot === 1);
      const hotStopped = hot.filter((open) => stood(open.runningShare)).length;
      return [
        symptomOf('opens-by-heat', span.fromMs, opens.at(-1)!.endMs, opens.length, {
          hotCount: hot.length,
          coldCount: opens.length - hot.length,
          hotBurstCount: hotBursts,
          coldBurstCount: bursts.length - hotBursts,
          hotHours: within.hotHours,
          coldHours: within.coldHours,
          hotOpensPerHour: hot.length / within.hotHours,
          coldOpensPerHour: (opens.length - hot.length) / within.coldHours,
          hotShare: hot.length / opens.length,
          exposureHotShare: within.hotHours / (within.hotHours + within.coldHours),
          hotStoppedCount: hotStopped,
          hotStoppedHours: within.hotStoppedHours,
          rateRatio: rates.ratio,
          rateLowRatio: rates.lowRatio,
          hotHigherPValue: rates.higherPValue,
          hotLowerPValue: rates.lowerPValue,
          hotFromDegC: conditions[zone.index]!.hotFromDegC,
        }),
      ];
    });
  },
};
