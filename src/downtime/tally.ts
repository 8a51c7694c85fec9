import type { DowntimeBucket, DowntimeRow } from '../model/downtime-findings.js';
import type { PlantFile } from '../model/plant-file.js';
import type { StoppedPiece } from './stopped-pieces.js';

const MS_PER_MINUTE = 60_000;

/** Minutes of pieces; the sum over any split of them is the same but for rounding of floating point. */
export function minutesOf(pieces: readonly StoppedPiece[]): number {
  return pieces.reduce((sum, { start, end }) => sum + end - start, 0) / MS_PER_MINUTE;
}

/** Cost of an hour of standstill of a machine, from plant.yaml; null = not given. */
export function hourlyCost({ costPerHour }: PlantFile, machine: string | null): number | null {
  if (costPerHour === undefined) return null;
  if (typeof costPerHour === 'number') return costPerHour;
  return (machine === null ? undefined : costPerHour[machine]) ?? null;
}

/** Money lost in pieces; planned time costs nothing. null when no rate is given for any of them. */
export function costOf(pieces: readonly StoppedPiece[], plant: PlantFile): number | null {
  let cost: number | null = null;
  for (const piece of pieces) {
    const rate = piece.bucket === 'planned' ? null : hourlyCost(plant, piece.machine);
    if (rate !== null) cost = (cost ?? 0) + (rate * (piece.end - piece.start)) / 3_600_000;
  }
  return cost;
}

/**
 * One row per group and bucket, largest first.
 *
 * @param nameOf Names the group a piece belongs to.
 */
export function rowsBy(
  pieces: readonly StoppedPiece[],
  plant: PlantFile,
  nameOf: (piece: StoppedPiece) => { name: string; machine: string | null },
): DowntimeRow[] {
  const groups = new Map<
    string,
    { name: string; machine: string | null; bucket: DowntimeBucket; pieces: StoppedPiece[] }
  >();
  for (const piece of pieces) {
    const { name, machine } = nameOf(piece);
    const key = JSON.stringify([name, machine, piece.bucket]);
    const group = groups.get(key) ?? { name, machine, bucket: piece.bucket, pieces: [] };
    group.pieces.push(piece);
    groups.set(key, group);
  }
  const rows = [...groups.values()].map((group) => ({
    name: group.name,
    bucket: group.bucket,
    machine: group.machine,
    minutes: minutesOf(group.pieces),
    stops: new Set(group.pieces.map(({ machine, stop }) => `${machine} ${stop}`)).size,
    longestMinutes: longestMinutes(group.pieces),
    cost: costOf(group.pieces, plant),
    ...(group.pieces.every(({ isRestart }) => isRestart) ? { isRestart: true } : {}),
  }));
  return rows.sort((a, b) => b.minutes - a.minutes || a.name.localeCompare(b.name));
}

/** The stop that lost most, with all its pieces of the group together. */
function longestMinutes(pieces: readonly StoppedPiece[]): number {
  const byStop = new Map<string, number>();
  for (const { machine, stop, start, end } of pieces) {
    const key = `${machine} ${stop}`;
    byStop.set(key, (byStop.get(key) ?? 0) + end - start);
  }
  let longest = 0;
  for (const length of byStop.values()) longest = Math.max(longest, length);
  return longest / MS_PER_MINUTE;
}

/**
 * Cuts pieces where a new day, week or other stretch begins, so that each lies in one.
 *
 * @param nextMs The first such beginning after a time.
 */
export function cutAt(pieces: readonly StoppedPiece[], nextMs: (timeMs: number) => number): StoppedPiece[] {
  return pieces.flatMap((piece) => {
    const parts: StoppedPiece[] = [];
    for (let from = piece.start; from < piece.end;) {
      const end = Math.min(piece.end, nextMs(from));
      parts.push({ ...piece, start: from, end });
      from = end;
    }
    return parts;
  });
}
