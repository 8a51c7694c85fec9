import { expect, test } from 'vitest';
import { openRuns } from '../../../src/detect/watchers/open-runs.js';
import { readingState } from '../../../src/model/sample-block.js';
import { makeZone } from '../../make/blocks.js';
import { readings, watch } from '../../make/watch.js';

const zone = makeZone();

test('lists each run of one state with the good readings around it', () => {
  const samples = readings([180, 180.2, 850, 850, NaN, 179, 181], 1);
  samples[2] = { ...samples[2]!, state: readingState.aboveScale, running: 1 };
  samples[3] = { ...samples[3]!, state: readingState.aboveScale, running: 1 };
  samples[4] = { ...samples[4]!, state: readingState.openText };
  const [high, word] = watch(openRuns, zone, samples);
  expect(high!.facts).toMatchObject({ stateCode: 5, sampleCount: 2, valueDegC: 850, sameShare: 1, beforeDegC: 180.2 });
  expect(high!.facts['runningShare']).toBe(1);
  expect(high!.facts['afterDegC']).toBeUndefined(); // a word follows, no reading
  expect(word!.facts).toMatchObject({ stateCode: 2, sampleCount: 1, afterDegC: 179, lastGoodDegC: 180.2 });
  expect(word!.facts['valueDegC']).toBeUndefined();
});

test('is silent where a good reading is full scale high by its number alone', () => {
  expect(watch(openRuns, zone, readings([180, 850, 180], 1))).toEqual([]);
});

test('keeps a run that reaches the end of the log', () => {
  const samples = readings([180, 850, 850], 1).map((s, i) => (i > 0 ? { ...s, state: readingState.aboveScale } : s));
  expect(watch(openRuns, zone, samples).map(({ startMs, endMs }) => endMs - startMs)).toEqual([1000]);
});
