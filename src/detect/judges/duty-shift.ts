import type { Judge } from '../../model/detector.js';
import { median } from '../../maths/quantile.js';
import { judgeZones, symptomOf, windowOf } from '../shared/basics/judge-zones.js';
import { betterFit, isDutyBeyondLoad, isHeatLost } from '../shared/duty/reading-error.js';
import { zoneChangesOf } from '../shared/duty/zone-changes.js';

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
      if (!fit?.hot || fit.hot.gain < settings.leastGain) return [];
      if (!isDutyBeyondLoad(fit, change, settings.smallestDegC) && !isHeatLost(fit, change)) return [];
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
          onsetUncertaintyHours: (fit.onsetHighMs - fit.onsetLowMs) / 2 / 3_600_000,
          peerCount: duty.peerCount,
          windowCount: duty.timeMs.length,
        }),
      ];
    });
  },
};
