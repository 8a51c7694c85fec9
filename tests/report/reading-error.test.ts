import { expect, test } from 'vitest';
import type { OffsetBasis } from '../../src/model/findings.js';
import { errorBasis, errorSize } from '../../src/report/sentences/reading-error.js';
import { phraseText } from '../../src/report/text/phrase.js';

const basis: OffsetBasis = {
  detector: 'slow-drift',
  from: 'both',
  ...{ lowDegC: -9.1, highDegC: -4.7, coldDegC: -5.7, hotDegC: -8.1 },
};
const words = (parts: Parameters<typeof phraseText>[0], unit?: 'degF') =>
  phraseText(parts, unit).replaceAll('\u00A0', ' ');

test('one number with its limits, in either unit', () => {
  expect(words(errorSize({ offsetDegC: -6.9, offsetBasis: basis }))).toBe('−6.9 °C (−9.1 °C to −4.7 °C)');
  expect(words(errorSize({ offsetDegC: -5, offsetBasis: basis }), 'degF')).toContain('−9.0 °F');
  expect(words(errorSize({ offsetDegC: -6.9 })), 'older findings').toBe('−6.9 °C');
  expect(errorSize({ offsetDegC: null, offsetBasis: null })).toEqual([]);
});

test('says which method gave it; the others stand there as what they gave', () => {
  expect(words(errorBasis({ offsetBasis: basis }))).toMatch(/cold soaks \(−5\.7 °C\) and duty \(−8\.1 °C\) together/);
  expect(words(errorBasis({ offsetBasis: { ...basis, from: 'duty', coldDegC: null } }))).toMatch(/duty alone/);
  expect(words(errorBasis({ offsetBasis: { ...basis, from: 'soaks', hotDegC: null } }))).toMatch(
    /From the cold soaks:/,
  );
  expect(errorBasis({})).toEqual([]);
});
