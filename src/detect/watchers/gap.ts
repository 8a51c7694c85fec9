import type { DetectorMeta } from '../../model/detector.js';
import type { Episode } from '../../model/detector.js';
import { CappedList, withLeftOut } from '../shared/basics/capped-list.js';
import { samplingMsOf } from '../shared/basics/sampling.js';
import { windowWatcher } from '../shared/blocks/window-watcher.js';

export interface GapSettings {
  /** Missing samples from which on it counts as a gap; one or two lost rows are everyday (common practice). */
  readonly smallestMissingCount: number;
}

const meta: DetectorMeta<GapSettings> = {
  id: 'gap',
  sees: 'rows of a zone that are missing from the log',
  needs: ['reading'],
  source: 'Common practice.',
  defaults: { smallestMissingCount: 4 },
};

interface Gap {
  fromMs: number;
  toMs: number;
}

interface Found {
  readonly zone: number;
  readonly samplingMs: number;
  readonly smallestMs: number;
  gaps: CappedList<Gap>;
}

/** Lists the holes between neighbouring rows of a zone; starts at the last row before and ends at the first one after. */
export const gap = windowWatcher<Found, GapSettings>({
  meta,
  scanMemory: () => 1,
  learnMemory: () => 0,
  start: (zone, settings) => ({
    zone: zone.index,
    samplingMs: samplingMsOf(zone),
    smallestMs: (settings.smallestMissingCount + 0.5) * samplingMsOf(zone),
    gaps: new CappedList(),
  }),
  learn: () => undefined,
  learnBlock: () => undefined,
  isQuiet: ({ smallestMs }, { longestGapMs }) => longestGapMs < smallestMs,
  scan({ smallestMs, gaps }, { timeMs, from, to }) {
    for (let i = Math.max(1, from); i < to; i++) {
      if (timeMs[i]! - timeMs[i - 1]! >= smallestMs) gaps.push({ fromMs: timeMs[i - 1]!, toMs: timeMs[i]! });
    }
  },
  copy: (found) => ({ ...found, gaps: found.gaps.copy() }),
  merge(earlier, later) {
    earlier.gaps.pushAll(later.gaps);
    return earlier;
  },
  finish: ({ zone, samplingMs, gaps }): readonly Episode[] =>
    withLeftOut(
      gaps.items.map(({ fromMs, toMs }) => ({
        kind: meta.id,
        zone,
        startMs: fromMs,
        endMs: toMs,
        facts: { gapS: (toMs - fromMs) / 1000, missingCount: Math.round((toMs - fromMs) / samplingMs) - 1 },
      })),
      gaps.leftOutCount,
    ),
});
