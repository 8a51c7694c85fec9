import type { SourceNote } from './findings.js';

/** How cells are told apart in a text file. A blank as separator stands for runs of blanks. */
export interface Dialect {
  readonly separator: ',' | ';' | '\t' | '|' | ' ';
  readonly decimal: '.' | ',';
  /** Mark that groups thousands; empty = none. */
  readonly thousands: '' | ',' | '.' | ' ' | "'";
  /** Empty = quotes have no meaning in this file. */
  readonly quote: '"' | "'" | '';
}

/**
 * How a time cell is to be read. `date`: year, month and day in `order`, then a clock;
 * `clock`: a time of day, whose day `LogFile.days` says;
 * the others: a number counted in `unitMs` milliseconds from 1970 or another fixed moment (`epoch`), from the spreadsheet's day 0
 * (`spreadsheet-days`), or from a start of its own (`elapsed`).
 */
export interface TimeFormat {
  readonly kind: 'date' | 'clock' | 'epoch' | 'spreadsheet-days' | 'elapsed';
  readonly order: 'ymd' | 'dmy' | 'mdy';
  readonly unitMs: number;
  /** Absent unless times were rounded as days of a spreadsheet: then every time stood on this grid before, and is put back on it. */
  readonly gridMs?: number;
  /** `epoch` and `elapsed`: when the count was 0, on the log's clock as if it were UTC; absent = it counts from 1970, or nothing says it. */
  readonly startMs?: number;
  /** True when every cell says its offset from UTC, or counts from a moment in UTC. */
  readonly isAbsolute: boolean;
  /** True when nothing in the column tells day from month; `order` is then a guess. */
  readonly isUndecided: boolean;
  /** Why it was read so, in a few words for the user. */
  readonly why: string;
}

/** From this line on the rows are of this day. */
export interface ClockDay {
  /** From 1; 0 = from the beginning. */
  readonly line: number;
  /** Midnight, as if it were UTC. */
  readonly dayMs: number;
  /** True for a line that holds the date and no row. */
  readonly isDateLine: boolean;
}

/** Where a row holds its time. */
export interface TimePlace {
  /** The column of the time, or of its date, or of the first part of it. */
  readonly timeColumn: number;
  /** Column of the clock where date and clock are parted; -1 = none. */
  readonly clockColumn: number;
  /** Column of dates that hold until the next one, where only the first row of a day has one; absent = none. */
  readonly dayColumn?: number;
  /** Columns of year, month and day where each has its own; else empty. */
  readonly dateParts: readonly number[];
  /** Columns of hour, minute and perhaps second where each has its own; else empty. */
  readonly clockParts: readonly number[];
}

/** Columns that hold one time with what was read then, side by side with others that have times of their own. */
export interface SideBlock {
  /** The column of the time, or those of date and clock. */
  readonly time: readonly number[];
  readonly values: readonly number[];
  /** Tag of each value. */
  readonly tags: readonly string[];
  /** Column that says what the values are worth; -1 = none. */
  readonly quality: number;
}

/** Rows that follow each other below lines that name their zone or machine. */
export interface Section {
  /** First of the lines above its rows. */
  readonly fromLine: number;
  /** Line of its first row. */
  readonly firstRow: number;
  /** What the lines say: the first cells of every row. */
  readonly labels: readonly string[];
  /** By column of the file: its place among all names behind those of the labels. */
  readonly columns: readonly number[];
}

/**
 * How rows are made of a file in which they do not stand as cells with one time each. `json`: one object each, `depth`
 * brackets deep; `assignments`: one line of "name=value" each; `messages`: one line of a time and a text each; `side-by-side`: one of time, tag and value for each block; `transposed`: times across and names down; `sections`: parts below lines that name their zone or machine.
 */
export type RowForm =
  | {
      readonly kind: 'json';
      readonly depth: number;
      /** True when every line holds one object. */
      readonly isByLine: boolean;
      /** All names that the objects give to values; the header. */
      readonly names: readonly string[];
    }
  | { readonly kind: 'assignments'; readonly names: readonly string[] }
  | { readonly kind: 'messages' }
  | {
      readonly kind: 'transposed';
      readonly timeLine: number;
      /** Line of the dates above clocks; 0 = none. */
      readonly dateLine: number;
      /** The first column of times; names stand before it. */
      readonly firstColumn: number;
    }
  | {
      readonly kind: 'sections';
      /** Lines to put above all. */
      readonly above: readonly string[];
      readonly headerLine: number;
      /** What the labels name, then all names of columns; the header. */
      readonly names: readonly string[];
      readonly sections: readonly Section[];
    }
  | { readonly kind: 'side-by-side'; readonly firstLine: number; readonly blocks: readonly SideBlock[] };

export type ColumnRole =
  | 'time'
  | 'date'
  | 'clock'
  | 'day'
  | 'tag'
  | 'value'
  | 'quality'
  | 'reading'
  | 'setpoint'
  | 'output'
  | 'running'
  | 'alarm'
  | 'ignored';

export type TemperatureUnit = 'degC' | 'degF' | 'K';

/** One column of a wide file, or one tag of a long file. */
export interface LogColumn {
  /** Place in the row from 0, or number of the tag. */
  readonly index: number;
  /** As the log has it. */
  readonly name: string;
  readonly role: ColumnRole;
  /** Long: what stands in the tag column, where that is not the whole name. */
  readonly text?: string;
  /** Wide, quality: the column it speaks of; absent where it speaks of the whole row. */
  readonly ofColumn?: number;
  /** Zone indices it belongs to; `running` may serve several. */
  readonly zones: readonly number[];
  /** For temperatures; null for other roles. */
  readonly unit: TemperatureUnit | null;
  /** The cell times this gives the unit (0.1 where the log counts tenths, 100 where an output runs from 0 to 1). */
  readonly scale: number;
  /** For `output`: the number that stands for no heat (4 mA); absent = 0. Taken off before the scale counts. */
  readonly zero?: number;
  /** For `running`: the machine runs when the number is above this. */
  readonly above: number;
  /** For `alarm`: a blank cell says that no alarm stands, because words stand in the column only while one does. */
  readonly isBlankAtRest?: boolean;
  /** For `alarm`: the kind that plant.yaml gives it. */
  readonly alarmKind?: string;
  /** Why it was taken for this, or left alone. */
  readonly why: string;
}

/** A span of time on the log's clock, counted as if it were UTC; both ends belong to it. */
export interface TimeRange {
  readonly fromMs: number;
  readonly toMs: number;
}

/** `zero`: OPC unified status codes and error flags; `one`: a flag that says valid; `opc`: classic OPC, from 192 up. */
export type GoodStatus = 'zero' | 'one' | 'opc';

/** One file or archive entry, as it was understood. Plain data. */
export interface LogFile {
  /** Path as given, with "!entry" or "!sheet" behind it for a part of an archive or workbook. */
  readonly name: string;
  readonly path: string;
  /** Entry of an archive, sheet of a workbook; null = the file itself. */
  readonly part: string | null;
  readonly container: 'text' | 'gzip' | 'zip' | 'workbook' | 'parquet';
  readonly kind: SourceNote['kind'] | 'other';
  /** Why it was taken for this kind; for `other` why it is not read. */
  readonly why: string;
  readonly sizeBytes: number;
  /** Absent unless its lines end with a carriage return alone. */
  readonly isReturnEnded?: boolean;
  readonly encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  readonly dialect: Dialect;
  /** Absent where rows stand in the file as cells. */
  readonly form?: RowForm;
  readonly layout: 'wide' | 'long' | 'none';
  /** A few words: "wide, semicolon, decimal comma, day first". */
  readonly layoutText: string;
  /** Cells of the header row; generated names where there is none. */
  readonly header: readonly string[];
  /** Line on which the first row of data stands, from 1. */
  readonly firstDataLine: number;
  readonly time: TimeFormat;
  /** Absent unless the date or the clock stands in several columns. */
  readonly timePlace?: TimePlace;
  /** Long: column that names the machine of each row, beside that of the tags; absent = none. */
  readonly machineColumn?: number;
  /** Long: column that names the zone of each row, where the tag says the role only; absent = none. */
  readonly zoneColumn?: number;
  /** By line; absent unless the rows hold times of day only. */
  readonly days?: readonly ClockDay[];
  /** Wide: one per column. Long: the columns of the row (time, tag, value, quality). */
  readonly columns: readonly LogColumn[];
  /** Cells that a whole row has; rows with fewer are not finished. */
  readonly rowWidth: number;
  /** What a quality given as a number means by good. */
  readonly goodStatus: GoodStatus;
  /** Long: one per tag found in the survey; empty for wide. */
  readonly tags: readonly LogColumn[];
  /** As the log's clock shows it, counted as if it were UTC; NaN = not known before the whole file is read. */
  readonly firstMs: number;
  readonly lastMs: number;
  /** Spans in which its times lie, years from each other, by time; stray rows are in none. */
  readonly homeMs: readonly TimeRange[];
  /** Usual time between two rows (wide) or two values of a tag (long); NaN = not known. */
  readonly samplingMs: number;
  readonly order: 'rising' | 'falling' | 'mixed' | 'by-tag';
  /** Absent where the file has no such number. */
  readonly noValue?: NoValue;
  /** True when rows stand only for changes, so that a value holds until the next. */
  readonly isChangeLogged: boolean;
  /** How long a reading stands in such a log while other values are written. */
  readonly holdMs: number;
  /** How long the whole of such a log may write nothing before that is a gap. */
  readonly silenceMs: number;
  /** Median of the sampled readings in °C, codes left out as far as they are known; NaN = none. */
  readonly typicalDegC: number;
  readonly notes: readonly string[];
}

/** The number that a wide file writes where it has no value, in columns of all kinds. */
export interface NoValue {
  /** As it stands in the log. */
  readonly raw: number;
  /** Columns of other quantities than the readings, looked at to see whether it stands in them at the same time. */
  readonly columns: readonly number[];
}

/** What a cell held instead of a number, as the reader passes it on. */
export const cellMark = {
  number: 0,
  blank: 1,
  openText: 2,
  otherText: 3,
  badQuality: 4,
  /** The number that stands for no value, in this column and in others at the same time. */
  noValue: 5,
} as const;

/** What a cell of an alarm flag says: no alarm, an alarm, or one whose word says more. NaN = the cell says neither. */
export const flagState = { rest: 0, up: 1, high: 2, low: 3, open: 4, heater: 5 } as const;

/**
 * Rows of a wide file as columns of numbers, in the log's own units and clock. Arrays may be longer than `length`
 * and are used again for the next batch.
 */
export interface WideBatch {
  length: number;
  /** The log's clock as if it were UTC; strictly as in the file. */
  readonly clockMs: Float64Array;
  /** By place in LogFile.columns; null for columns that nobody reads. */
  readonly values: readonly (Float64Array | null)[];
  /** By place in LogFile.columns; for readings only. One {@link cellMark} per row. */
  readonly marks: readonly (Uint8Array | null)[];
  /** False when all marks of the batch say number, as they nearly always do. */
  readonly hasMarks: boolean;
  /** Line of each row in the file. */
  readonly line: Float64Array;
}

/** Rows of a long file. */
export interface TagBatch {
  length: number;
  readonly clockMs: Float64Array;
  /** Number of the tag in LogFile.tags; -1 = a tag not known to the survey. */
  readonly tag: Int32Array;
  readonly value: Float64Array;
  readonly mark: Uint8Array;
  readonly line: Float64Array;
}
