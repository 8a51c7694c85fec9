import type { Cause } from './cause.js';

/** One zone in plant.yaml; only the name is needed. */
export interface PlantZone {
  readonly name: string;
  readonly machine?: string;
  readonly sensor?: string;
  readonly wires?: 2 | 3 | 4;
  readonly card?: string;
  /** Watts of the heater at its rated volts, both from its nameplate. */
  readonly heaterW?: number;
  readonly heaterV?: number;
  readonly toleranceClass?: string;
  /** Column or tag names, where the log's own do not say it. */
  readonly reading?: string;
  readonly setpoint?: string;
  readonly output?: string;
}

/** plant.yaml, checked. Every key is optional but a zone's name. */
export interface PlantFile {
  readonly unit?: 'degC' | 'degF' | 'K';
  readonly timezone?: string;
  /** How to read 03/04/2026 where nothing in the log decides. */
  readonly dates?: 'day-first' | 'month-first';
  readonly zones: readonly PlantZone[];
  readonly running?: readonly { readonly machine: string; readonly column: string }[];
  readonly alarmTexts?: readonly { readonly text: string; readonly kind: string; readonly zone?: string }[];
  /** Columns or tags that are alarm flags, where their names do not say it; the kind as in `alarmTexts`. */
  readonly alarmColumns?: readonly { readonly column: string; readonly zone: string; readonly kind?: string }[];
  /** Columns or tags that nobody is to read. */
  readonly leaveOut?: readonly string[];
  /** A change-of-value log holds a value at most this long. */
  readonly holdMinutes?: number;
  /** Days from Monday = 1 to Sunday = 7, clocks as "06:00"; one that ends before it begins goes over midnight. */
  readonly shifts?: readonly { readonly days: readonly number[]; readonly from: string; readonly to: string }[];
  readonly costPerHour?: number | Readonly<Record<string, number>>;
  readonly currency?: string;
  /** Share of zones by cause before any evidence, `none` for no fault; replaces the fitted shares and the record. */
  readonly priors?: Partial<Record<Cause, number>>;
  /** Findings that the fitted shares of faults are worth against the record's own. */
  readonly priorFindings?: number;
  /** Strengths by term and cause that replace the fitted ones. */
  readonly strengths?: Readonly<Record<string, Partial<Record<Cause, number>>>>;
  readonly roomDegC?: number;
  readonly leadLengthM?: number;
  readonly leadGauge?: string;
}
