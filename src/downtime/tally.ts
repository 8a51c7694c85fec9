import type { DowntimeBucket, DowntimeRow } from '../model/downtime-findings.js';
import type { PlantFile } from '../model/plant-file.js';
import { MINUTE_MS, HOUR_MS } from '../model/time-units.js';
import type { CalendarSpan } from '../maths/calendar.js';
import { lengthOf } from '../maths/intervals.js';
import type { StoppedPiece } from './stopped-pieces.js';

/** Minutes of pieces; the sum over any split of them is the same but for rounding of floating point. */
export function minutesOf(pieces: Iterable<StoppedPiece>): number {
  return lengthOf(pieces) / MINUTE_MS;
}

/** Cost of an hour of standstill of a machine, from plant.yaml; null = not given. */
function hourlyCost({ costPerHour }: PlantFile, machine: string | null): number | null {
  if (costPerHour === undefined) return null;
  if (typeof costPerHour === 'number') return costPerHour;
  return (machine === null ? undefined : costPerHour[machine]) ?? null;
}

/** Money lost in pieces; planned time costs nothing. null when no rate is given for any of them. */
export function costOf(pieces: Iterable<StoppedPiece>, plant: PlantFile): number | null {
  let cost: number | null = null;
  for (const piece of pieces) cost = costWith(cost, piece, plant);
  return cost;
}

function costWith(cost: number | null, piece: StoppedPiece, plant: PlantFile): number | null {
  const rate = piece.bucket === 'planned' ? null : hourlyCost(plant, piece.machine);
  return rate === null ? cost : (cost ?? 0) + (rate * (piece.end - piece.start)) / HOUR_MS;
}

/** What a piece is counted under. */
export interface Group {
  readonly name: string;
  readonly machine: string | null;
}

/** The pieces of one group and bucket, added up as they come. */
interface Sum extends Group {
  readonly bucket: DowntimeBucket;
  lengthMs: number;
  cost: number | null;
  areAllRestarts: boolean;
  stops: number;
  longestMs: number;
  /** The stop that the last piece was part of, and what the group has of it so far. */
  stop: { machine: string; number: number; lengthMs: number };
}

/**
 * One row per group and bucket, largest first.
 *
 * @param pieces Those of one stop right after each other, as `recordOf` gives them.
 * @param groupOf The group a piece belongs to.
 */
export function rowsBy(
  pieces: Iterable<StoppedPiece>,
  plant: PlantFile,
  groupOf: (piece: StoppedPiece) => Group,
): DowntimeRow[] {
  const sums = new Map<string, Sum>();
  for (const piece of pieces) {
    const { name, machine } = groupOf(piece);
    const key = JSON.stringify([name, machine, piece.bucket]);
    const sum = sums.get(key) ?? emptySum({ name, machine }, piece.bucket);
    add(sum, piece, plant);
    sums.set(key, sum);
  }
  const rows = [...sums.values()].map((sum) => ({
    name: sum.name,
    bucket: sum.bucket,
    machine: sum.machine,
    minutes: sum.lengthMs / MINUTE_MS,
    stops: sum.stops,
    longestMinutes: sum.longestMs / MINUTE_MS,
    cost: sum.cost,
    ...(sum.areAllRestarts ? { isRestart: true } : {}),
  }));
  return rows.sort((a, b) => b.minutes - a.minutes || a.name.localeCompare(b.name));
}

function emptySum(group: Group, bucket: DowntimeBucket): Sum {
  const nothing = { lengthMs: 0, cost: null, areAllRestarts: true, stops: 0, longestMs: 0 };
  return { ...group, bucket, ...nothing, stop: { machine: '', number: NaN, lengthMs: 0 } };
}

function add(sum: Sum, piece: StoppedPiece, plant: PlantFile): void {
  const { machine, stop: number, start, end } = piece;
  const isNewStop = sum.stop.number !== number || sum.stop.machine !== machine;
  if (isNewStop) {
    sum.stops++;
    sum.stop = { machine, number, lengthMs: 0 };
  }
  sum.stop.lengthMs = sum.stop.lengthMs + end - start;
  sum.longestMs = Math.max(sum.longestMs, sum.stop.lengthMs); // the stop that lost most, all its pieces together
  sum.lengthMs = sum.lengthMs + end - start;
  sum.cost = costWith(sum.cost, piece, plant);
  sum.areAllRestarts &&= piece.isRestart;
}

/** Cuts pieces where a new day or week begins, so that each lies in one. */
export function* cutAt(
  pieces: Iterable<StoppedPiece>,
  spanAt: (timeMs: number) => CalendarSpan,
): Iterable<StoppedPiece> {
  for (const piece of pieces) {
    for (let from = piece.start; from < piece.end;) {
      const end = Math.min(piece.end, spanAt(from).toMs);
      yield { ...piece, start: from, end };
      from = end;
    }
  }
}
