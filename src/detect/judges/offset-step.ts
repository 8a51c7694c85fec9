import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { heldDegCOf } from '../shared/duty/chart-points.js';
import type { ChangeFit } from '../shared/duty/change-fit.js';
import { judgeZones, symptomOf, windowOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { betterFit, changeFacts, growthRatioOf, isColdLarge } from '../shared/duty/reading-error.js';
import { degreesText, smallestVisibleDegC, workingToleranceDegC } from '../shared/duty/visible-change.js';
import { zoneChangesOf, type ZoneChange } from '../shared/duty/zone-changes.js';

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
      if (!isTold(step, change, settings)) return notVisible(evidence, zone, change, settings);
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

function isTold(step: ChangeFit | null, change: ZoneChange, settings: OffsetStepSettings): step is ChangeFit {
  if (!step?.cold || betterFit(change) !== step) return false;
  const { cold, gain } = step;
  if (gain < settings.leastGain || cold.gain < settings.leastGain / 2) return false;
  return isColdLarge(cold, settings.smallestDegC);
}

function notVisible(evidence: Evidence, zone: Zone, change: ZoneChange, settings: OffsetStepSettings): ZoneAnswer {
  if (!change.cold || !change.step)
    return `Zone ${zone.name}: ${change.soaks.length} looks at it while cold, too few to tell before from after.`;
  const smallestDegC = smallestVisibleDegC(evidence, { ...change, duty: null }, 'step', {
    leastGain: settings.leastGain,
    smallestColdDegC: settings.smallestDegC,
    smallestHotDegC: Infinity,
  });
  const toleranceDegC = workingToleranceDegC(evidence, zone, change);
  if (!(smallestDegC > toleranceDegC)) return [];
  return `Zone ${zone.name} is cold too seldom or too restlessly: a step below ${degreesText(smallestDegC)} °C does not show, and its tolerance is ${degreesText(toleranceDegC)} °C.`;
}
