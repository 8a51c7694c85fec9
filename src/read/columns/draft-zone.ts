import type { PlantZone } from '../../model/plant-file.js';
import type { RoledSeries } from './column-roles.js';

/** What the assembly of zones needs to know of a file. */
export interface ZoneSource {
  readonly name: string;
  readonly preamble: readonly string[];
  readonly roled: readonly RoledSeries[];
  readonly firstMs: number;
  readonly lastMs: number;
  readonly samplingMs: number;
  readonly isChangeLogged: boolean;
}

/** A series with the zones it serves. */
export interface Attached extends RoledSeries {
  readonly zones: readonly number[];
}

/** A zone while it is put together. */
export interface DraftZone {
  readonly key: string;
  name: string;
  machine: string | null;
  readonly file: number;
  /** Files that hold its reading, with the series. */
  readonly readings: { file: number; roled: RoledSeries }[];
  readonly has: { reading: boolean; setpoint: boolean; output: boolean; running: boolean };
  /** Name of the column that several zones share, by role; the file of the next day has it again. */
  readonly shared: { running?: string; setpoint?: string };
  plant: PlantZone | null;
}
