import type { Judge } from '../../model/detector.js';
import { conditionsOf, exposuresOf } from '../shared/exposure.js';
import { judgeZones, symptomOf } from '../shared/judge-zones.js';
import { burstStarts, opensOf } from '../shared/opens.js';
import { rateFacts } from '../shared/rate-facts.js';

export interface OpensByHeatSettings {
  /** With less time on one side, the sides cannot be compared (own choice). */
  readonly fewestHoursEachSide: number;
}

/**
 * Opens per hour near operating temperature against opens per hour clearly below it. A crack in the element opens as
 * it expands and closes on cooling. Bursts count once. The counts while hot and standing show whether heat alone
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
      const own = opensOf(evidence)[zone.index]!.filter((open) => open.othersAtOnceCount < 2);
      const known = own.filter((open) => !Number.isNaN(open.hot));
      if (known.length === 0) return [];
      const bursts = burstStarts(known);
      const hotBursts = bursts.filter((open) => open.hot === 1).length;
      const rates = rateFacts(
        { events: hotBursts, exposure: exposure.hotHours },
        { events: bursts.length - hotBursts, exposure: exposure.coldHours },
      );
      const hot = known.filter((open) => open.hot === 1);
      const hotStopped = hot.filter((open) => open.runningShare < 0.5).length;
      return [
        symptomOf('opens-by-heat', known[0]!.startMs, known.at(-1)!.endMs, known.length, {
          hotCount: hot.length,
          coldCount: known.length - hot.length,
          hotBurstCount: hotBursts,
          coldBurstCount: bursts.length - hotBursts,
          hotHours: exposure.hotHours,
          coldHours: exposure.coldHours,
          hotOpensPerHour: hot.length / exposure.hotHours,
          coldOpensPerHour: (known.length - hot.length) / exposure.coldHours,
          hotShare: hot.length / known.length,
          exposureHotShare: exposure.hotHours / (exposure.hotHours + exposure.coldHours),
          hotStoppedCount: hotStopped,
          hotStoppedHours: exposure.hotStoppedHours,
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
