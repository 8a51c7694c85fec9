import type { ZoneDigest } from '../model/digest.js';
import { BYTES_PER_PLACE, emptyZoneDigest, isEmptyPlace, mergePlace, numberColumns } from './zone-digest.js';

/** Places are made usable so many at a time, and widths are multiples of it. */
export const PLACES_PER_STEP = 1024;

/**
 * Room for so many places is laid out first: three weeks of minutes. A log that needs more gets all that the budget
 * allows at once, so that a filled room is copied only once (own choice).
 */
const FIRST_PLACES = 32 * PLACES_PER_STEP;

/** Columns that a log may not hold at all; nothing is filled for them until a number comes. */
const optionalColumns = ['outputPercent', 'setpointDegC', 'runningShare'] as const;

type Columns = { -readonly [Column in keyof ZoneDigest]: ZoneDigest[Column] };

/** One zone: the first `used` places of its columns are laid out, and begin at place `first` of the grid. */
interface ZoneRoom {
  columns: Columns;
  first: number;
  used: number;
}

/**
 * The columns of all zones while a digest grows, in one piece of memory. Places not yet in use are not written to, so
 * they cost nothing on systems that hand out memory page by page; and one large piece goes back to the system when the
 * digest is no longer needed, which thousands of small arrays do not.
 */
export class GridRoom {
  private memory = new ArrayBuffer(0);
  private room = 0;
  /** Stands in for the optional columns that hold nothing: NaN in all places that any zone uses. */
  private missing = new Float32Array(0);
  private missingUsed = 0;
  private readonly zones: readonly ZoneRoom[];

  /** @param mostPlaces The widest that the places in use ever lie apart, over all zones; a multiple of the step. */
  constructor(
    zoneCount: number,
    private readonly mostPlaces: number,
  ) {
    this.zones = Array.from({ length: zoneCount }, () => ({ columns: emptyZoneDigest(0), first: 0, used: 0 }));
    this.widen(mostPlaces > 2 * FIRST_PLACES ? FIRST_PLACES : mostPlaces);
  }

  /**
   * Takes what was counted into a place.
   *
   * @param gridStart Place at which the grid begins now; never after `place`.
   */
  store(zone: number, place: number, gridStart: number, counted: ZoneDigest): void {
    const held = this.zones[zone]!;
    if (held.used === 0) held.first = gridStart;
    if (place < held.first) this.beginAt(held, gridStart);
    this.extend(held, place + 1 - held.first);
    for (const column of optionalColumns) {
      if (held.columns[column] !== this.missing || Number.isNaN(counted[column][0]!)) continue;
      held.columns[column] = columnsAt(this.memory, zone, this.room)[column].fill(NaN, 0, held.used);
    }
    mergePlace(held.columns, place - held.first, counted, 0);
  }

  /** Merges neighbouring places, so that each stands for twice the time. */
  halve(): void {
    for (const held of this.zones) {
      const first = Math.floor(held.first / 2);
      const odd = held.first - 2 * first;
      let used = 0;
      for (let i = 0; i < held.used; i++) {
        const target = (i + odd) >> 1; // never behind i, so what is still to be read stays
        if (target < used) {
          mergePlace(held.columns, target, held.columns, i);
          continue;
        }
        copyPlace(held.columns, i, target);
        used++;
      }
      held.first = first;
      held.used = used;
    }
  }

  /** From the first place with something counted to the last one, over all zones; length 0 when there is none. */
  filledRange(): { readonly first: number; readonly length: number } {
    let first = Infinity;
    let end = -Infinity;
    for (const held of this.zones) {
      let from = 0;
      while (from < held.used && isEmptyPlace(held.columns, from)) from++;
      let to = held.used;
      while (to > from && isEmptyPlace(held.columns, to - 1)) to--;
      if (to === from) continue;
      first = Math.min(first, held.first + from);
      end = Math.max(end, held.first + to);
    }
    return end < first ? { first: 0, length: 0 } : { first, length: end - first };
  }

  /** All zones from place `first` on, in the memory they grew in: the room is spent afterwards. */
  finish(first: number, length: number): readonly ZoneDigest[] {
    return this.zones.map((held) => {
      if (held.used === 0) held.first = first;
      if (held.first > first) this.beginAt(held, first);
      const start = first - held.first;
      this.extend(held, start + length);
      return partOf(held.columns, start, start + length);
    });
  }

  /** Lays out the first `count` places at least; those that come new are empty. */
  private extend(held: ZoneRoom, count: number): void {
    if (count <= held.used) return;
    if (count > this.room) this.widen(this.mostPlaces);
    const used = Math.min(this.room, Math.ceil(count / PLACES_PER_STEP) * PLACES_PER_STEP);
    this.clear(held.columns, held.used, used);
    held.used = used;
    if (used <= this.missingUsed) return;
    this.missing.fill(NaN, this.missingUsed, used);
    this.missingUsed = used;
  }

  /** Lets a zone begin at an earlier place. */
  private beginAt(held: ZoneRoom, first: number): void {
    const by = held.first - first;
    const count = Math.min(held.used, this.mostPlaces - by); // what lies beyond was laid out, but never filled
    this.extend(held, count + by);
    for (const column of Object.values(held.columns)) if (column !== this.missing) column.copyWithin(by, 0, count);
    this.clear(held.columns, 0, by);
    held.first = first;
  }

  private widen(room: number): void {
    const { missing } = this;
    this.room = room;
    this.missing = new Float32Array(room).fill(NaN, 0, this.missingUsed);
    this.memory = new ArrayBuffer(this.zones.length * room * BYTES_PER_PLACE);
    this.zones.forEach((held, zone) => {
      const columns = columnsAt(this.memory, zone, room);
      for (const name of Object.keys(columns) as (keyof ZoneDigest)[]) {
        if (held.columns[name] !== missing) columns[name].set(held.columns[name].subarray(0, held.used));
      }
      const isMissing = (name: keyof ZoneDigest) => held.used === 0 || held.columns[name] === missing;
      for (const name of optionalColumns) if (isMissing(name)) columns[name] = this.missing;
      held.columns = columns;
    });
  }

  /** Empties places `from` … `to` − 1. */
  private clear(columns: Columns, from: number, to: number): void {
    columns.readingCount.fill(0, from, to);
    columns.badCount.fill(0, from, to);
    for (const name of numberColumns) if (columns[name] !== this.missing) columns[name].fill(NaN, from, to);
  }
}

/** The columns of one zone in the memory of all: first those of numbers, then the counts. */
function columnsAt(memory: ArrayBuffer, zone: number, room: number): Columns {
  const at = zone * room * BYTES_PER_PLACE;
  const numbers = (column: number) => new Float32Array(memory, at + 4 * room * column, room);
  const counts = (column: number) =>
    new Uint16Array(memory, at + 4 * room * numberColumns.length + 2 * room * column, room);
  return {
    readingCount: counts(0),
    badCount: counts(1),
    ...(Object.fromEntries(numberColumns.map((name, column) => [name, numbers(column)])) as Pick<
      ZoneDigest,
      (typeof numberColumns)[number]
    >),
  };
}

function partOf(columns: ZoneDigest, from: number, to: number): ZoneDigest {
  return {
    readingCount: columns.readingCount.subarray(from, to),
    badCount: columns.badCount.subarray(from, to),
    ...(Object.fromEntries(numberColumns.map((name) => [name, columns[name].subarray(from, to)])) as Pick<
      ZoneDigest,
      (typeof numberColumns)[number]
    >),
  };
}

/** Every column by its name: a place is copied for each minute of each zone, and a walk over names costs far more. */
function copyPlace(columns: ZoneDigest, from: number, into: number): void {
  columns.readingCount[into] = columns.readingCount[from]!;
  columns.badCount[into] = columns.badCount[from]!;
  columns.firstDegC[into] = columns.firstDegC[from]!;
  columns.lastDegC[into] = columns.lastDegC[from]!;
  columns.minDegC[into] = columns.minDegC[from]!;
  columns.maxDegC[into] = columns.maxDegC[from]!;
  columns.meanDegC[into] = columns.meanDegC[from]!;
  columns.spreadDegC[into] = columns.spreadDegC[from]!;
  columns.outputPercent[into] = columns.outputPercent[from]!;
  columns.setpointDegC[into] = columns.setpointDegC[from]!;
  columns.runningShare[into] = columns.runningShare[from]!;
}
