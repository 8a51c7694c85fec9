import { expect, test } from 'vitest';
import { firstPlaceFrom } from '../../src/maths/first-place.js';

test.each([
  [[], 1, 0],
  [[1, 2, 2, 3], 0, 0],
  [[1, 2, 2, 3], 2, 1],
  [[1, 2, 2, 3], 2.5, 3],
  [[1, 2, 2, 3], 4, 4],
  [[1, 2, 2, 3], -Infinity, 0],
  [[1, 2, 2, 3], Infinity, 4],
])('in %j from %d on', (values, least, place) => {
  expect(firstPlaceFrom(values, least)).toBe(place);
  expect(firstPlaceFrom(Float64Array.from(values), least)).toBe(place);
});
