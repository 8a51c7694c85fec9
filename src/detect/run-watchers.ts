import type { Episode, Watcher } from '../model/detector.js';
import type { ProblemNote } from '../model/problem.js';
import type { BlockFacts, SampleBlock } from '../model/sample-block.js';
import type { Zone } from '../model/zone.js';
import { ZoneFacts } from './shared/blocks/block-facts.js';

// The list holds watchers of many state types; each one only ever meets its own.
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export type AnyWatcher = Watcher<any, any>;

/** Settings by detector id that replace those of the detector's own `meta`, key by key. */
export type SettingsById = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/** What all watchers found in the whole log. */
export interface WatchedEpisodes {
  /** By watcher id, then by zone index, in time order. */
  readonly episodes: ReadonlyMap<string, readonly (readonly Episode[])[]>;
  readonly problems: readonly ProblemNote[];
}

/** Watchers while the log is poured through them. */
export interface RunningWatchers {
  /** Shows a block to every watcher. Blocks of one zone come in time order; the block is not kept or changed. */
  take(block: SampleBlock): void;
  finish(): WatchedEpisodes;
}

/**
 * Runs watchers over all zones in one pass.
 *
 * @param zones By index.
 * @returns Never throws: a watcher that throws is left out for that zone and becomes a `detector-failed` note.
 */
export function startWatchers(
  zones: readonly Zone[],
  watchers: readonly AnyWatcher[],
  settings: SettingsById = {},
): RunningWatchers {
  const problems: ProblemNote[] = [];
  const lanes = watchers.map((watcher) => zones.map((zone) => new Lane(watcher, zone, settings, problems)));
  const factsByZone = zones.map((zone) => new ZoneFacts(zone));
  return {
    take(block) {
      const facts = factsByZone[block.zone]?.of(block);
      if (!facts) return;
      for (const lane of lanes) lane[block.zone]!.take(block, facts);
    },
    finish() {
      const episodes = new Map(watchers.map(({ meta }, w) => [meta.id, lanes[w]!.map((lane) => lane.finish())]));
      return { episodes, problems };
    },
  };
}

/** One watcher on one zone, kept from stopping the others. */
class Lane {
  private state: unknown;
  private hasFailed = false;

  constructor(
    private readonly watcher: AnyWatcher,
    private readonly zone: Zone,
    settings: SettingsById,
    private readonly problems: ProblemNote[],
  ) {
    const { meta } = watcher;
    this.guard(() => {
      this.state = watcher.start(zone, { ...(meta.defaults as object), ...settings[meta.id] });
    });
  }

  take(block: SampleBlock, facts: BlockFacts): void {
    if (!this.hasFailed) this.guard(() => this.watcher.take(this.state, block, facts));
  }

  finish(): readonly Episode[] {
    let episodes: readonly Episode[] = [];
    if (!this.hasFailed) this.guard(() => (episodes = this.watcher.finish(this.state)));
    return episodes;
  }

  private guard(step: () => void): void {
    try {
      step();
    } catch (error) {
      this.hasFailed = true;
      this.problems.push(detectorFailed(this.watcher.meta.id, error, `zone ${this.zone.name}`));
    }
  }
}

/** The note for a detector that threw. */
export function detectorFailed(id: string, error: unknown, where: string): ProblemNote {
  const reason = error instanceof Error ? error.message : String(error);
  return {
    code: 'detector-failed',
    what: `Detector ${id} failed on ${where} and was left out there: ${reason}`,
    todo: 'The other detectors ran; please report this as a fault of the program.',
  };
}
