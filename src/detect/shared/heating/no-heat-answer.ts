import type { Evidence, Facts } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { symptomOf, type ZoneAnswer } from '../basics/judge-zones.js';
import { setpointsDegCOf } from '../duty/chart-points.js';
import { settledHoursSince } from '../readings/settled-since.js';
import { noHeatRunsOf, type NoHeatRun } from './power-runs.js';
import { matesOf } from '../basics/mates.js';

/** One of the judges that explain why a zone which should be hot is not. */
export interface NoHeatCause {
  readonly detector: string;
  /** Name of the fact that sums up the runs. */
  readonly minutesFact: string;
  readonly isOne: (run: NoHeatRun) => boolean;
}

/** What a judge says of the zone's runs without heat that are its own. */
export function noHeatAnswer(
  evidence: Evidence,
  zone: Zone,
  { detector, minutesFact, isOne }: NoHeatCause,
): ZoneAnswer {
  if ((setpointsDegCOf(evidence)[zone.index] ?? null) === null) {
    return `Zone ${zone.name} was never settled at a temperature.`;
  }
  if (!isHeatKnown(evidence, zone)) {
    return `Zone ${zone.name}: neither an output nor another zone of its machine is logged, so nothing shows when it should be hot.`;
  }
  const runs = noHeatRunsOf(evidence)[zone.index]!.filter(isOne);
  if (runs.length === 0) return [];
  const [first, last] = [runs[0]!, runs.at(-1)!];
  return [
    symptomOf(detector, first.startMs, last.endMs, runs.length, {
      [minutesFact]: runs.reduce((sum, run) => sum + run.minutes, 0),
      ...factsOf(longestOf(runs)),
      lastsToEndCount: last.lastsToEnd ? 1 : 0,
      settledHoursSince: settledHoursSince(evidence, zone, last.endMs),
    }),
  ];
}

/** Whether an output, or other zones of the machine, show when the zone should be hot. */
function isHeatKnown({ zones }: Evidence, zone: Zone): boolean {
  return zone.has.output || matesOf(zones, zone).length > 0;
}

function longestOf(runs: readonly NoHeatRun[]): NoHeatRun {
  return runs.reduce((longest, run) => (run.minutes > longest.minutes ? run : longest));
}

function factsOf(run: NoHeatRun): Facts {
  const { belowDegC, lastDegC, fallRatio, endJumpDegC, endJumpRatio, backAtDegC, aboveRoomDegC } = run;
  const { rangeDegC, outputPercent } = run;
  return {
    readingDegC: lastDegC,
    belowDegC,
    fallRatio,
    endJumpDegC,
    endJumpRatio,
    backAtDegC,
    aboveRoomDegC,
    rangeDegC,
    outputPercent,
  };
}
