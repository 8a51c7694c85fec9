import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TimeBytes } from '../../src/read/times/time-bytes.js';
import { compileTime, detectTimeFormat } from '../../src/read/times/time-format.js';

const iso = (cell: string, cells: readonly string[] = [cell], columnName = 'Time') => {
  const format = detectTimeFormat(cells, { columnName });
  return format && new Date(compileTime(format)(cell)).toISOString();
};

describe('notations', () => {
  test.each([
    ['2026-09-06T01:02:03.250Z', '2026-09-06T01:02:03.250Z'],
    ['2026-09-06 01:02:03+02:00', '2026-09-05T23:02:03.000Z'], // offset: ISO 8601
    ['20260906T010203', '2026-09-06T01:02:03.000Z'],
    ['06.09.2026 01:02:03', '2026-09-06T01:02:03.000Z'],
    ['25/12/2026 1:02', '2026-12-25T01:02:00.000Z'],
    ['12/25/2026 1:02:03 PM', '2026-12-25T13:02:03.000Z'],
    ['12/25/2026 12:00:00 AM', '2026-12-25T00:00:00.000Z'],
    ['6-Sep-26 13:02', '2026-09-06T13:02:00.000Z'],
    ['Sep 6, 2026 1:02:03 PM', '2026-09-06T13:02:03.000Z'],
    ['6. März 2026 13:02', '2026-03-06T13:02:00.000Z'],
    ['20260906010203', '2026-09-06T01:02:03.000Z'], // no count of seconds, though it is a number
    ['202609060102', '2026-09-06T01:02:00.000Z'],
    ['Sun Sep  6 01:02:03 2026', '2026-09-06T01:02:03.000Z'], // the form of asctime in ISO C
    ['6 de septiembre de 2026 13:02', '2026-09-06T13:02:00.000Z'],
    ['31.12.25 23:59:59,5', '2025-12-31T23:59:59.500Z'],
    ['2026-09-06:01:02:03', '2026-09-06T01:02:03.000Z'],
    ['2026-09-06 at 01:02:03', '2026-09-06T01:02:03.000Z'],
    ['26.09.2026 01:02:03 Uhr', '2026-09-26T01:02:03.000Z'],
    ['2026-01-06 01:02:03 EST', '2026-01-06T06:02:03.000Z'], // RFC 5322, 4.3
    ['2026-01-06 01:02:03 CET', '2026-01-06T00:02:03.000Z'], // common practice
    ['2026-W10-1T06:00:00', '2026-03-02T06:00:00.000Z'], // ISO 8601, week and day; checked with a calendar
    ['2026-061T06:00:00', '2026-03-02T06:00:00.000Z'], // ISO 8601, day of the year
    ['2026年03月02日 06时00分07秒', '2026-03-02T06:00:07.000Z'],
    ['2026年3月2日(月) 6時5分', '2026-03-02T06:05:00.000Z'],
    ['2026/3/2 下午 2:05:06', '2026-03-02T14:05:06.000Z'],
    ['2026-03-02 오전 12:05:06', '2026-03-02T00:05:06.000Z'],
    ['02 мар 2026 06:00', '2026-03-02T06:00:00.000Z'],
    ['2026. szept. 2. 06:00', '2026-09-02T06:00:00.000Z'],
    ['2. avg. 2026 06:00', '2026-08-02T06:00:00.000Z'],
    ['2. juuni 2026 06:00', '2026-06-02T06:00:00.000Z'],
    ['2 dets 2026 06:00', '2026-12-02T06:00:00.000Z'],
    ['2 Ağustos 2026 06:00', '2026-08-02T06:00:00.000Z'],
    ['2. července 2026 06:00', '2026-07-02T06:00:00.000Z'],
    ['2 Ιουνίου 2026 06:00', '2026-06-02T06:00:00.000Z'],
    ['10/03/2004 18.00.00', '2004-03-10T18:00:00.000Z'],
    ['1784160000', '2026-07-16T00:00:00.000Z'],
    ['1784160000123', '2026-07-16T00:00:00.123Z'],
    ['1784160000123456', '2026-07-16T00:00:00.123Z'],
    ['1784160000123456789', '2026-07-16T00:00:00.123Z'],
    ['45000.5', '2023-03-15T12:00:00.000Z'], // spreadsheet day 45000 = 2023-03-15, from memory
  ])('%s', (cell, want) => expect(iso(cell)).toBe(want));

  test('a number that is no moment is no time', () =>
    expect(iso('99999999999999', ['99999999999998', '99999999999999', '99999999999999'])).toBeNull());
  test('letters that are no time zone are no time', () => expect(iso('2026-01-06 01:02:03 XYZ')).toBeNull());

  test('two-digit years in front', () => {
    expect(iso('21-08-16T19:58:30', ['21-08-16T19:58:30', '21-08-17T19:58:30'])).toBe('2021-08-16T19:58:30.000Z');
  });
});

test('a file whose date of writing lies before its rows does not make its seconds count from 1904', () => {
  const cells = ['1784160000', '1784160010', '1784160020'];
  const format = detectTimeFormat(cells, { columnName: 'Time', writtenMs: Date.UTC(1980, 0, 1) });
  expect(format?.why).toContain('since 1970');
});

describe('day or month first', () => {
  test('is decided by any row of the column', () => {
    expect(iso('03/04/2026 10:00', ['03/04/2026 10:00', '13/04/2026 10:00'])).toContain('2026-04-03');
    expect(iso('03/04/2026 10:00', ['03/04/2026 10:00', '04/13/2026 10:00'])).toContain('2026-03-04');
  });
  test('is said to be undecided where nothing tells, and the option is taken', () => {
    const cells = ['03/04/2026 10:00', '03/04/2026 11:00'];
    expect(detectTimeFormat(cells)?.isUndecided).toBe(true);
    expect(detectTimeFormat(cells, { dates: 'month-first' })).toMatchObject({ order: 'mdy', isUndecided: false });
  });
  test('is decided by the days of the week before the dates', () => {
    // 2 March 2026 is a Monday, 3 February 2026 a Tuesday (ISO 8601 weeks of test "notations" above; checked with a calendar).
    expect(iso('Mon 03/02/2026 06:00:00')).toBe('2026-03-02T06:00:00.000Z');
    expect(iso('Tue 03/02/2026 06:00:00')).toBe('2026-02-03T06:00:00.000Z');
    expect(detectTimeFormat(['Mo 03/02/2026 06:00:00'])?.isUndecided).toBe(true);
  });
  test('days and hours that do not exist are no times', () => {
    const read = compileTime(detectTimeFormat(['2026-02-28 10:00:00'])!);
    for (const cell of ['2026-02-29 10:00:00', '2026-02-28 25:00:00', '2026-02-28 10:60:00', 'x', ''])
      expect(read(cell)).toBeNaN();
  });
});

test('bytes and texts give the same time, whatever the notation', () => {
  const formats = [
    '2026-09-06 01:02:03',
    '06.09.2026 01:02:03',
    '25/12/2026 1:02',
    '12/25/2026 1:02:03 PM',
    '6-Sep-26 13:02',
    '20260906010203',
    'Sun Sep  6 01:02:03 2026',
    '2026-09-06:01:02:03',
    '2026-01-06 01:02:03 CET',
    '1784160000123',
  ];
  const part = fc.integer({ min: 0, max: 70 }).map((number) => String(number).padStart(2, '0'));
  const clock = fc
    .tuple(
      part,
      part,
      part,
      fc.constantFrom('', '.5', '.123', ',250', '.123456', ' AM', ' PM', 'Z', '+02:00', '-0530', 'x'),
      fc.constantFrom(':', '.'),
    )
    .map(([hour, minute, second, tail, mark]) => `${hour}${mark}${minute}${mark}${second}${tail}`);
  const cell = fc
    .tuple(
      fc.constantFrom('2026-09-06', '06.09.2026', '7/9/2026', '12/25/2026', '6-Sep-26', '2026-02-30'),
      fc.constantFrom(' ', 'T', '  '),
      clock,
    )
    .map((parts) => parts.join(''));
  fc.assert(
    fc.property(
      fc.constantFrom(...formats),
      fc.array(fc.oneof(cell, fc.nat().map(String)), { maxLength: 12 }),
      (sample, cells) => {
        const format = detectTimeFormat([sample], { columnName: 'Time' })!;
        const bytes = new TimeBytes(format, 'utf-8');
        const text = compileTime(format);
        for (const it of cells) expect(bytes.read(Buffer.from(it), 0, Buffer.byteLength(it))).toBe(text(it));
      },
    ),
    { numRuns: 300 },
  );
});

test('a time beside its neighbour, with a digit or two changed, is read as if it stood alone', () => {
  const notations = [
    '2026-09-06 01:02:03',
    '2026-09-06T23:59:59.250Z',
    '2026-09-06T01:02:03+02:00',
    '06.09.2026 1:02:03',
    '6-Sep-2026:01:02:03', // the first two colons stand around the hour
    '2026-09-06 01.02:03:25', // the last number is a fraction
    '2026-09-06 01:02:03:250',
    '2026-09-06 24:00:00',
    '2026-09-06 23:59:60',
    '12/25/2026 12:00:00 AM',
    'Sun Sep  6 01:02:03 2026',
    '1784160000',
  ];
  const digitPlaces = (text: string): number[] => [...text].flatMap((sign, i) => (/\d/.test(sign) ? [i] : []));
  const cells = fc.constantFrom(...notations).chain((text) => {
    const change = fc.tuple(fc.constantFrom(...digitPlaces(text)), fc.nat({ max: 9 }));
    const changed = fc
      .array(change, { minLength: 1, maxLength: 2 })
      .map((changes) =>
        changes.reduce((cell, [at, digit]) => cell.slice(0, at) + String(digit) + cell.slice(at + 1), text),
      );
    return fc
      .array(
        fc.oneof(
          changed,
          fc.constant(text),
          changed.map((cell) => `${cell}1`),
        ),
        { minLength: 2, maxLength: 20 },
      )
      .map((list) => ({ text, list }));
  });
  let skimmed = 0;
  fc.assert(
    fc.property(cells, ({ text, list }) => {
      const format = detectTimeFormat([text], { columnName: 'Time' })!;
      const time = new TimeBytes(format, 'utf-8');
      const read = compileTime(format);
      for (const it of list) {
        const bytes = Buffer.from(`${it},1\n`);
        if (time.skim(bytes, 0) === it.length) {
          skimmed++;
          expect(time.ms, it).toBe(read(it));
        } else expect(time.read(bytes, 0, it.length), it).toBe(read(it));
      }
    }),
    { numRuns: 1000 },
  );
  expect(skimmed).toBeGreaterThan(500); // the short way is taken
});
