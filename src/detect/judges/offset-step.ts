import type { Judge } from '../../model/detector.js';
import { heldDegCOf } from '../shared/duty/chart-points.js';
import { judgeZones, symptomOf, windowOf } from '../shared/basics/judge-zones.js';
import { betterFit, changeFacts, growthRatioOf } from '../shared/duty/reading-error.js';
import { zoneChangesOf } from '../shared/duty/zone-changes.js';

export interface OffsetStepSettings {
  /** Squared standard deviations that a step must explain. */
  readonly leastGain: number;
  /** Smaller steps, seen cold, are told as nothing: 0.3 °C as for slow-drift. */
  readonly smallestDegC: number;
}

/** A reading error that came at once and stayed, seen in the cold soaks; duty alone is told by `duty-shift`. */
export const offsetStep: Judge<OffsetStepSettings> = {
  meta: {
    id: 'offset-step',
    sees: 'a reading error that came at once and stayed, in the cold soaks and in the duty',
    needs: ['reading', 'soak', 'peers'],
    source: 'Change of mean by least squares on soaks and on duty against peers; common practice.',
    defaults: { leastGain: 30, smallestDegC: 0.3 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'offset-step', (zone) => {
      const change = zoneChangesOf(evidence)[zone.index]!;
      if (change.soaksUnable !== null) return change.soaksUnable;
      const { step } = change;
      if (!step?.cold || betterFit(change) !== step) return [];
      const { cold } = step;
      if (step.gain < settings.leastGain || cold.gain < settings.leastGain / 2) return [];
      if (Math.abs(cold.degC) < settings.smallestDegC) return [];
      return [
        symptomOf(
          'offset-step',
          step.onsetMs,
          windowOf(evidence).endMs,
          1,
          changeFacts(step, growthRatioOf(evidence, change, heldDegCOf(evidence)[zone.index] ?? NaN)),
        ),
      ];
    });
  },
};
