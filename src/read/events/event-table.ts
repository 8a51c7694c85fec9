/** A moment stands in one column, or in a date column and a clock column. */
export type TimeColumns = readonly [number] | readonly [number, number];

/** Which column holds what; absent = the file has no such column. */
export interface EventColumns {
  readonly start: TimeColumns;
  readonly end?: TimeColumns;
  readonly acknowledged?: TimeColumns;
  readonly duration?: number;
  readonly state?: number;
  /** 1 and 0, or yes and no: whether somebody has acknowledged the alarm. */
  readonly isAcknowledged?: number;
  readonly priority?: number;
  readonly machine?: number;
  readonly zone?: number;
  readonly source?: number;
  readonly code?: number;
  readonly message?: number;
  readonly done?: number;
  readonly found?: number;
  readonly reason?: number;
  readonly planned?: number;
}

export type EventFileKind = 'alarm' | 'maintenance' | 'stops';

export interface EventTable {
  readonly kind: EventFileKind;
  readonly columns: EventColumns;
  /** The header as given, for a duration's unit ("Duration (min)"). */
  readonly header: readonly string[];
}
