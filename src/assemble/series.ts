import { zoneChangesOf } from '../detect/shared/zone-changes.js';
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
  const { soaks } = zoneChangesOf(evidence)[zone]!;
  return {
    points: soaks.map(({ timeMs, offsetDegC, uncertaintyDegC }) => ({
      time: new Date(timeMs).toISOString(),
      offsetDegC: rounded(offsetDegC, 2),
      uncertaintyDegC: rounded(uncertaintyDegC, 2),
    })),
    roomDegC: soaks.length === 0 ? null : rounded(soaks.at(-1)!.roomDegC, 1),
  };
}

/** Duty of settled stretches against its median: less duty than usual reads as a sensor that reads high. */
export function dutySeries(evidence: Evidence, zone: number): ZoneFinding['duty'] {
  const { duty } = zoneChangesOf(evidence)[zone]!;
  if (!duty) return [];
  const usualPercent = median(duty.dutyPercent);
  const each = Math.max(1, Math.ceil(duty.timeMs.length / MOST_DUTY_POINTS));
  const points: { time: string; residualDegC: number; residualPercent: number }[] = [];
  for (let from = 0; from < duty.timeMs.length; from += each) {
    const residualPercent = median(duty.dutyPercent.subarray(from, from + each)) - usualPercent;
    points.push({
      time: new Date(duty.timeMs[from]!).toISOString(),
      residualDegC: rounded(-residualPercent / duty.percentPerDegC, 2),
      residualPercent: rounded(residualPercent, 2),
    });
  }
  return points;
}

/** The set point the zone works at mostly; where none is logged, the median of the readings of the warmer half. */
export function setpointOf({ digest }: Evidence, zone: number): number | null {
  const { setpointDegC, meanDegC } = digest.zones[zone]!;
  const warm = setpointDegC.filter((value) => value > WARM_FROM_DEG_C);
  if (warm.length > 0) return rounded(median(warm), 1);
  const readings = meanDegC.filter((value) => value > WARM_FROM_DEG_C);
  return readings.length === 0 ? null : rounded(median(readings), 1);
}

/** Set points below this mean "off" (common practice: no heat-seal or barrel zone works so cold). */
const WARM_FROM_DEG_C = 45;
