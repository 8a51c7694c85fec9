import { median } from '../../maths/quantile.js';
import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { HOUR_MS } from '../../model/time-units.js';
import { judgeZones, symptomOf, windowOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { betterFit, isDutyBeyondLoad, isHeatLost, smallestHotChangeDegC } from '../shared/duty/reading-error.js';
import { degreesText, workingToleranceDegC } from '../shared/duty/visible-change.js';
import { zoneChangesOf, type ZoneChange } from '../shared/duty/zone-changes.js';

export interface DutyShiftSettings {
  /** Squared standard deviations that the shift must explain. */
  readonly leastGain: number;
  /** Smaller shifts, as degrees of true temperature, are told as nothing. */
  readonly smallestDegC: number;
}

/** Heat that a settled zone needs other than before, with what moves its peers taken off. */
export const dutyShift: Judge<DutyShiftSettings> = {
  meta: {
    id: 'duty-shift',
    sees: 'a settled zone that needs more or less heat than before while its peers do not',
    needs: ['reading', 'output', 'peers'],
    source: 'Steady heat balance: duty = loss per degree × (temperature − room) + load; common practice.',
    defaults: { leastGain: 30, smallestDegC: 1.5 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'duty-shift', (zone) => {
      const change = zoneChangesOf(evidence)[zone.index]!;
      const { duty } = change;
      if (!duty) return change.dutyUnable!;
      const fit = betterFit(change);
      const isTold =
        fit?.hot &&
        fit.hot.gain >= settings.leastGain &&
        (isDutyBeyondLoad(fit, change, settings.smallestDegC) || isHeatLost(fit, change));
      if (!isTold || !fit.hot) return notVisible(evidence, zone, change, settings);
      const shiftPercent = -fit.hot.degC * duty.percentPerDegC;
      const before = duty.dutyPercent.filter((_, i) => duty.timeMs[i]! < fit.onsetMs);
      const dutyPercent = median(before.length > 0 ? before : duty.dutyPercent);
      return [
        symptomOf('duty-shift', fit.onsetMs, windowOf(evidence).endMs, 1, {
          residualDegC: fit.hot.degC,
          residualErrorDegC: fit.hot.errorDegC,
          residualPercent: shiftPercent,
          dutyPercent,
          dutyRatio: (dutyPercent + shiftPercent) / dutyPercent,
          zScoreRatio: Math.sqrt(fit.hot.gain),
          percentPerDegC: duty.percentPerDegC,
          soakChangeDegC: fit.cold?.degC ?? NaN,
          soakErrorDegC: fit.cold?.errorDegC ?? NaN,
          isStepCount: fit.shape === 'step' ? 1 : 0,
          onsetUncertaintyHours: (fit.onsetHighMs - fit.onsetLowMs) / 2 / HOUR_MS,
          peerCount: duty.peerCount,
          windowCount: duty.timeMs.length,
        }),
      ];
    });
  },
};

/**
 * Beside cold soaks, which show a change of the sensor by themselves, duty has only to show a change of the heat. Where
 * it stands alone and what it must pass over is larger than a sensor's tolerance, "not seen" would promise too much.
 */
function notVisible(evidence: Evidence, zone: Zone, change: ZoneChange, settings: DutyShiftSettings): ZoneAnswer {
  const duty = change.duty!;
  if (duty.peerCount === 0)
    return `Zone ${zone.name}: no other zone of its machine has a duty to compare with, so load and room pass for a change.`;
  const smallestDegC = smallestHotChangeDegC(change, 'step', settings.smallestDegC);
  if (smallestDegC === Infinity)
    return `Zone ${zone.name} was settled for too short a time to compare its duty with before.`;
  if (change.cold || !(smallestDegC > workingToleranceDegC(evidence, zone, change))) return [];
  const smallestPercent = smallestDegC * duty.percentPerDegC;
  return `Zone ${zone.name} is never cold in this log: a change of its duty below ${degreesText(smallestPercent)} %, or ${degreesText(smallestDegC)} °C of reading error, is lost in what load and room do.`;
}
