import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inFolder, pourPaths } from './poured.js';

// Generated dialects and rows, plain and odd, read by the byte scanner and by csv-parse alone: the samples must be the same.
const dialects = fc.constantFrom(
  { separator: ',', decimal: '.' },
  { separator: ';', decimal: ',' },
  { separator: ';', decimal: '.' },
  { separator: '\t', decimal: '.' },
  { separator: '|', decimal: ',' },
);
const number = fc.oneof(
  fc.double({ min: -300, max: 4000, noNaN: true }).map((value) => value.toFixed(1)),
  fc.double({ min: 0, max: 250, noNaN: true }).map((value) => value.toFixed(3)),
  fc.integer({ min: 0, max: 300 }).map(String),
  fc.constantFrom(
    '850.0',
    '3276.7',
    '0',
    '-0',
    '-200',
    '1e2',
    '.5',
    '5.',
    '+7',
    '0.1234567890123456789',
    '12345678901234567890',
  ),
);
const oddCell = fc.constantFrom(
  '',
  '-',
  '---',
  '####',
  'OL',
  'Bad',
  'OPEN',
  ' 21.5 ',
  '21.5 °C',
  '"21.5"',
  '"2""1"',
  '"a',
  'x"y',
  'NaN',
  '\0',
  'RUN',
  '1 2',
);
const cell = fc.oneof({ weight: 12, arbitrary: number }, { weight: 1, arbitrary: oddCell });
const row = fc.record({
  cells: fc.array(cell, { minLength: 4, maxLength: 4 }),
  stepS: fc.oneof({ weight: 20, arbitrary: fc.constant(10) }, { weight: 1, arbitrary: fc.constantFrom(-30, 0, 600) }),
  shape: fc.oneof(
    { weight: 20, arbitrary: fc.constant('whole') },
    { weight: 1, arbitrary: fc.constantFrom('short', 'long', 'blank', 'no time') },
  ),
});
const times = fc.constantFrom(
  (date: Date) => date.toISOString(),
  (date: Date) => date.toISOString().slice(0, 19).replace('T', ' '),
  (date: Date) => String(date.getTime()),
  (date: Date) =>
    `${date.getUTCDate()}.${date.getUTCMonth() + 1}.${date.getUTCFullYear()} ${date.toISOString().slice(11, 19)}`,
);

type Row = { cells: string[]; stepS: number; shape: string };

function logText(
  dialect: { separator: string; decimal: string },
  rows: readonly Row[],
  time: (date: Date) => string,
  isLong: boolean,
  lineEnd: string,
): string {
  let ms = Date.UTC(2026, 0, 5);
  const clean: Row[] = Array.from({ length: 25 }, (_, i) => ({
    cells: ['21.5', String(150 + i), '30.0', '1'],
    stepS: 10,
    shape: 'whole',
  }));
  const lines = [...clean, ...rows].flatMap(({ cells, stepS, shape }) => {
    ms += stepS * 1000;
    const shown = cells.map((text) => (/^[-+]?[\d.e]+$/.test(text) ? text.replace('.', dialect.decimal) : text));
    const stamp = shape === 'no time' ? 'n/a' : time(new Date(ms));
    if (shape === 'blank') return [''];
    if (isLong)
      return ['Z1 PV', 'Z1 SP', 'Z2 PV', 'M Running'].map((tag, i) =>
        [stamp, tag, ...(shape === 'short' ? [] : [shown[i]]), ...(shape === 'long' ? ['1'] : [])].join(
          dialect.separator,
        ),
      );
    const kept = shape === 'short' ? shown.slice(0, 2) : shape === 'long' ? [...shown, '9'] : shown;
    return [[stamp, ...kept].join(dialect.separator)];
  });
  const header = isLong ? ['time', 'tag', 'value'] : ['Time', 'Z1 PV', 'Z1 SP', 'Z2 PV', 'Running'];
  return [header.join(dialect.separator), ...lines].join(lineEnd) + lineEnd;
}

test('both readers give the same samples and leave out the same rows', async () => {
  let oddSeen = 0;
  await fc.assert(
    fc.asyncProperty(
      dialects,
      fc.array(row, { minLength: 5, maxLength: 60 }),
      times,
      fc.boolean(),
      fc.constantFrom('\n', '\r\n'),
      async (dialect, rows, time, isLong, lineEnd) => {
        await inFolder({ 'log.csv': logText(dialect, rows, time, isLong, lineEnd) }, async (folder) => {
          const fast = await pourPaths([folder]);
          const slow = await pourPaths([folder], {}, { isFast: false });
          expect(fast.zones).toEqual(slow.zones);
          expect(fast.result.sources).toEqual(slow.result.sources);
          expect(fast.result.problems).toEqual(slow.result.problems);
          if (fast.result.sources.some((source) => source.rowsRejected > 0)) oddSeen++;
        });
      },
    ),
    { numRuns: 120 },
  );
  expect(oddSeen).toBeGreaterThan(20); // the generator does make odd rows
});

test('a log that is longer than the window of the reader', async () => {
  const rows = Array.from({ length: 60_000 }, (_, i) => ({
    cells: [(20 + (i % 900) / 10).toFixed(1), '150.0', i % 1500 === 7 ? '####' : '99.5', i % 2000 === 3 ? '"1"' : '1'],
    stepS: 10,
    shape: 'whole',
  }));
  const text = logText({ separator: ',', decimal: '.' }, rows, (date) => date.toISOString(), false, '\n');
  expect(text.length).toBeGreaterThan(2_000_000);
  await inFolder({ 'log.csv': text }, async (folder) => {
    const fast = await pourPaths([folder]);
    const slow = await pourPaths([folder], {}, { isFast: false });
    expect(fast.zones[0]!.timeMs).toHaveLength(60_025);
    expect(fast.zones).toEqual(slow.zones);
  });
});
