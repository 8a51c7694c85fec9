import type { Judge } from '../../model/detector.js';
import { judgeZones, symptomOf } from '../shared/basics/judge-zones.js';
import {
  heatUnknown,
  isHeatKnown,
  isSignalLost,
  longestOf,
  noHeatRunsOf,
  type NoHeatRun,
} from '../shared/heating/power-runs.js';
import { settledHoursSince } from '../shared/readings/settled-since.js';
import { setpointsDegCOf } from '../shared/duty/chart-points.js';

export interface ReadingLowShortedSettings {
  /** A short reads the place of the short, near the room: below this share of the way up from it. */
  readonly mostAboveShare: number;
}

/** A reading that drops to the room at once, or comes back at once, while the zone is heated. */
export const readingLowShorted: Judge<ReadingLowShortedSettings> = {
  meta: {
    id: 'reading-low-shorted',
    sees: 'a reading that lies near the room while the zone is heated, and came or went faster than heat can move',
    needs: ['reading', 'output-or-peers'],
    source: 'A shorted thermocouple reads the temperature of the short (common practice); dT/dt = (room − T)/τ.',
    defaults: { mostAboveShare: 0.5 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'reading-low-shorted', (zone) => {
      const usualDegC = setpointsDegCOf(evidence)[zone.index] ?? null;
      if (usualDegC === null) return `Zone ${zone.name} was never settled at a temperature.`;
      if (!isHeatKnown(evidence, zone)) return heatUnknown(zone);
      const runs = noHeatRunsOf(evidence)[zone.index]!.filter((run) => isShort(run, settings));
      if (runs.length === 0) return [];
      const longest = longestOf(runs);
      return [
        symptomOf('reading-low-shorted', runs[0]!.startMs, runs.at(-1)!.endMs, runs.length, {
          lowMinutes: runs.reduce((sum, run) => sum + run.minutes, 0),
          readingDegC: longest.lastDegC,
          belowDegC: longest.belowDegC,
          fallRatio: longest.fallRatio,
          endJumpDegC: longest.endJumpDegC,
          endJumpRatio: longest.endJumpRatio,
          aboveRoomDegC: longest.aboveRoomDegC,
          rangeDegC: longest.rangeDegC,
          outputPercent: longest.outputPercent,
          lastsToEndCount: runs.at(-1)!.lastsToEnd ? 1 : 0,
          settledHoursSince: settledHoursSince(evidence, zone, runs.at(-1)!.endMs),
        }),
      ];
    });
  },
};

function isShort(run: NoHeatRun, { mostAboveShare }: ReadingLowShortedSettings): boolean {
  const { rangeDegC, aboveRoomDegC, belowDegC } = run;
  return isSignalLost(run) && rangeDegC > 0 && aboveRoomDegC < mostAboveShare * (belowDegC + aboveRoomDegC);
}
