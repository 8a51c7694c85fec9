import type { ReliabilityRow } from '../model/downtime-findings.js';
import { HOUR_MS, MINUTE_MS } from '../model/time-units.js';
import { meanTimeBetween } from '../maths/mean-time-between.js';
import { totalLength } from '../maths/intervals.js';
import type { MachineRecord, StoppedPiece } from './stopped-pieces.js';

/**
 * Mean time between failures and to repair of one machine, counting stops of any cause or of zone faults alone.
 * MTBF is up time over failures with chi-square limits (NIST/SEMATECH e-Handbook 8.4.5.1); availability is up time
 * over planned time, which is MTBF / (MTBF + MTTR) when MTBF counts up time.
 */
export function reliabilityOf(
  { machine, production, pieces }: MachineRecord,
  counts: (piece: StoppedPiece) => boolean,
  name: string,
  confidence: number,
): ReliabilityRow {
  const down = pieces.filter((piece) => piece.bucket !== 'planned');
  const failing = down.filter(counts);
  const plannedMs = totalLength(production.planned);
  const upMs = plannedMs - totalLength(down);
  const failures = new Set(failing.map(({ stop }) => stop)).size;
  const repairMs = totalLength(failing);
  const limits = meanTimeBetween(upMs / HOUR_MS, failures, confidence);
  return {
    name: name === '' ? machine : `${machine}: ${name}`,
    operatingHours: upMs / HOUR_MS,
    failures,
    mtbfHours: finiteOrNull(limits.mean),
    mtbfLowHours: finiteOrNull(limits.low),
    mtbfHighHours: finiteOrNull(limits.high),
    mttrMinutes: failures === 0 ? null : repairMs / failures / MINUTE_MS,
    availability: plannedMs === 0 ? null : upMs / (upMs + repairMs),
  };
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
