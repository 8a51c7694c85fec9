import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Cause } from '../../src/model/cause.js';

/** One zone's truth, as the simulator writes it beside a plant's folder (NAME.truth.json). */
export interface ZoneTruth {
  readonly zone: string;
  readonly cause: Cause;
  readonly fault: string;
  /** The fault that was drawn; differs from 'none' with cause 'none' when it left no trace. */
  readonly drawn: string;
  readonly onset: string | null;
  readonly fixed: string | null;
  readonly driftC: number | null;
  readonly downtimeMin: number;
}

export interface PlantTruth {
  readonly name: string;
  readonly folder: string;
  readonly meta: {
    /** Columns in the log: full, nosp (no set point) or pvonly. */
    readonly has: string;
    readonly pattern: string;
    /** What the heaters do while nothing is made: off or standby. */
    readonly rest?: string;
    readonly days: number;
    readonly dialect: string;
  };
  readonly zones: readonly ZoneTruth[];
}

/** Every plant of a folder that has its truth beside it, by name. */
export function readTruths(root: string): PlantTruth[] {
  return readdirSync(root)
    .filter((name) => existsSync(join(root, `${name}.truth.json`)))
    .sort()
    .map((name) => {
      const text = readFileSync(join(root, `${name}.truth.json`), 'utf8');
      return { name, folder: join(root, name), ...(JSON.parse(text) as Omit<PlantTruth, 'name' | 'folder'>) };
    });
}

/** Names compared without case, blanks and punctuation. */
export function zoneKey(name: string): string {
  return name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

/**
 * True when nothing in such a log can show the fault: readings only, never cold, and the loop hides it. Such zones are
 * counted, not scored.
 */
export function isHidden(truth: ZoneTruth, meta: PlantTruth['meta']): boolean {
  const hiddenByLoop = ['sensor_drift', 'heater_ageing', 'heater_half'];
  return meta.has === 'pvonly' && meta.pattern === '24x7' && hiddenByLoop.includes(truth.fault);
}
