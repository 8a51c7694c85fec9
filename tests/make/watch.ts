import { startWatchers, type AnyWatcher } from '../../src/detect/run-watchers.js';
import type { Episode } from '../../src/model/detector.js';
import type { Zone } from '../../src/model/zone.js';
import { makeBlock, type MadeSample } from './blocks.js';

/** Episodes of one watcher over one zone's log. */
export function watch(watcher: AnyWatcher, zone: Zone, samples: readonly MadeSample[]): readonly Episode[] {
  const watching = startWatchers([{ ...zone, index: 0 }], [watcher]);
  watching.take(makeBlock(samples));
  const { episodes, problems } = watching.finish();
  if (problems.length > 0) throw new Error(problems[0]!.what);
  return episodes.get(watcher.meta.id)![0]!;
}

/** A log that holds the given readings, one per period. */
export function readings(values: readonly number[], everyS: number, more: Partial<MadeSample> = {}): MadeSample[] {
  return values.map((degC, i) => ({ timeMs: Date.UTC(2026, 2, 2) + i * everyS * 1000, degC, ...more }));
}
