import type { AlarmKind, AlarmSubject } from '../../model/alarm.js';
import { AlarmList } from '../../model/alarm-list.js';
import { flagState, type LogColumn } from '../../model/log-file.js';
import type { Zone } from '../../model/zone.js';
import { flagKind } from './flag-kind.js';

/** What the word in a cell says, where it says more than that an alarm stands. */
const kindOfState: ReadonlyMap<number, AlarmKind> = new Map([
  [flagState.high, 'temperature-high'],
  [flagState.low, 'temperature-low'],
  [flagState.open, 'sensor-open'],
  [flagState.heater, 'heater'],
]);

/** Share of the log in which an alarm may stand (own choice). */
const mostUp = 0.5;

/** One flag, row after row: an alarm begins where it rises and ends where it falls. Keeps its alarms, no rows. */
export class AlarmFlag {
  /** Of its alarms: start and end, UTC ms, and what the cell said. */
  readonly startMs: number[] = [];
  readonly endMs: number[] = [];
  readonly states: number[] = [];
  private standing: number = flagState.rest;
  private firstMs = NaN;
  private lastMs = -Infinity;
  private upMs = 0;

  /** @param subject What it says where a cell says no more. */
  constructor(
    readonly subject: AlarmSubject,
    private readonly isBlankAtRest: boolean,
  ) {}

  /**
   * True for a flag that stands most of the time: an alarm is the exception, and a sensor that is open for so long shows it
   * itself.
   *
   * @param endMs When the log ends, UTC; a log of changes says nothing of a flag that stands.
   */
  isStuck(endMs: number): boolean {
    const restMs = Math.max(0, endMs - this.lastMs);
    const upMs = this.upMs + (this.standing === flagState.rest ? 0 : restMs);
    const allMs = this.lastMs + restMs - this.firstMs;
    return this.startMs.length > 0 && (allMs > 0 ? upMs > mostUp * allMs : this.standing !== flagState.rest);
  }

  /**
   * @param timeMs UTC; rows up to the last one taken are passed over.
   * @param state One of `flagState`; NaN = the row does not say.
   */
  take(timeMs: number, state: number): void {
    if (timeMs <= this.lastMs) return;
    if (Number.isNaN(this.firstMs)) this.firstMs = timeMs;
    else if (this.standing !== flagState.rest) this.upMs += timeMs - this.lastMs;
    this.lastMs = timeMs;
    const said = Number.isNaN(state) && this.isBlankAtRest ? flagState.rest : state;
    if (said === this.standing || Number.isNaN(said)) return;
    if (this.standing !== flagState.rest) this.endMs[this.endMs.length - 1] = timeMs;
    this.standing = said;
    if (said === flagState.rest) return;
    this.startMs.push(timeMs);
    this.endMs.push(NaN);
    this.states.push(said);
  }
}

/** The flags of all files of a run. Those of one zone and name go on from file to file. */
export class AlarmFlags {
  private readonly flags = new Map<string, AlarmFlag>();

  constructor(private readonly zones: readonly Zone[]) {}

  /** The flag of a column; null for columns of other roles. */
  of({ role, name, zones: [zone], isBlankAtRest = false, alarmKind }: LogColumn): AlarmFlag | null {
    if (role !== 'alarm' || zone === undefined) return null;
    const key = `${zone}\0${name}`;
    const known = this.flags.get(key);
    if (known) return known;
    const kind = flagKind(name, alarmKind);
    const { machine } = this.zones[zone]!;
    const subject = { source: name, message: name, kind, zone, machine, priority: null };
    const flag = new AlarmFlag(subject, isBlankAtRest);
    this.flags.set(key, flag);
    return flag;
  }

  /**
   * All alarms by start; one that still stands has no end. None of flags that are stuck.
   *
   * @param logEndMs When the log ends, UTC.
   */
  alarms(logEndMs: number): AlarmList {
    const flags = [...this.flags.values()].filter((flag) => !flag.isStuck(logEndMs));
    const subjects: AlarmSubject[] = [];
    const subject = flags.flatMap((flag) => {
      const numbers = new Map<number, number>();
      return flag.states.map((state) => {
        const kind = kindOfState.get(state) ?? flag.subject.kind;
        const number = numbers.get(state) ?? subjects.push({ ...flag.subject, kind }) - 1;
        numbers.set(state, number);
        return number;
      });
    });
    const startMs = Float64Array.from(flags.flatMap((flag) => flag.startMs));
    const endMs = Float64Array.from(flags.flatMap((flag) => flag.endMs));
    const acknowledgedMs = new Float64Array(startMs.length).fill(NaN);
    return new AlarmList(subjects, { startMs, endMs, acknowledgedMs, subject: Uint32Array.from(subject) }).laterBy(
      () => 0,
    );
  }

  /** What the reader is to know of them, in sentences. */
  assumptions(endMs: number): string[] {
    const stuck = [...this.flags.values()]
      .filter((flag) => flag.isStuck(endMs))
      .map(({ subject }) => `"${subject.source}"`);
    if (stuck.length === 0) return [];
    const which = stuck.length > 3 ? `${stuck.slice(0, 3).join(', ')} and ${stuck.length - 3} more` : stuck.join(', ');
    return [`Alarm flags that are up most of the time tell nothing and are left out: ${which}.`];
  }
}
