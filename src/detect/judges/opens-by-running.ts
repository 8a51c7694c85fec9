import type { Judge } from '../../model/detector.js';
import { HOUR_MS } from '../../model/time-units.js';
import { evenOverMovingRatio, type MovingCounts } from '../shared/opens/even-or-moving.js';
import { conditionsOf, exposureBetween, exposuresOf, ran, stood, type Exposure } from '../shared/readings/exposure.js';
import { judgeZones, symptomOf } from '../shared/basics/judge-zones.js';
import { burstStarts, type Open } from '../shared/opens/opens.js';
import { ownOpensOf } from '../shared/opens/own-opens.js';
import { rateFacts } from '../shared/opens/rate-facts.js';
import { openSpanOf, type OpenSpan } from '../shared/opens/repair-lives.js';

export interface OpensByRunningSettings {
  /** With less time on one side, the sides cannot be compared (own choice). */
  readonly fewestHoursEachSide: number;
}

const isRunning = (open: Open): boolean => ran(open.runningShare);

/**
 * Opens per running hour against opens per stopped hour. A moving cable opens while the machine moves; a cracked
 * element does not care. Like is compared with like: only the time from the first open to the long one, or to the end,
 * counts; and where no open came cold, only hot hours do, since a machine runs only when it is hot. Bursts count once,
 * for opens of one burst are not independent.
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
      const own = ownOpensOf(evidence)[zone.index]!;
      const known = own.filter(({ runningShare }) => ran(runningShare) || stood(runningShare));
      const span = openSpanOf(evidence, zone, known);
      if (!span) return [];
      const { opens } = span;
      const within = exposureBetween(evidence, zone.index, span.fromMs, span.toMs);
      const isHotOnly = [span.first, ...opens].every((open) => open.hot !== 0);
      const runningHours = isHotOnly ? within.hotRunningHours : within.runningHours;
      const stoppedHours = isHotOnly ? within.hotStoppedHours : within.stoppedHours;
      const bursts = burstStarts(opens);
      const runningBursts = bursts.filter(isRunning).length;
      const runningCount = opens.filter(isRunning).length;
      const rates = rateFacts(
        { events: runningBursts, exposure: runningHours },
        { events: bursts.length - runningBursts, exposure: stoppedHours },
      );
      return [
        symptomOf('opens-by-running', span.fromMs, opens.at(-1)!.endMs, opens.length, {
          runningCount,
          stoppedCount: opens.length - runningCount,
          runningBurstCount: runningBursts,
          stoppedBurstCount: bursts.length - runningBursts,
          runningHours,
          stoppedHours,
          runningOpensPerHour: runningCount / runningHours,
          stoppedOpensPerHour: (opens.length - runningCount) / stoppedHours,
          runningShare: runningCount / opens.length,
          isHotOnlyCount: isHotOnly ? 1 : 0,
          spanHours: (span.toMs - span.fromMs) / HOUR_MS,
          exposureRunningShare: runningHours / (runningHours + stoppedHours),
          evenOverMovingRatio: evenOverMovingRatio([
            // As many as there are bursts, split as the single opens are: bursts close together become one.
            {
              runningCount: (bursts.length * runningCount) / opens.length,
              stoppedCount: (bursts.length * (opens.length - runningCount)) / opens.length,
              runningHours,
              stoppedHours,
            },
            firstOpenPart(exposure, span, isHotOnly),
          ]),
          rateRatio: rates.ratio,
          rateLowRatio: rates.lowRatio,
          runningHigherPValue: rates.higherPValue,
          runningLowerPValue: rates.lowerPValue,
        }),
      ];
    });
  },
};

/** What the first open says by itself: what movement brings begins in movement. Any time of the log could have had it. */
function firstOpenPart(exposure: Exposure, { first }: OpenSpan, isHotOnly: boolean): MovingCounts {
  return {
    runningCount: isRunning(first) ? 1 : 0,
    stoppedCount: isRunning(first) ? 0 : 1,
    runningHours: isHotOnly ? exposure.hotRunningHours : exposure.runningHours,
    stoppedHours: isHotOnly ? exposure.hotStoppedHours : exposure.stoppedHours,
  };
}
