import type { Judge } from '../../model/detector.js';
import { judgeZones } from '../shared/basics/judge-zones.js';
import { noHeatAnswer } from '../shared/heating/no-heat-answer.js';
import type { NoHeatRun } from '../shared/heating/power-runs.js';
import { isSignalLost } from '../shared/heating/run-ends.js';

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
    const isOne = (run: NoHeatRun) => isShort(run, settings);
    return judgeZones(evidence, 'reading-low-shorted', (zone) =>
      noHeatAnswer(evidence, zone, { detector: 'reading-low-shorted', minutesFact: 'lowMinutes', isOne }),
    );
  },
};

function isShort(run: NoHeatRun, { mostAboveShare }: ReadingLowShortedSettings): boolean {
  const { rangeDegC, aboveRoomDegC, belowDegC } = run;
  return isSignalLost(run) && rangeDegC > 0 && aboveRoomDegC < mostAboveShare * (belowDegC + aboveRoomDegC);
}
