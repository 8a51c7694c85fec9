import fc from 'fast-check';
import { expect, test } from 'vitest';
import { packColumn, unpackColumn } from '../../src/report/embed/pack.js';
import { clockOf } from '../../src/report/text/clock.js';
import { escapeHtml, html, scriptJson } from '../../src/report/text/html.js';
import {
  minutesText,
  numberText,
  ohmText,
  percentText,
  shortNumber,
  wholePercents,
} from '../../src/report/text/numbers.js';
import {
  difference,
  level,
  phrase,
  phraseFromText,
  phraseHtml,
  phraseText,
  signed,
} from '../../src/report/text/phrase.js';
import { packMarks, packPoints, unpackMarks, unpackPoints } from '../../src/report/embed/pack-lists.js';
import { lossKindOf, lossNames } from '../../src/report/sentences/losses.js';
import { filesInOrder } from '../../src/report/text/file-order.js';
import { alike, withoutNumbers } from '../../src/report/text/alike.js';
import { weekStartMs, weekText } from '../../src/report/text/weeks.js';

const blank = '\u00A0';

test('escapes every sign that could end a text or an attribute, whatever the text', () => {
  expect(escapeHtml(`</script><b title="x" class='y'>&`)).toBe(
    '&lt;/script&gt;&lt;b title=&quot;x&quot; class=&#39;y&#39;&gt;&amp;',
  );
  fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => !/[<>"']/.test(escapeHtml(text))));
});

test('escapes values of a template and leaves markup made by it alone', () => {
  expect(html`<i>${'<b>'}</i>${[html`<u></u>`, null, false, 3]}`.markup).toBe('<i>&lt;b&gt;</i><u></u>3');
});

test('JSON for a script element holds no tag and no line end of JavaScript, and reads back the same', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      const { markup } = scriptJson({ text: `${text}</script>\u2028\u2029` });
      expect(markup).not.toMatch(/[<\u2028\u2029]/);
      expect((JSON.parse(markup) as { text: string }).text).toBe(`${text}</script>\u2028\u2029`);
    }),
  );
});

test('writes numbers as people do', () => {
  expect([numberText(-0.04, 1), numberText(-2.5, 1), numberText(12345)]).toEqual(['0.0', '−2.5', `12${blank}345`]);
  expect([0.05, 1.44, 28.2, 0.00003, 1300].map(shortNumber)).toEqual(['0.05', '1.4', '28', '0.00003', '1300']);
  expect([0.5, 45, 212, 7620].map(minutesText)).toEqual([
    `30${blank}s`,
    `45${blank}min`,
    `3${blank}h 32${blank}min`,
    `5${blank}d 7${blank}h`,
  ]);
  expect([107.6, 100e6].map((ohm) => ohmText(ohm))).toEqual([`107.6${blank}Ω`, `100${blank}MΩ`]);
});

test('a percent never hides a doubt', () => {
  expect([0, 0.004, 0.996, 1].map(percentText)).toEqual([
    `0${blank}%`,
    `<${blank}1${blank}%`,
    `>${blank}99${blank}%`,
    `100${blank}%`,
  ]);
});

test('whole percents of shares add up to 100', () => {
  expect(wholePercents([1 / 3, 1 / 3, 1 / 3]).reduce((sum, value) => sum + value)).toBe(100);
  const weights = fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(weights, (parts) => {
      const total = parts.reduce((sum, part) => sum + part);
      expect(wholePercents(parts.map((part) => part / total)).reduce((sum, value) => sum + value)).toBe(100);
    }),
  );
});

test('turns levels and differences into °F each in its own way', () => {
  const says = phrase`reads ${difference(10)} high at ${level(100)}, ${signed(-1)}`;
  expect(phraseText(says, 'degF').replaceAll(blank, ' ')).toBe('reads 18.0 °F high at 212.0 °F, −1.8 °F');
  expect(phraseHtml(says).markup).toContain(`<span class="in-f">212.0${blank}°F</span>`);
  expect(phraseText(phraseFromText('Room 19.4 °C, −5 °C.'), 'degF').replaceAll(blank, ' ')).toBe(
    'Room 66.9 °F, 23 °F.',
  );
  const hidden = phraseFromText('A drift below 21 °C does not show, and its tolerance is 1.1 °C.', 'difference');
  expect(phraseText(hidden, 'degF').replaceAll(blank, ' ')).toBe(
    'A drift below 38 °F does not show, and its tolerance is 2.0 °F.',
  );
});

test('shows the clock of the plant, over the change to summer time too', () => {
  const oslo = clockOf('Europe/Oslo');
  expect(oslo.dateTime('2026-02-10T15:41:00Z').replaceAll(blank, ' ')).toBe('Tue 10 Feb 16:41');
  // Clocks in Oslo go from 02:00 to 03:00 on 2026-03-29 (IANA time zone database, EU rule).
  expect(oslo.wallMs(Date.UTC(2026, 2, 29, 0, 59))).toBe(Date.UTC(2026, 2, 29, 1, 59));
  expect(oslo.wallMs(Date.UTC(2026, 2, 29, 1, 0))).toBe(Date.UTC(2026, 2, 29, 3, 0));
  const days = (start: string, end: string): string => oslo.days(start, end).replaceAll(blank, ' ');
  expect(days('2026-02-09T23:00:00Z', '2026-02-11T23:00:00Z')).toBe('10 Feb 2026 to 11 Feb 2026');
  expect(days('2026-02-09T23:00:00Z', '2026-02-11T23:01:00Z')).toBe('10 Feb 2026 to 12 Feb 2026');
  expect(clockOf('Nowhere/Atall').timezone).toBe('UTC');
  expect(clockOf(undefined).dateTime('not a time')).toContain('–');
});

test('a packed column comes back within half a step, nulls in their places', () => {
  const value = fc.oneof(fc.constant(null), fc.double({ min: -300, max: 2000, noNaN: true }), fc.constant(180));
  fc.assert(
    fc.property(fc.array(value, { maxLength: 80 }), (values) => {
      const back = unpackColumn(packColumn(values), values.length);
      expect(back.length).toBe(values.length);
      values.forEach((given, i) => {
        if (given === null) expect(back[i]).toBeNull();
        else expect(Math.abs(back[i]! - given)).toBeLessThanOrEqual(0.05 + 1e-9);
      });
    }),
  );
  expect(JSON.stringify(packColumn(Array.from({ length: 1440 }, () => 180)))!.length).toBeLessThan(60);
});

test('packed marks and points come back in order, each text stored once', () => {
  const marks = Array.from({ length: 30 }, (_, i) => ({
    fromMs: 1_770_000_000_000 + i * 61_000,
    toMs: 1_770_000_000_000 + i * 61_000 + (i % 3) * 5000,
    says: i % 2 ? 'Jaw open' : 'Jaw low',
  }));
  const packed = packMarks(marks);
  expect(packed.texts).toEqual(['Jaw low', 'Jaw open']);
  expect(unpackMarks(packed)).toEqual(marks);
  expect(unpackMarks(packMarks([]))).toEqual([]);
  const points = [
    { timeMs: 1_770_000_000_000, offsetDegC: -0.31, plusMinusDegC: 0.03 },
    { timeMs: 1_770_000_060_000, offsetDegC: 12.5, plusMinusDegC: 0 },
  ];
  expect(unpackPoints(packPoints(points, ['offsetDegC', 'plusMinusDegC']))).toEqual(points);
});

test('a week of ISO 8601 begins on its Monday', () => {
  // ISO 8601 worked cases: 2020-W53 began on 28 December 2020, 2026-W01 on 29 December 2025.
  expect(new Date(weekStartMs('2020-W53')).toISOString().slice(0, 10)).toBe('2020-12-28');
  expect(new Date(weekStartMs('2026-W01')).toISOString().slice(0, 10)).toBe('2025-12-29');
  expect(weekText('2026-W37').replaceAll(blank, ' ')).toBe('Week 37, from 7 Sep');
  expect(weekText('all')).toBe('all');
});

test('texts that differ in numbers only fall into one group, the first of it first', () => {
  const texts = ['3 rows in a', 'none', '15 rows in a', '3.5 rows in a'];
  expect(alike(texts, withoutNumbers)).toEqual([['3 rows in a', '15 rows in a', '3.5 rows in a'], ['none']]);
});

test('two losses of one name get their machine, and restarts are a kind of their own', () => {
  const row = (name: string, machine: string, more: object = {}) =>
    ({ name, machine, bucket: 'other-cause', minutes: 5, stops: 1, longestMinutes: 5, cost: null, ...more }) as const;
  const rows = [row('Jam', 'TS1'), row('Jam', 'TS2'), row('restart after Jaw', 'TS1', { isRestart: true })];
  expect(lossNames(rows).map(({ name }) => name)).toEqual(['TS1: Jam', 'TS2: Jam', 'restart after Jaw']);
  expect(rows.map(lossKindOf)).toEqual(['other-cause', 'other-cause', 'restart']);
});

test('files stand with the temperature logs first, numbers in names by their size', () => {
  const of = (kind: string, ...files: string[]) => files.map((file) => ({ kind, file }));
  const files = [...of('alarm', 'a.csv'), ...of('temperature', 'day-10.csv', 'day-2.csv', 'b.csv')];
  expect(filesInOrder(files).map(({ file }) => file)).toEqual(['b.csv', 'day-2.csv', 'day-10.csv', 'a.csv']);
});
