import type { Evidence } from '../../../model/detector.js';
import { partialOut } from '../../../maths/added-column.js';
import { median, quantile } from '../../../maths/quantile.js';
import { oncePer } from '../basics/memo.js';
import { shapeColumn } from './change-fit.js';
import { roomOf } from '../cold/cold-hours.js';
import { windowsOf } from '../readings/windows.js';
import { dutyRowsAgain, zoneChangesOf } from './zone-changes.js';
import { zoneState } from '../readings/zone-state.js';
import { WARMEST_ROOM_DEG_C } from '../basics/warmest-room.js';

/** A cold soak: the reading less that of its peers, and one standard deviation of it. */
export interface SoakChartPoint {
  readonly timeMs: number;
  readonly offsetDegC: number;
  readonly uncertaintyDegC: number;
}

/** The duty of one settled window, less what peers, room and set point explain. */
export interface DutyChartPoint {
  readonly timeMs: number;
  /** As reading error: below 0 = the zone needs more heat than its peers explain, as if it read low. */
  readonly residualDegC: number;
  readonly residualPercent: number;
}

/** One point per cold soak of each zone, by zone index. Never throws. */
export const soakPoints = oncePer((evidence: Evidence): readonly (readonly SoakChartPoint[])[] =>
  zoneChangesOf(evidence).map(({ soaks }) =>
    soaks.map(({ timeMs, offsetDegC, uncertaintyDegC }) => ({ timeMs, offsetDegC, uncertaintyDegC })),
  ),
);

/** Share of a settled log that counts as its beginning, against which the duty is shown (own choice). */
const FIRST_SHARE = 0.25;

/**
 * Duty of each settled window less what peers, room and set point explain, by zone index; 0 at the level of the zone's
 * first quarter. The change found is left in the points: that is what they are to show.
 */
export const dutyPoints = oncePer((evidence: Evidence): readonly (readonly DutyChartPoint[])[] => {
  const { digest } = evidence;
  const endMs = digest.startMs + digest.length * digest.periodMs;
  return zoneChangesOf(evidence).map((change, index) => {
    const rows = dutyRowsAgain(evidence, index);
    if (!rows) return [];
    const { duty, columns, ridge } = rows;
    const fit = change.ramp && change.step ? (change.ramp.gain >= change.step.gain ? change.ramp : change.step) : null;
    const shape = fit ? shapeColumn(fit.shape, fit.onsetMs, duty.timeMs, endMs) : duty.timeMs.map(() => 0);
    const size = fit?.hot ? -fit.hot.degC * duty.percentPerDegC : 0;
    const level = duty.dutyPercent.map((percent, i) => percent - size * shape[i]!);
    const ones = duty.timeMs.map(() => 1);
    const { rest } = partialOut(columns, level, ones, ridge);
    const residual = duty.timeMs.map((_, i) => rest[i]! + size * shape[i]!);
    const usual = median(residual.slice(0, Math.max(1, Math.ceil(FIRST_SHARE * residual.length))));
    return Array.from(duty.timeMs, (timeMs, i) => {
      const residualPercent = residual[i]! - usual;
      return { timeMs, residualPercent, residualDegC: -residualPercent / duty.percentPerDegC };
    });
  });
});

/** Room temperature at the plant's last cold hour; null where nothing was ever cold. */
export function roomDegCOf(evidence: Evidence): number | null {
  const roomDegC = roomOf(evidence);
  return Number.isNaN(roomDegC) ? null : roomDegC;
}

/** Usual set point of each zone while it was settled, or the reading held there; null where it was never settled. */
export const setpointsDegCOf = oncePer((evidence: Evidence): readonly (number | null)[] =>
  windowsOf(evidence).zones.map(({ state, setpointDegC, readingDegC }) => {
    const held = Array.from(state, (s, w) => {
      if (s !== zoneState.settled) return NaN;
      return setpointDegC[w]! > WARMEST_ROOM_DEG_C ? setpointDegC[w]! : readingDegC[w]!;
    });
    const usual = median(held);
    return Number.isNaN(usual) ? null : usual;
  }),
);

/** A zone that droops for part of the log shows what it is held at in the upper part of its settled readings. */
const HELD_QUANTILE = 0.75;

/** Where a zone without set point is held while it can be, by zone index; null where it was never settled. */
export const heldDegCOf = oncePer((evidence: Evidence): readonly (number | null)[] =>
  windowsOf(evidence).zones.map(({ state, readingDegC }) => {
    const settled = readingDegC.filter((degC, w) => state[w] === zoneState.settled && !Number.isNaN(degC));
    return settled.length === 0 ? null : quantile(Array.from(settled), HELD_QUANTILE);
  }),
);
