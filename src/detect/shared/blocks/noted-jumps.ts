import type { BlockFacts } from '../../../model/sample-block.js';
import type { Zone } from '../../../model/zone.js';
import { CappedList } from '../basics/capped-list.js';
import {
  copyHeatingLimit,
  learnMoves,
  limitMemoryOf,
  mergeHeatingLimits,
  startHeatingLimit,
  takeMoves,
  type HeatingLimit,
} from './heating-limit.js';
import type { Strip } from './strip.js';

/** What a watcher of jumps keeps of a zone: how fast heat can move it, and the jumps that may be faster. */
export interface NotedJumps<Jump> {
  limit: HeatingLimit;
  readonly jumps: CappedList<Jump>;
}

/** Nothing learned and no jump noted yet. */
export function noJumps<Jump>(zone: Zone): NotedJumps<Jump> {
  return { limit: startHeatingLimit(zone), jumps: new CappedList() };
}

/** The rules that all watchers of jumps share: the limit is learned from the whole log, jumps are judged at its end. */
export function jumpRules<Jump, Found extends NotedJumps<Jump>>() {
  return {
    learnMemory: limitMemoryOf,
    learn: ({ limit }: Found, strip: Strip): void => learnMoves(limit, strip),
    learnBlock: ({ limit }: Found, { fastestMoves }: BlockFacts): void => takeMoves(limit, fastestMoves),
    copy: (found: Found): Found => ({
      ...found,
      limit: copyHeatingLimit(found.limit),
      jumps: found.jumps.copy(),
    }),
    merge(earlier: Found, later: Found): Found {
      earlier.limit = mergeHeatingLimits(earlier.limit, later.limit);
      earlier.jumps.pushAll(later.jumps);
      return earlier;
    },
  };
}
