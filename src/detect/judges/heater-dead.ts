import type { Judge } from '../../model/detector.js';
import { judgeZones } from '../shared/basics/judge-zones.js';
import { noHeatAnswer } from '../shared/heating/no-heat-answer.js';
import type { NoHeatRun } from '../shared/heating/power-runs.js';
import { isSignalLost } from '../shared/heating/run-ends.js';

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
    const isOne = (run: NoHeatRun) => isCooling(run, settings);
    return judgeZones(evidence, 'heater-dead', (zone) =>
      noHeatAnswer(evidence, zone, { detector: 'heater-dead', minutesFact: 'noHeatMinutes', isOne }),
    );
  },
};

/** No jump at either end, live, and far on the way to the room. */
function isCooling(run: NoHeatRun, { mostAboveShare }: HeaterDeadSettings): boolean {
  if (isSignalLost(run) || run.rangeDegC === 0) return false;
  return run.aboveRoomDegC < mostAboveShare * (run.belowDegC + run.aboveRoomDegC);
}
