import { expect, test } from 'vitest';
import { gap } from '../../../src/detect/watchers/gap.js';
import { makeZone } from '../../make/blocks.js';
import { readings, watch } from '../../make/watch.js';

const zone = makeZone({ samplingMs: 30_000 });

test('lists a hole with its length and the rows that are missing', () => {
  const rows = readings(Array<number>(100).fill(180), 30).filter((_, i) => i < 40 || i >= 60);
  const found = watch(gap, zone, rows);
  expect(found.map(({ facts }) => facts)).toEqual([{ gapS: 630, missingCount: 20 }]);
});

test('is silent where two rows are lost', () => {
  const rows = readings(Array<number>(100).fill(180), 30).filter((_, i) => i !== 40 && i !== 41);
  expect(watch(gap, zone, rows)).toEqual([]);
});
