import type { Cause } from '../../src/model/cause.js';

/** What really happened to one zone. The first block of names is what the scoring program reads. */
export interface ZoneTruth {
  readonly zone: string;
  readonly machine: string;
  readonly card: string;
  readonly cause: Cause;
  readonly fault: string;
  /** The fault that was planned; with cause `none` it left no trace. */
  readonly drawn: string;
  readonly onset: string | null;
  readonly fixed: string | null;
  /** Reading minus truth at the working temperature at the end of the log (or just before the repair). */
  readonly driftC: number | null;
  /** Production time lost while the zone kept its machine from running, at least a minute a stop. */
  readonly downtimeMin: number;
  /** From then until the machine ran again. */
  readonly restartMin: number;
  readonly opens: number;

  readonly shape: string | null;
  readonly openS: number;
  readonly contactOhm: number | null;
  readonly shuntOhm: number | null;
  /** A second, lesser fault of the same zone. */
  readonly second: string | null;
  readonly lookAlikes: readonly string[];
}

export interface MachineTruth {
  readonly machine: string;
  readonly plannedMin: number;
  readonly ranMin: number;
  readonly lostToZonesMin: number;
  readonly restartMin: number;
  readonly lostToOtherStopsMin: number;
  readonly lostWarmingUpMin: number;
}

export interface PlantTruth {
  readonly meta: Readonly<Record<string, unknown>>;
  readonly zones: readonly ZoneTruth[];
  readonly machines: readonly MachineTruth[];
}
