import type { OtherStop } from './machine-run.js';
import type { PlantParameters } from './plant-parameters.js';
import type { PlantTruth } from './truth.js';
import type { MadeAlarm } from './zone-alarms.js';

/** What stands in a recorded cell. */
export const cell = { good: 0, aboveScale: 1, belowScale: 2, restartZero: 3, missing: 4 } as const;

/** One zone as recorded: one place per row. */
export interface MadeZone {
  readonly index: number;
  readonly name: string;
  readonly machine: number;
  readonly card: string;
  /** °C; NaN where {@link cell} is not good. */
  readonly readingDegC: Float64Array;
  /** One {@link cell} per row. */
  readonly state: Uint8Array;
  /** °C; 0 = switched off where the plant logs it so. */
  readonly setpointDegC: Float64Array;
  readonly outputPercent: Float64Array;
  /** The temperature of the bar itself, which no log has. */
  readonly trueDegC: Float64Array;
}

export interface MadeMachine {
  readonly name: string;
  readonly running: Uint8Array;
  /** Share of full speed; 0 while standing. */
  readonly speed: Float32Array;
}

/** A plant as its recorder and its alarm system saw it, and what really happened. Seconds count from `parameters.startMs`. */
export interface Plant {
  readonly parameters: PlantParameters;
  /** True time of each row. */
  readonly timeS: Float64Array;
  /** False where a row is missing from the file. */
  readonly isRow: Uint8Array;
  readonly zones: readonly MadeZone[];
  readonly machines: readonly MadeMachine[];
  readonly alarms: readonly MadeAlarm[];
  readonly otherStops: readonly OtherStop[];
  readonly truth: PlantTruth;
}
