import { AlarmList } from '../../model/alarm-list.js';
import { alarmRowState, type AlarmLabel, type AlarmRows } from '../../model/event-rows.js';
import type { LabelMeaning } from './label-meaning.js';

/** What did not pair; all of it is said in the source notes. */
export interface PairingCounts {
  /** Rows left out because another file, or the same row again, already said the same. */
  repeatedRows: number;
  /** Activations of an alarm that stood already; not counted as new ones. */
  repeatedActivations: number;
  /** Returns of alarms that the log never saw come. */
  returnsWithoutStart: number;
  /** Acknowledgements of nothing. */
  acknowledgementsWithoutStart: number;
  /** Alarms that still stood at the end of the log. */
  standing: number;
  /** Returns that carried another text and were matched by source alone. */
  returnsBySource: number;
  /** Rows whose end lay before their start; kept without an end. */
  endsBeforeStart: number;
  /** Rows that tell what somebody did: no alarms. */
  actions: number;
  /** Activations in logs, or in a file, without any returns: kept with no length. */
  withoutReturns: number;
}

export interface PairedAlarms {
  readonly alarms: AlarmList;
  readonly counts: PairingCounts;
}

/**
 * Makes alarms from rows: activation, acknowledgement and return of the same source and message become one alarm.
 *
 * @param rows Rows of all alarm logs, any order. Rows of one moment keep the order of their file.
 * @param meanings One per label of `rows`.
 * @returns Alarms by start; `endMs` NaN for an alarm that still stands. Never throws. Cost n·log n.
 */
export function pairAlarms(rows: AlarmRows, meanings: readonly LabelMeaning[]): PairedAlarms {
  const counts: PairingCounts = {
    repeatedRows: 0,
    repeatedActivations: 0,
    returnsWithoutStart: 0,
    acknowledgementsWithoutStart: 0,
    standing: 0,
    returnsBySource: 0,
    endsBeforeStart: 0,
    actions: 0,
    withoutReturns: 0,
  };
  const pairing = new Pairing(rows, meanings, counts);
  for (const row of orderWithoutRepeats(rows, counts)) pairing.take(row);
  return { alarms: pairing.finish(), counts };
}

/**
 * Row numbers by time. Rows that several files hold count as often as the file that holds them most often, so
 * overlapping exports add nothing while quick chatter inside one file stays.
 */
function orderWithoutRepeats(rows: AlarmRows, counts: PairingCounts): Uint32Array {
  const order = Uint32Array.from({ length: rows.length }, (_, i) => i);
  order.sort((a, b) => rows.startMs[a]! - rows.startMs[b]! || rows.file[a]! - rows.file[b]! || a - b);
  let kept = 0;
  for (let from = 0; from < order.length;) {
    let to = from + 1;
    while (to < order.length && rows.startMs[order[to]!] === rows.startMs[order[from]!]) to++;
    kept = keepOfOneMoment(rows, order, from, to, kept);
    from = to;
  }
  counts.repeatedRows += order.length - kept;
  return order.subarray(0, kept);
}

/** Writes the rows of one moment that count to `order` from place `kept`; returns the next free place. */
function keepOfOneMoment(rows: AlarmRows, order: Uint32Array, from: number, to: number, kept: number): number {
  if (to === from + 1) {
    order[kept] = order[from]!;
    return kept + 1;
  }
  const most = new Map<number, number>(); // kind of row → how often kept so far
  const inFile = new Map<number, number>(); // kind of row → how often met in the file at hand
  let file = -1;
  for (let i = from; i < to; i++) {
    const row = order[i]!;
    if (rows.file[row] !== file) inFile.clear();
    file = rows.file[row]!;
    const kind = rows.label[row]! * 8 + rows.state[row]!;
    const met = (inFile.get(kind) ?? 0) + 1;
    inFile.set(kind, met);
    const before = most.get(kind) ?? 0;
    const isWhole = rows.state[row] === alarmRowState.span;
    if (isWhole && before > 0) keepLaterEnd(rows, order.subarray(from, kept), row);
    if (met <= before || (isWhole && before > 0)) continue;
    most.set(kind, met);
    order[kept++] = row;
  }
  return kept;
}

/** One export may have been taken while the alarm stood: the row that knows the end wins. */
function keepLaterEnd(rows: AlarmRows, kept: Uint32Array, row: number): void {
  const twin = kept.find((other) => rows.label[other] === rows.label[row] && rows.state[other] === rows.state[row]);
  if (twin === undefined) return;
  if (!(rows.endMs[twin]! >= rows.endMs[row]!)) rows.endMs[twin] = rows.endMs[row]!;
  if (Number.isNaN(rows.acknowledgedMs[twin])) rows.acknowledgedMs[twin] = rows.acknowledgedMs[row]!;
}

/** Goes through the rows in time order and holds, for each alarm text, the place of the alarm that stands. */
class Pairing {
  private readonly startMs: Float64Array;
  private readonly endMs: Float64Array;
  private readonly acknowledgedMs: Float64Array;
  private readonly subject: Uint32Array;
  private length = 0;
  private readonly alarmOfLabel: Uint32Array;
  private readonly standing = new Map<number, number>();
  private readonly latest = new Map<number, number>();
  private readonly alarmsOfSource = new Map<string, number[]>();
  private readonly everActive = new Set<number>();
  private readonly everCleared = new Set<number>();
  private readonly hasReturns: boolean;
  private readonly cameOnly: ReadonlySet<number>;

  constructor(
    private readonly rows: AlarmRows,
    private readonly meanings: readonly LabelMeaning[],
    private readonly counts: PairingCounts,
  ) {
    this.alarmOfLabel = alarmsOfLabels(rows.labels);
    let hasReturns = false;
    let most = 0;
    for (let row = 0; row < rows.length; row++) {
      if (rows.state[row] === alarmRowState.cleared) hasReturns = true;
      if (rows.state[row] !== alarmRowState.cleared && rows.state[row] !== alarmRowState.acknowledged) most++;
      if (rows.state[row] === alarmRowState.cleared) this.everCleared.add(this.alarmOfLabel[rows.label[row]!]!);
      if (rows.state[row] === alarmRowState.active) this.everActive.add(this.alarmOfLabel[rows.label[row]!]!);
    }
    this.hasReturns = hasReturns;
    this.cameOnly = hasReturns ? filesWithoutReturns(rows, meanings, this.alarmOfLabel) : new Set();
    this.startMs = new Float64Array(most);
    this.endMs = new Float64Array(most);
    this.acknowledgedMs = new Float64Array(most);
    this.subject = new Uint32Array(most);
  }

  take(row: number): void {
    if (this.meanings[this.rows.label[row]!]!.isAction) {
      this.counts.actions++;
      return;
    }
    const state = this.rows.state[row];
    if (state === alarmRowState.span) this.takeWhole(row);
    else if (state === alarmRowState.active) this.activate(row);
    else if (state === alarmRowState.acknowledged) this.acknowledge(row);
    else if (state === alarmRowState.cleared) this.clear(row);
    // A text that is said to be over elsewhere comes where it says nothing.
    else if (this.everCleared.has(this.alarmOfLabel[this.rows.label[row]!]!)) this.activate(row);
    else this.open(row, this.rows.startMs[row]!);
  }

  finish(): AlarmList {
    // A list that says start and end in one row fills its columns, which are then kept as they are.
    const filled = <T extends Float64Array | Uint32Array>(column: T): T =>
      this.length === column.length ? column : (column.slice(0, this.length) as T);
    const endMs = filled(this.endMs);
    this.counts.standing += endMs.reduce((count, timeMs) => count + (Number.isNaN(timeMs) ? 1 : 0), 0);
    return new AlarmList(this.meanings, {
      startMs: filled(this.startMs),
      endMs,
      acknowledgedMs: filled(this.acknowledgedMs),
      subject: filled(this.subject),
    });
  }

  private takeWhole(row: number): void {
    const endMs = this.rows.endMs[row]!;
    const isBackwards = endMs < this.rows.startMs[row]!;
    if (isBackwards) this.counts.endsBeforeStart++;
    this.open(row, isBackwards ? this.rows.startMs[row]! : endMs);
  }

  private activate(row: number): void {
    const alarm = this.alarmOfLabel[this.rows.label[row]!]!;
    const isAcknowledged = !Number.isNaN(this.rows.acknowledgedMs[row]!);
    if (this.standing.has(alarm)) {
      if (isAcknowledged) this.acknowledge(row);
      else this.counts.repeatedActivations++;
      return;
    }
    const hasReturns = this.hasReturns && !this.cameOnly.has(this.rows.file[row]!);
    const place = this.open(row, hasReturns ? NaN : this.rows.startMs[row]!);
    // A flag on the row of its coming says that somebody did, not when.
    if (this.rows.acknowledgedMs[row] === this.rows.startMs[row]) this.acknowledgedMs[place] = NaN;
    if (!hasReturns) this.counts.withoutReturns++;
    else this.standing.set(alarm, place);
    const { source } = this.meanings[this.rows.label[row]!]!;
    const alarms = this.alarmsOfSource.get(source);
    if (!alarms) this.alarmsOfSource.set(source, [alarm]);
    else if (!alarms.includes(alarm)) alarms.push(alarm);
  }

  private acknowledge(row: number): void {
    const alarm = this.alarmOfLabel[this.rows.label[row]!]!;
    const place = this.standing.get(alarm) ?? this.latest.get(alarm);
    if (place === undefined) this.counts.acknowledgementsWithoutStart++;
    else if (Number.isNaN(this.acknowledgedMs[place])) this.acknowledgedMs[place] = this.rows.startMs[row]!;
  }

  private clear(row: number): void {
    let alarm = this.alarmOfLabel[this.rows.label[row]!]!;
    if (!this.standing.has(alarm) && !this.everActive.has(alarm)) alarm = this.standingOfSameSource(row) ?? alarm;
    const place = this.standing.get(alarm);
    if (place === undefined) {
      this.counts.returnsWithoutStart++;
      return;
    }
    this.endMs[place] = this.rows.startMs[row]!;
    this.standing.delete(alarm);
  }

  /** Some logs give the return another text ("temperature normal"): it ends the source's alarm that stands. */
  private standingOfSameSource(row: number): number | undefined {
    const { source } = this.meanings[this.rows.label[row]!]!;
    const alarm = this.alarmsOfSource.get(source)?.findLast((other) => this.standing.has(other));
    if (alarm !== undefined) this.counts.returnsBySource++;
    return alarm;
  }

  /** Returns the place of the new alarm. */
  private open(row: number, endMs: number): number {
    const place = this.length++;
    const label = this.rows.label[row]!;
    this.startMs[place] = this.rows.startMs[row]!;
    this.endMs[place] = endMs;
    this.acknowledgedMs[place] = this.rows.acknowledgedMs[row]!;
    this.subject[place] = label;
    this.latest.set(this.alarmOfLabel[label]!, place);
    return place;
  }
}

/**
 * Files that tell how alarms come and never how they go, beside others that do: an alarm comes twice in them, and none of
 * their sources has a return in any file.
 */
function filesWithoutReturns(
  rows: AlarmRows,
  meanings: readonly LabelMeaning[],
  alarmOfLabel: Uint32Array,
): ReadonlySet<number> {
  const sourceOf = (row: number): string => meanings[rows.label[row]!]!.source || meanings[rows.label[row]!]!.message;
  const returning = new Set<string>();
  for (let row = 0; row < rows.length; row++)
    if (rows.state[row] === alarmRowState.cleared) returning.add(sourceOf(row));
  const seen = new Set<number>();
  const repeating = new Set<number>();
  const others = new Set<number>();
  for (let row = 0; row < rows.length; row++) {
    const file = rows.file[row]!;
    if (rows.state[row] === alarmRowState.cleared || returning.has(sourceOf(row))) others.add(file);
    if (rows.state[row] !== alarmRowState.active) continue;
    const key = file * 2 ** 32 + alarmOfLabel[rows.label[row]!]!;
    if (seen.has(key)) repeating.add(file);
    seen.add(key);
  }
  return new Set([...repeating].filter((file) => !others.has(file)));
}

/** Labels that differ in priority alone are one alarm: some logs change it on acknowledgement. */
function alarmsOfLabels(labels: readonly AlarmLabel[]): Uint32Array {
  const alarms = new Map<string, number>();
  return Uint32Array.from(labels, ({ source, zone, machine, code, message }) => {
    const key = [source, zone, machine, code, message].join('\u0000');
    const alarm = alarms.get(key) ?? alarms.size;
    alarms.set(key, alarm);
    return alarm;
  });
}
