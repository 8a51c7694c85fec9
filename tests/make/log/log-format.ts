/** How a time stands in a log. */
export type TimeStyle =
  | 'iso'
  | 'iso-t'
  | 'iso-t-z'
  | 'iso-t-offset'
  | 'iso-ms'
  | 'slash-ymd'
  | 'dots-dmy'
  | 'dots-dmy-short'
  | 'slash-dmy'
  | 'slash-mdy-12h'
  | 'month-name'
  | 'compact'
  | 'epoch-s'
  | 'epoch-ms'
  | 'split-iso'
  | 'split-dots'
  | 'split-us';

/** Column and tag names: what follows (or leads) the zone's name. */
export interface TagNames {
  readonly reading: string;
  readonly setpoint: string;
  readonly output: string;
  readonly joiner: string;
  readonly place: 'after' | 'before' | 'brackets';
  /** " (°C)" or " [degC]" behind reading and set point, " (%)" behind output; '' = none. */
  readonly unitStyle: '' | 'round' | 'square';
}

export interface AlarmTexts {
  readonly input: string;
  readonly low: string;
  readonly high: string;
}

export interface AlarmFormat {
  /** events: one line per change of state; spans: one line per alarm; on-off: events with 1 and 0. */
  readonly layout: 'events' | 'spans' | 'spans-duration' | 'on-off' | 'none';
  readonly fileName: string;
  readonly texts: AlarmTexts;
  readonly stopTexts: readonly string[];
  /** Where the zone stands. */
  readonly source: 'column' | 'before' | 'after' | 'brackets';
  readonly headers: readonly string[];
  readonly stateWords: { readonly active: string; readonly acknowledged: string; readonly cleared: string };
  readonly hasAcknowledge: boolean;
  readonly hasPriority: boolean;
  /** Alarms of under this many seconds are not logged. */
  readonly shortestS: number;
  /** Seconds that the alarm clock runs ahead of the temperature log's. */
  readonly shiftS: number;
  /** Deviation alarms are logged at all. */
  readonly logsDeviation: boolean;
  readonly machineWord: string;
}

export interface LogFormat {
  /** A short name for tables. */
  readonly dialect: string;
  readonly layout: 'wide' | 'long' | 'wide-daily' | 'long-daily' | 'file-per-zone' | 'file-per-machine';
  readonly isChangeOfValue: boolean;
  /** Change of value: smallest change that is written, in units of the log, and the longest silence in seconds. */
  readonly deadband: number;
  readonly heartbeatS: number;
  readonly fileName: string;
  readonly separator: ',' | ';' | '\t' | '|';
  readonly decimal: '.' | ',';
  readonly time: TimeStyle;
  readonly timeHeader: string;
  /** IANA name, or null: the clock is written as UTC. */
  readonly timezone: string | null;
  readonly unit: 'C' | 'F';
  readonly digits: 0 | 1 | 2;
  readonly outputDigits: 0 | 1;
  readonly tenthsAsIntegers: boolean;
  readonly tags: TagNames;
  /** One file per zone, named after it, with bare PV, SP, OUT columns. */
  readonly isZoneInFileNameOnly: boolean;
  readonly preamble: readonly string[];
  readonly hasUnitRow: boolean;
  readonly quality: 'none' | 'column';
  readonly qualityWords: { readonly good: string; readonly bad: string };
  /** With a quality column: what the value cell holds while the input is bad. */
  readonly badValue: 'code' | 'last' | 'blank';
  readonly runStyle: 'none' | 'flag' | 'word' | 'speed';
  readonly runName: string;
  readonly runWords: { readonly running: string; readonly stopped: string };
  readonly fullSpeed: number;
  readonly has: 'full' | 'nosp' | 'pvonly';
  /** In the log's own unit. A text replaces the high code. */
  readonly codes: { readonly high: number; readonly low: number; readonly text: string | null };
  readonly offSetpoint: 'zero' | 'kept';
  readonly emptyWord: string;
  readonly lineEnd: '\n' | '\r\n';
  readonly encoding: 'utf8' | 'utf8-bom' | 'latin1' | 'utf16le';
  readonly isQuoted: boolean;
  /** Daily files repeat the last rows of the day before. */
  readonly repeatsAtJoins: boolean;
  readonly isGzipped: boolean;
  /** The log's clock is set forward or back at this moment; null = never. */
  readonly clockJump: { readonly atS: number; readonly byS: number } | null;
  readonly hasPlantFile: boolean;
  readonly hasMaintenance: boolean;
  readonly alarms: AlarmFormat;
}

export function toLogUnit(degC: number, unit: 'C' | 'F'): number {
  return unit === 'C' ? degC : degC * 1.8 + 32;
}

/** °C that a full-scale code stands for. */
export function fullScaleDegC({ codes, unit }: Pick<LogFormat, 'codes' | 'unit'>, end: 'high' | 'low'): number {
  const value = end === 'high' ? codes.high : codes.low;
  return unit === 'C' ? value : (value - 32) / 1.8;
}
