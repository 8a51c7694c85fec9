import type { Cause } from '../model/cause.js';
import type { OhmReason } from './offset-ohms.js';
import type { Wires } from './rtd-wiring.js';
import type { SensorSpec } from './sensor-types.js';
import type { ToleranceClass } from './tolerance.js';

export interface OffsetQuestion {
  readonly sensor: SensorSpec;
  readonly trueDegC: number;
  readonly readingDegC: number;
  /** RTD only; 3 unless given (common practice in heater zones). */
  readonly wires?: Wires | undefined;
  /** The sensor's usual class unless given. */
  readonly toleranceClass?: ToleranceClass | undefined;
  /** Thermocouples only: temperature of the input's terminals; 25 °C unless given. */
  readonly terminalDegC?: number | undefined;
  /** How near a wrong type or a swap must predict the reading; 2 °C unless given (common practice). */
  readonly withinDegC?: number | undefined;
}

export type OffsetReason =
  | OhmReason
  | 'within-tolerance'
  | 'element-shifted'
  | 'other-type-fitted'
  | 'off-the-table'
  | 'leads-reversed'
  | 'extension-swapped'
  | 'copper-extension'
  | 'shorted-in-cable'
  | 'thermocouple-ignores-ohms'
  | 'loop-ignores-ohms';

/** One way to account for an offset, or one that is ruled out (`sensible` false), with a sentence for the reader. */
export interface Explanation {
  readonly reason: OffsetReason;
  readonly sensible: boolean;
  /** null where it points to no single cause. */
  readonly points: Cause | null;
  readonly says: string;
  /** Ohm in series (signed) or in parallel, as the reason says; null where ohms are not the point. */
  readonly ohm: number | null;
}

export interface OffsetExplained {
  readonly offsetDegC: number;
  /** RTD: resistance expected and seen by the card, and the difference. null for others or off the table. */
  readonly expectedOhm: number | null;
  readonly seenOhm: number | null;
  /** Signed ohms in series that give exactly this offset; null unless they make sense for this wiring. */
  readonly seriesOhm: number | null;
  /** Ohms in parallel that give exactly this offset; null unless they make sense. */
  readonly shuntOhm: number | null;
  /** Sensible ones first. */
  readonly explanations: readonly Explanation[];
}
