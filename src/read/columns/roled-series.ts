import type { ColumnRole, TemperatureUnit } from '../../model/log-file.js';
import type { Series } from './series.js';

/** A series with what it was taken for; the zone is a name for now. */
export interface RoledSeries {
  readonly series: Series;
  readonly role: Extract<ColumnRole, 'reading' | 'setpoint' | 'output' | 'running' | 'alarm' | 'ignored'>;
  /** Zone (or machine, for running) as the name says it; empty = the whole file. */
  readonly rest: string;
  readonly unit: TemperatureUnit | null;
  readonly scale: number;
  readonly why: string;
  /** True when it is read as a temperature although neither its name nor its neighbours say that it is one. */
  readonly isQuantityUnknown?: boolean;
  /** True for a reading whose rows seem to be of two zones in turn. */
  readonly isMixed?: boolean;
  /** The zone and the kind of alarm that plant.yaml gives a flag. */
  readonly given?: { readonly zone: string; readonly kind?: string };
}
