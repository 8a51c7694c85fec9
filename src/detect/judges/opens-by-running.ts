import type { Judge } from '../../model/detector.js';
import { conditionsOf, exposuresOf } from '../shared/exposure.js';
import { judgeZones, symptomOf } from '../shared/judge-zones.js';
import { burstStarts, opensOf, type Open } from '../shared/opens.js';
import { rateFacts } from '../shared/rate-facts.js';

export interface OpensByRunningSettings {
  /** With less time on one side, the sides cannot be compared (own choice). */
  readonly fewestHoursEachSide: number;
}

/** An open counts for the side on which the machine was for at least half of its first period. */
const isRunning = (open: Open): boolean => open.runningShare >= 0.5;

/**
 * Opens per running hour against opens per stopped hour. A moving cable opens while the machine moves; a cracked
 * element does not care. Like is compared with like: the test is made on hot hours alone where the zone was both, since
 * a machine runs only when it is hot. Bursts count once, for opens of one burst are not independent.
 */
export const opensByRunning: Judge<OpensByRunningSettings> = {
  meta: {
    id: 'opens-by-running',
    sees: 'whether opens come more often while the machine runs than while it stands',
    needs: ['reading', 'running'],
    source: 'Exact conditional test of two Poisson rates (Przyborowski & Wilenski 1940, from memory).',
    defaults: { fewestHoursEachSide: 2 },
  },
  judge(evidence, { fewestHoursEachSide }) {
    const exposures = exposuresOf(evidence);
    const conditions = conditionsOf(evidence);
    return judgeZones(evidence, 'opens-by-running', (zone) => {
      const exposure = exposures[zone.index]!;
      const { runningFrom } = conditions[zone.index]!;
      if (runningFrom === 'unknown') return `Zone ${zone.name}: the log does not tell when the machine runs.`;
      const lessHours = Math.min(exposure.runningHours, exposure.stoppedHours);
      if (lessHours < fewestHoursEachSide) {
        return `Zone ${zone.name}: ${lessHours.toFixed(1)} h on the lesser side of running and standing, needed ${fewestHoursEachSide}.`;
      }
      const own = opensOf(evidence)[zone.index]!.filter((open) => open.othersAtOnceCount < 2);
      const known = own.filter((open) => !Number.isNaN(open.runningShare));
      if (known.length === 0) return [];
      const hasBothHot = Math.min(exposure.hotRunningHours, exposure.hotStoppedHours) >= fewestHoursEachSide;
      const bursts = burstStarts(known).filter((open) => !hasBothHot || open.hot === 1);
      const runningHours = hasBothHot ? exposure.hotRunningHours : exposure.runningHours;
      const stoppedHours = hasBothHot ? exposure.hotStoppedHours : exposure.stoppedHours;
      const runningBursts = bursts.filter(isRunning).length;
      const rates = rateFacts(
        { events: runningBursts, exposure: runningHours },
        { events: bursts.length - runningBursts, exposure: stoppedHours },
      );
      const runningCount = known.filter(isRunning).length;
      return [
        symptomOf('opens-by-running', known[0]!.startMs, known.at(-1)!.endMs, known.length, {
          runningCount,
          stoppedCount: known.length - runningCount,
          runningBurstCount: runningBursts,
          stoppedBurstCount: bursts.length - runningBursts,
          runningHours,
          stoppedHours,
          runningOpensPerHour: runningCount / exposure.runningHours,
          stoppedOpensPerHour: (known.length - runningCount) / exposure.stoppedHours,
          runningShare: runningCount / known.length,
          exposureRunningShare: runningHours / (runningHours + stoppedHours),
          rateRatio: rates.ratio,
          rateLowRatio: rates.lowRatio,
          runningHigherPValue: rates.higherPValue,
          runningLowerPValue: rates.lowerPValue,
        }),
      ];
    });
  },
};
