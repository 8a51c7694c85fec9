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

export interface HeaterDeadSettings {
  /** Without heat, the reading ends up within this share of the way down to the room. */
  readonly mostAboveShare: number;
}

/** A reading that falls to the room as the zone cools, while the output asks for full power. */
export const heaterDead: Judge<HeaterDeadSettings> = {
  meta: {
    id: 'heater-dead',
    sees: 'a zone that cools by its own time constant although full output is asked for',
    needs: ['reading', 'output-or-peers'],
    source: 'Lumped body without heat, dT/dt = (room − T)/τ (textbook); common practice.',
    defaults: { mostAboveShare: 0.5 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'heater-dead', (zone) => {
      const usualDegC = setpointsDegCOf(evidence)[zone.index] ?? null;
      if (usualDegC === null) return `Zone ${zone.name} was never settled at a temperature.`;
      if (!isHeatKnown(evidence, zone)) return heatUnknown(zone);
      const runs = noHeatRunsOf(evidence)[zone.index]!.filter((run) => isCooling(run, settings));
      if (runs.length === 0) return [];
      const longest = longestOf(runs);
      return [
        symptomOf('heater-dead', runs[0]!.startMs, runs.at(-1)!.endMs, runs.length, {
          noHeatMinutes: runs.reduce((sum, run) => sum + run.minutes, 0),
          belowDegC: longest.belowDegC,
          fallRatio: longest.fallRatio,
          aboveRoomDegC: longest.aboveRoomDegC,
          endJumpDegC: longest.endJumpDegC,
          endJumpRatio: longest.endJumpRatio,
          rangeDegC: longest.rangeDegC,
          outputPercent: longest.outputPercent,
          lastsToEndCount: runs.at(-1)!.lastsToEnd ? 1 : 0,
          settledHoursSince: settledHoursSince(evidence, zone, runs.at(-1)!.endMs),
        }),
      ];
    });
  },
};

/** No jump at either end, live, and far on the way to the room. */
function isCooling(run: NoHeatRun, { mostAboveShare }: HeaterDeadSettings): boolean {
  if (isSignalLost(run) || run.rangeDegC === 0) return false;
  return run.aboveRoomDegC < mostAboveShare * (run.belowDegC + run.aboveRoomDegC);
}
