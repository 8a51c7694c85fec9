import type { AlarmFindings } from './alarm-findings.js';
import type { DowntimeFindings } from './downtime-findings.js';
import type { HistoryFindings, RecordShares, TrackRecord } from './history-findings.js';
import type { Cause, Probabilities } from './cause.js';
import type { Check } from './check.js';
import type { Facts } from './detector.js';
import type { ProblemNote } from './problem.js';

/** Times in findings are ISO 8601 in UTC. */
export type Iso = string;

export interface RejectedExample {
  readonly reason: string;
  /** From 1. */
  readonly line: number;
  /** Beginning of the row as it stands. */
  readonly text: string;
}

export interface SourceNote {
  readonly file: string;
  readonly kind: 'temperature' | 'alarm' | 'maintenance' | 'stops' | 'plant';
  /** What the file was taken for, in a few words: "wide, semicolon, day first". */
  readonly layout: string;
  readonly rowsRead: number;
  readonly rowsRejected: number;
  readonly rejectedByReason?: Readonly<Record<string, number>>;
  /** The first row left out for each reason, as far as it is shown; the reasons are those of `rejectedByReason`. */
  readonly rejectedExamples?: readonly RejectedExample[];
  readonly notes: readonly string[];
}

export interface SymptomNote {
  readonly detector: string;
  readonly start: Iso;
  readonly end: Iso;
  readonly count: number;
  readonly facts: Facts;
}

/** One named term of the sum that makes the verdict: log-odds added to each cause. */
export interface TermNote {
  readonly term: string;
  /** The plain sentence. */
  readonly says: string;
  /** 0 to 1: how strongly the term applies. */
  readonly value: number;
  /** Log-odds added per cause; causes it does not speak of are left out. */
  readonly adds: Readonly<Partial<Record<Cause, number>>>;
}

/** One cause as the weighing knows it, whatever the zone. */
export interface CauseRow {
  readonly cause: Cause;
  /** Share of zones before any evidence, 0 to 1. */
  readonly priorShare: number;
  readonly priorNote: string;
  /** What no log can tell of it. */
  readonly cannotTell: string;
  /** The loudest terms, with the log-odds each adds at full value. */
  readonly for: readonly { readonly term: string; readonly says: string; readonly logOdds: number }[];
  readonly against: readonly { readonly term: string; readonly says: string; readonly logOdds: number }[];
}

/** Columns of equal length for one zone's chart, thinned so that every extreme is kept. */
export interface Trace {
  readonly timeMs: readonly number[];
  readonly minDegC: readonly (number | null)[];
  readonly maxDegC: readonly (number | null)[];
  readonly setpointDegC: readonly (number | null)[];
  readonly outputPercent: readonly (number | null)[];
  readonly runningShare: readonly (number | null)[];
  /** Samples that hold no temperature (open, code, text), summed over each place. */
  readonly badCount?: readonly number[];
}

/** A single fault of one zone, for the zone's chart and the list of its last faults. */
export interface FaultMark {
  readonly start: Iso;
  readonly end: Iso;
  /** What it is, as an id: open, spike, step, stuck … */
  readonly kind: string;
}

/** An alarm of one zone, for the zone's chart. */
export interface AlarmMark {
  readonly start: Iso;
  /** null = still standing at the end of the log. */
  readonly end: Iso | null;
  readonly message: string;
}

export interface RepairNote {
  readonly time: Iso;
  readonly from: 'log' | 'maintenance list';
  readonly done: string;
  readonly found: string;
}

/** The one method whose number counts, and the limits between which the error lies in 9 of 10 cases by its own reckoning. */
export interface OffsetBasis {
  readonly detector: string;
  /** `both` = cold soaks and duty together; `jump` = the jump of the reading with which it began. */
  readonly from: 'both' | 'soaks' | 'duty' | 'jump';
  readonly lowDegC: number;
  readonly highDegC: number;
  /** What each gave by itself; null where it gave nothing. */
  readonly coldDegC: number | null;
  readonly hotDegC: number | null;
}

export type ZoneStatus = 'faulty' | 'watch' | 'healthy' | 'insufficient-data';

/** Heats although its output is zero, or is heated by a reading that is far too low. */
export type UncheckedHeat = 'stuck-on' | 'reading-low';

export interface ZoneFinding {
  readonly zone: string;
  readonly machine: string;
  readonly rank: number;
  readonly status: ZoneStatus;
  readonly probabilities: Probabilities;
  readonly onset: Iso | null;
  readonly fixed: Iso | null;
  /** Reading minus truth at the window's end, where it can be told. */
  readonly offsetDegC: number | null;
  /** How well `offsetDegC` is known and what told it. Absent in older findings. */
  readonly offsetBasis?: OffsetBasis | null;
  readonly seriesOhm: number | null;
  readonly shuntOhm: number | null;
  /** Production time lost to this zone's fault. */
  readonly downtimeMinutes: number;
  readonly symptoms: readonly SymptomNote[];
  readonly unable: readonly { readonly detector: string; readonly why: string }[];
  readonly checks: readonly Check[];
  /** The sum behind the probabilities, strongest first. */
  readonly terms: readonly TermNote[];
  readonly prior: Readonly<Partial<Record<Cause, number>>>;
  readonly sensor: string | null;
  readonly wires: 2 | 3 | 4 | null;
  readonly card: string | null;
  readonly setpointDegC: number | null;
  /** Room temperature from the zone's last cold soak. */
  readonly roomDegC: number | null;
  /** Date on which a slow drift leaves the tolerance band, where there is one. */
  readonly leavesTolerance: Iso | null;
  readonly trend: 'worse' | 'steady' | 'better' | null;
  /** Why its loop cannot hold its heat back now, so that it may overheat; null where it can. Absent in older findings. */
  readonly uncheckedHeat?: UncheckedHeat | null;
  /** The measurement that settles most per minute of work. */
  readonly nextCheck: string | null;
  /** Its id, so that the report can set the values to expect beside it. Absent in older findings. */
  readonly nextCheckId?: string | null;
  readonly repairs: readonly RepairNote[];
  /** One point per cold soak: reading minus the median of its peers. */
  readonly soaks: readonly { readonly time: Iso; readonly offsetDegC: number; readonly uncertaintyDegC: number }[];
  /** One point per settled stretch: duty against the model, as °C. */
  readonly duty: readonly { readonly time: Iso; readonly residualDegC: number; readonly residualPercent: number }[];
  readonly opensByDay: readonly { readonly day: string; readonly running: number; readonly stopped: number }[];
  readonly trace: Trace | null;
  /** Single faults in time order, at most some 500; `symptoms` counts them all. */
  readonly faultMarks?: readonly FaultMark[];
  /** The zone's alarms in time order, at most some 500; the rest are counted in `alarms`. */
  readonly alarmMarks?: readonly AlarmMark[];
}

/** findings.json, schema 1. Keys of the contract keep their meaning; more may be added. */
export interface Findings {
  readonly schemaVersion: 1;
  readonly window: { readonly start: Iso; readonly end: Iso };
  /** IANA name of the plant's clock; the report shows its times in it, in UTC when absent. */
  readonly timezone?: string;
  readonly sources: readonly SourceNote[];
  readonly zones: readonly ZoneFinding[];
  readonly alarms: AlarmFindings;
  readonly downtime: DowntimeFindings;
  readonly problems: readonly ProblemNote[];
  readonly assumptions: readonly string[];
  readonly history: HistoryFindings | null;
  readonly trackRecord: TrackRecord | null;
  /** Absent where no record is kept. */
  readonly recordShares?: RecordShares;
  /** How the causes were weighed; absent in findings of earlier versions. */
  readonly causes?: readonly CauseRow[];
}
