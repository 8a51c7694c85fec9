import type { MaintenanceEntry, StopEntry } from './alarm.js';
import type { AlarmList } from './alarm-list.js';
import type { PlantDigest } from './digest.js';
import type { PlantFile } from './plant-file.js';
import type { BlockFacts, SampleBlock } from './sample-block.js';
import type { Zone } from './zone.js';

/** Numbers with their unit in the name: jumpDegC, rateDegCPerS, openCount. Always finite. */
export type Facts = Readonly<Record<string, number>>;

/** What a detector may need; `output-or-peers`: one of the two is enough. */
export type Need =
  'reading' | 'setpoint' | 'output' | 'running' | 'soak' | 'peers' | 'output-or-peers' | 'alarms' | 'card';

/** What every detector says of itself; its page (same name, .md) says the rest. */
export interface DetectorMeta<Settings> {
  /** Names what is seen, no verb: impossible-step. Equal to the file name. */
  readonly id: string;
  /** One plain sentence: what it sees. */
  readonly sees: string;
  /** Columns and other input without which it answers `unable`. */
  readonly needs: readonly Need[];
  /** Standard and clause, book, or "common practice" / "from memory". */
  readonly source: string;
  readonly defaults: Settings;
}

/** Something seen on raw samples, with exact times. Kind is the id of the watcher that saw it. */
export interface Episode {
  readonly kind: string;
  /** Zone index. */
  readonly zone: number;
  readonly startMs: number;
  /** Time of the last sample that belongs to it; equal to startMs for a single sample. */
  readonly endMs: number;
  readonly facts: Facts;
}

/**
 * A detector on raw samples: one pass, a few numbers of state per zone. Merging the states of two neighbouring
 * halves of a zone's log and finishing gives what the whole gives.
 */
export interface Watcher<State, Settings = unknown> {
  readonly meta: DetectorMeta<Settings>;
  start(zone: Zone, settings: Settings): State;
  /** Changes the state, never the block. `facts` are those of the block. */
  take(state: State, block: SampleBlock, facts: BlockFacts): void;
  merge(earlier: State, later: State): State;
  finish(state: State): readonly Episode[];
}

/** One sign of a fault (or of its absence) in one zone. */
export interface Symptom {
  readonly detector: string;
  readonly startMs: number;
  readonly endMs: number;
  /** How many single events it stands for. */
  readonly count: number;
  readonly facts: Facts;
}

/** What one detector says of one zone: seen, not seen, or cannot tell and why. */
export interface Outcome {
  readonly detector: string;
  readonly zone: number;
  readonly symptoms: readonly Symptom[];
  /** Why it cannot tell; absent when it can. */
  readonly unable?: string;
}

/** All that a judge may look at: plain data about the whole window. */
export interface Evidence {
  readonly zones: readonly Zone[];
  readonly digest: PlantDigest;
  /** By watcher id, then by zone index, in time order. */
  readonly episodes: ReadonlyMap<string, readonly (readonly Episode[])[]>;
  readonly alarms: AlarmList;
  /** False when no alarm log was given: absence of alarms then means nothing. */
  readonly hasAlarmLog: boolean;
  readonly maintenance: readonly MaintenanceEntry[];
  /** Lines of stop lists, by start. */
  readonly stops: readonly StopEntry[];
  readonly plant: PlantFile;
}

/** A detector on digests and episodes: a pure function over the whole window, one outcome per zone. */
export interface Judge<Settings = unknown> {
  readonly meta: DetectorMeta<Settings>;
  judge(evidence: Evidence, settings: Settings): readonly Outcome[];
}
