import type { DetectorMeta, Episode, Watcher } from '../../../model/detector.js';
import type { BlockFacts } from '../../../model/sample-block.js';
import type { Zone } from '../../../model/zone.js';
import {
  copySamples,
  keepFirst,
  keepLast,
  noSamples,
  stripInBlock,
  stripOfSamples,
  stripOfSeam,
  stripUpTo,
  type Samples,
  type Strip,
} from './strip.js';

/**
 * A watcher that looks at a fixed number of neighbouring samples at a time. What it keeps between blocks is the last
 * few samples and its own findings, so any two neighbouring pieces of a log can be joined: the windows that lie
 * across the seam are looked at when the pieces meet.
 */
export interface WindowRules<Found, Settings> {
  readonly meta: DetectorMeta<Settings>;
  /** Samples before the newest one that `scan` may look at. */
  scanMemory(zone: Zone): number;
  /** Samples before the newest one that `learn` may look at. */
  learnMemory(zone: Zone): number;
  start(zone: Zone, settings: Settings): Found;
  /** Takes in every window that ends at places `from` … `to` − 1 and lies in the strip whole; order does not matter. */
  learn(found: Found, strip: Strip): void;
  /** The same for a block whole, by its facts alone; where it is absent, `learn` looks at the samples. */
  learnBlock?(found: Found, facts: BlockFacts): void;
  /** True when the facts tell that no window inside the block holds a finding, so that `scan` need not look. */
  isQuiet?(found: Found, facts: BlockFacts): boolean;
  /** Notes findings in windows that end at places `from` … `to` − 1 and lie in the strip whole; in time order. */
  scan(found: Found, strip: Strip): void;
  copy(found: Found): Found;
  /** `earlier` may be changed and returned. */
  merge(earlier: Found, later: Found): Found;
  finish(found: Found): readonly Episode[];
}

export interface WindowState<Found> {
  readonly scanMemory: number;
  readonly learnMemory: number;
  readonly head: Samples;
  readonly tail: Samples;
  /** All samples taken. */
  count: number;
  found: Found;
}

export function windowWatcher<Found, Settings>(
  rules: WindowRules<Found, Settings>,
): Watcher<WindowState<Found>, Settings> {
  function takeStrip(state: WindowState<Found>, strip: Strip): void {
    rules.learn(state.found, strip);
    rules.scan(state.found, strip);
    state.count += strip.to - strip.from;
    keepFirst(state.head, strip);
    keepLast(state.tail, strip);
  }

  return {
    meta: rules.meta,
    start(zone, settings) {
      const scanMemory = rules.scanMemory(zone);
      const learnMemory = rules.learnMemory(zone);
      const room = Math.max(scanMemory, learnMemory);
      return {
        scanMemory,
        learnMemory,
        head: noSamples(room),
        tail: noSamples(room),
        count: 0,
        found: rules.start(zone, settings),
      };
    },
    take(state, block, facts) {
      if (block.length === 0) return;
      const { found, learnMemory, scanMemory } = state;
      const room = state.tail.timeMs.length;
      const seam = stripOfSeam(state.tail, block, facts.degC, Math.min(room, block.length));
      if (block.length <= room) return takeStrip(state, seam);
      // Windows that begin in the block before are looked at on the seam, all others where they stand.
      rules.learn(found, stripUpTo(seam, seam.from + learnMemory));
      rules.scan(found, stripUpTo(seam, seam.from + scanMemory));
      if (rules.learnBlock) rules.learnBlock(found, facts);
      else rules.learn(found, stripInBlock(block, facts.degC, learnMemory));
      if (!rules.isQuiet?.(found, facts)) rules.scan(found, stripInBlock(block, facts.degC, scanMemory));
      state.count += block.length;
      keepFirst(state.head, seam);
      keepLast(state.tail, stripInBlock(block, facts.degC, 0));
    },
    merge(earlier, later) {
      const { scanMemory, learnMemory } = earlier;
      const merged: WindowState<Found> = {
        ...earlier,
        head: copySamples(earlier.head),
        tail: copySamples(earlier.tail),
        count: earlier.count,
        found: rules.copy(earlier.found),
      };
      if (later.count <= Math.max(scanMemory, learnMemory)) {
        if (later.count > 0) takeStrip(merged, stripOfSamples(merged.tail, later.head, later.count));
        return merged;
      }
      rules.learn(merged.found, stripOfSamples(merged.tail, later.head, learnMemory));
      rules.scan(merged.found, stripOfSamples(merged.tail, later.head, scanMemory));
      keepFirst(merged.head, stripOfSamples(merged.tail, later.head, later.head.length));
      merged.found = rules.merge(merged.found, later.found);
      merged.count += later.count;
      return { ...merged, tail: copySamples(later.tail) };
    },
    finish: (state) => rules.finish(state.found),
  };
}
