import type { Cause } from './cause.js';
import type { Place } from './problem.js';

/** What somebody found at a zone. */
export interface RecordEntry {
  readonly zone: string;
  /** null = not said. */
  readonly machine: string | null;
  /** ISO 8601 in UTC. */
  readonly time: string;
  readonly found: Cause;
  readonly note: string;
}

/** An entry and where it stands; an entry without a place comes from a maintenance list. */
export interface PlacedEntry extends RecordEntry {
  readonly place?: Place;
}

/** A repair as the weighing counts it: what was found, and whether this very log may speak of it. */
export interface ConfirmedFinding {
  readonly found: Cause;
  /** Index of the zone in this run; null = these logs do not hold it. */
  readonly zone: number | null;
  /** Found before these logs begin. */
  readonly isBeforeLog: boolean;
}
