import {
  dutyPoints,
  roomDegCOf,
  setpointsDegCOf,
  soakPoints,
  type DutyChartPoint,
} from '../detect/shared/duty/chart-points.js';
import { WARMEST_ROOM_DEG_C } from '../detect/shared/basics/warmest-room.js';
import type { Evidence } from '../model/detector.js';
import type { ZoneFinding } from '../model/findings.js';
import { median } from '../maths/quantile.js';
import { rounded } from './rounded.js';

/** More points than this on the duty chart cannot be told apart. */
const MOST_DUTY_POINTS = 400;

/** Cold soaks of one zone for its chart, and the room temperature at the last of them. */
export function soakSeries(
  evidence: Evidence,
  zone: number,
): { points: ZoneFinding['soaks']; roomDegC: number | null } {
  const soaks = soakPoints(evidence)[zone]!;
  const roomDegC = roomDegCOf(evidence);
  return {
    points: soaks.map(({ timeMs, offsetDegC, uncertaintyDegC }) => ({
      time: new Date(timeMs).toISOString(),
      offsetDegC: rounded(offsetDegC, 2),
      uncertaintyDegC: rounded(uncertaintyDegC, 2),
    })),
    roomDegC: roomDegC === null ? null : rounded(roomDegC, 1),
  };
}

/** Duty of settled stretches for a zone's chart; neighbours are drawn together where there are too many. */
export function dutySeries(evidence: Evidence, zone: number): ZoneFinding['duty'] {
  const points = dutyPoints(evidence)[zone]!;
  const each = Math.max(1, Math.ceil(points.length / MOST_DUTY_POINTS));
  const groups = Array.from({ length: Math.ceil(points.length / each) }, (_, i) =>
    points.slice(i * each, (i + 1) * each),
  );
  return groups.map((group) => ({
    time: new Date(group[0]!.timeMs).toISOString(),
    residualDegC: middle(group, ({ residualDegC }) => residualDegC),
    residualPercent: middle(group, ({ residualPercent }) => residualPercent),
  }));
}

function middle(points: readonly DutyChartPoint[], valueOf: (point: DutyChartPoint) => number): number {
  return rounded(median(points.map(valueOf)), 2);
}

/** The usual set point of a zone; where it was never settled, what the log asked for; null where neither tells. */
export function setpointOf(evidence: Evidence, zone: number): number | null {
  const asked = evidence.digest.zones[zone]!.setpointDegC.filter((value) => value > WARMEST_ROOM_DEG_C);
  const usual = setpointsDegCOf(evidence)[zone] ?? (asked.length === 0 ? null : median(asked));
  return usual === null ? null : rounded(usual, 1);
}
