import type { AlarmSpan, AlarmSubject } from './alarm.js';

/** Times of alarms as columns, UTC ms, NaN as in `AlarmSpan`; `subject` is an index into the list's subjects. */
export interface AlarmColumns {
  readonly startMs: Float64Array;
  readonly endMs: Float64Array;
  readonly acknowledgedMs: Float64Array;
  readonly subject: Uint32Array;
}

/**
 * Alarms by start, held as columns: 28 bytes each, where an object of its own takes some 150. Whoever goes through the
 * list gets objects that are made on the way; to keep many of them, keep a list made by `about`, `where` or `pick`.
 */
export class AlarmList implements Iterable<AlarmSpan> {
  readonly length: number;

  /**
   * @param subjects What the alarms are about; many alarms share one.
   * @param columns Of equal length, by start.
   */
  constructor(
    readonly subjects: readonly AlarmSubject[],
    readonly columns: AlarmColumns,
  ) {
    this.length = columns.startMs.length;
  }

  /** From alarms one by one, kept in the order given. */
  static of(spans: readonly AlarmSpan[]): AlarmList {
    return new AlarmList(spans, {
      startMs: Float64Array.from(spans, ({ startMs }) => startMs),
      endMs: Float64Array.from(spans, ({ endMs }) => endMs),
      acknowledgedMs: Float64Array.from(spans, ({ acknowledgedMs }) => acknowledgedMs),
      subject: Uint32Array.from(spans, (_, i) => i),
    });
  }

  /** The alarm at a place that the list has. */
  at(place: number): AlarmSpan {
    const { startMs, endMs, acknowledgedMs, subject } = this.columns;
    const { source, message, kind, zone, machine, priority } = this.subjects[subject[place]!]!;
    return {
      startMs: startMs[place]!,
      endMs: endMs[place]!,
      acknowledgedMs: acknowledgedMs[place]!,
      source,
      message,
      kind,
      zone,
      machine,
      priority,
    };
  }

  *[Symbol.iterator](): Iterator<AlarmSpan> {
    for (let place = 0; place < this.length; place++) yield this.at(place);
  }

  /** Those that are about what is asked for; each subject is asked once. */
  about(isAskedFor: (subject: AlarmSubject) => boolean): AlarmList {
    const isWanted = Uint8Array.from(this.subjects, (subject) => (isAskedFor(subject) ? 1 : 0));
    return this.where((place) => isWanted[this.columns.subject[place]!] === 1);
  }

  /** Those at the places that are asked for. */
  where(isWanted: (place: number) => boolean): AlarmList {
    const marks = new Uint8Array(this.length);
    let count = 0;
    for (let place = 0; place < this.length; place++) {
      if (!isWanted(place)) continue;
      marks[place] = 1;
      count++;
    }
    const places = new Uint32Array(count);
    for (let place = 0, next = 0; next < count; place++) if (marks[place] === 1) places[next++] = place;
    return this.pick(places);
  }

  /** Lists by a key, in the order in which the keys come; alarms whose key is null are left out. */
  groupBy(keyAt: (place: number) => string | null): Map<string, AlarmList> {
    const keys: string[] = [];
    const numbers = new Map<string, number>(); // from 1 on; 0 is left out
    const counts = [0];
    const numberAt = new Uint32Array(this.length);
    for (let place = 0; place < this.length; place++) {
      const key = keyAt(place);
      if (key === null) continue;
      const number = numbers.get(key) ?? keys.push(key);
      numbers.set(key, number);
      numberAt[place] = number;
      counts[number] = (counts[number] ?? 0) + 1;
    }
    const places = counts.map((count) => new Uint32Array(count));
    const filled = counts.map(() => 0);
    numberAt.forEach((number, place) => {
      if (number > 0) places[number]![filled[number]!++] = place;
    });
    return new Map(keys.map((key, i) => [key, this.pick(places[i + 1]!)]));
  }

  /** Those at some places, in the order of the places. */
  pick(places: ArrayLike<number>): AlarmList {
    const { startMs, endMs, acknowledgedMs, subject } = this.columns;
    const taken = <T extends Float64Array | Uint32Array>(column: T, into: T): T => {
      for (let i = 0; i < places.length; i++) into[i] = column[places[i]!]!;
      return into;
    };
    return new AlarmList(this.subjects, {
      startMs: taken(startMs, new Float64Array(places.length)),
      endMs: taken(endMs, new Float64Array(places.length)),
      acknowledgedMs: taken(acknowledgedMs, new Float64Array(places.length)),
      subject: taken(subject, new Uint32Array(places.length)),
    });
  }

  /**
   * All alarms later by so many ms, put in order of start again; those that start together stay as they were.
   *
   * @param shiftMsOf Asked for each time of an alarm, since the clock it stands on may have been changed in between.
   */
  laterBy(shiftMsOf: (subject: AlarmSubject, timeMs: number) => number): AlarmList {
    const { startMs, endMs, acknowledgedMs, subject } = this.columns;
    const moved = (column: Float64Array) =>
      column.map((timeMs, place) => timeMs + shiftMsOf(this.subjects[subject[place]!]!, timeMs));
    const columns = { startMs: moved(startMs), endMs: moved(endMs), acknowledgedMs: moved(acknowledgedMs), subject };
    const order = Uint32Array.from(subject, (_, place) => place);
    order.sort((a, b) => columns.startMs[a]! - columns.startMs[b]! || a - b);
    return new AlarmList(this.subjects, columns).pick(order);
  }
}
