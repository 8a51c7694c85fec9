import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inFolder, pourPaths } from './poured.js';

// Generated dialects and rows, plain and odd, read by the byte scanner and by csv-parse alone: the samples must be the same.
const dialects = [
  { separator: ',', decimal: '.' },
  { separator: ';', decimal: ',' },
  { separator: ';', decimal: '.' },
  { separator: '\t', decimal: '.' },
  { separator: '|', decimal: ',' },
  { separator: ' ', decimal: '.' },
] as const;
const layouts = ['wide', 'wide, date apart', 'long', 'long, quality', 'a file per zone'] as const;
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
  '1,5',
  '1.234,5',
  '1 234.5',
  '"1,234.5"',
  '""',
  '"x\ny"',
  '\uFFFD',
  'ä',
);
const cell = fc.oneof({ weight: 12, arbitrary: number }, { weight: 1, arbitrary: oddCell });
const row = fc.record({
  cells: fc.array(cell, { minLength: 4, maxLength: 4 }),
  stepS: fc.oneof(
    { weight: 20, arbitrary: fc.constant(10) },
    { weight: 1, arbitrary: fc.constantFrom(-30, 0, 600, 3e8, -9e8) },
  ),
  shape: fc.oneof(
    { weight: 20, arbitrary: fc.constant('whole') },
    { weight: 1, arbitrary: fc.constantFrom('short', 'long', 'blank', 'no time') },
  ),
});
const times: readonly ((date: Date) => string)[] = [
  (date) => date.toISOString(),
  (date) => date.toISOString().slice(0, 19).replace('T', ' '),
  (date) => String(date.getTime()),
  (date) => `${dottedDate(date)} ${date.toISOString().slice(11, 19)}`,
];
const dottedDate = (date: Date): string => `${date.getUTCDate()}.${date.getUTCMonth() + 1}.${date.getUTCFullYear()}`;

const packagings = fc.record({
  dialect: fc.constantFrom(...dialects),
  time: fc.constantFrom(...times),
  layout: fc.constantFrom(...layouts),
  lineEnd: fc.constantFrom('\n', '\r\n'),
  /** How the file stops: with a line end, without one, or inside its last line. */
  end: fc.constantFrom('whole', 'no line end', 'half a line'),
  isQuoted: fc.boolean(),
  mark: fc.constantFrom('', '\uFEFF'),
});
type Packaging = typeof packagings extends fc.Arbitrary<infer T> ? T : never;

type Row = { cells: string[]; stepS: number; shape: string };

/** Times in seconds since 1970 are known as such from 1990 on; a log with a third of its rows before is none that is read. */
const earliestMs = Date.UTC(1991, 0, 1);

const columns = ['Z1 PV', 'Z1 SP', 'Z2 PV', 'Running'];

const plain: Packaging = {
  ...{ dialect: { separator: ',', decimal: '.' }, time: (date) => date.toISOString(), layout: 'wide', lineEnd: '\n' },
  ...{ end: 'whole', isQuoted: false, mark: '' },
};

/** The files of a log; every one begins with 25 clean rows, so that all packagings are understood. */
function logFiles(rows: readonly Row[], packaging: Packaging): Record<string, string> {
  if (packaging.layout !== 'a file per zone') return { 'log.csv': logText(rows, packaging, [0, 1, 2, 3]) };
  return { 'Z1.csv': logText(rows, packaging, [0, 1, 3]), 'Z2.csv': logText(rows, packaging, [2]) };
}

function logText(rows: readonly Row[], packaging: Packaging, chosen: readonly number[]): string {
  const { dialect, layout, lineEnd, mark, isQuoted } = packaging;
  const clean = Array.from({ length: 25 }, (_, i) => ({
    ...{ cells: ['21.5', String(150 + i), '30.0', '1'], stepS: 10, shape: 'whole' },
  }));
  let ms = Date.UTC(2026, 0, 5);
  const lines = [...clean, ...rows].flatMap((row) => {
    ms = Math.max(ms + row.stepS * 1000, earliestMs);
    return linesOf(row, new Date(ms), packaging, chosen);
  });
  const header = layout.startsWith('long')
    ? ['time', 'tag', 'value', ...(layout === 'long' ? [] : ['quality'])]
    : [...(layout === 'wide, date apart' ? ['Date', 'Clock'] : ['Time']), ...chosen.map((i) => columns[i]!)];
  const shown = header.map((name) => quoted(name, isQuoted || dialect.separator === ' ')).join(dialect.separator);
  return mark + ended([shown, ...lines].join(lineEnd), packaging);
}

function linesOf({ cells, shape }: Row, date: Date, packaging: Packaging, chosen: readonly number[]): string[] {
  const { dialect, time, layout, isQuoted } = packaging;
  const join = (parts: readonly string[]): string =>
    parts
      .map((part) => quoted(part, isQuoted || (dialect.separator === ' ' && part.includes(' '))))
      .join(dialect.separator);
  const shown = chosen.map((i) => cells[i]!.replace(/^[-+]?[\d.e]+$/, (text) => text.replace('.', dialect.decimal)));
  const clock = layout === 'wide, date apart' ? [dottedDate(date), date.toISOString().slice(11, 19)] : [time(date)];
  const stamp = shape === 'no time' ? clock.map(() => 'n/a') : clock;
  if (shape === 'blank') return [''];
  if (!layout.startsWith('long')) {
    const kept = shape === 'short' ? shown.slice(0, 2) : shape === 'long' ? [...shown, '9'] : shown;
    return [join([...stamp, ...kept])];
  }
  return chosen.map((i) => {
    const quality = layout === 'long' ? [] : [i === 2 && shape !== 'whole' ? 'Bad' : 'Good'];
    return join([
      ...stamp,
      columns[i]!,
      ...(shape === 'short' ? [] : [shown[i]!, ...quality]),
      ...(shape === 'long' ? ['1'] : []),
    ]);
  });
}

function quoted(text: string, isQuoted: boolean): string {
  return isQuoted && !text.includes('"') ? `"${text}"` : text;
}

function ended(text: string, { end, lineEnd }: Packaging): string {
  if (end === 'whole') return text + lineEnd;
  return end === 'half a line' ? text.slice(0, -3) : text;
}

test('both readers give the same samples and leave out the same rows', { timeout: 300_000 }, async () => {
  let oddSeen = 0;
  let farSeen = 0;
  await fc.assert(
    fc.asyncProperty(packagings, fc.array(row, { minLength: 5, maxLength: 60 }), async (packaging, rows) => {
      await inFolder(logFiles(rows, packaging), async (folder) => {
        const fast = await pourPaths([folder]);
        const slow = await pourPaths([folder], {}, { isFast: false });
        expect(fast.zones.length).toBeGreaterThan(0);
        expect(fast.zones).toEqual(slow.zones);
        for (const part of ['sources', 'problems', 'examples', 'zones', 'learntCodes'] as const)
          expect(fast.result[part]).toEqual(slow.result[part]);
        if (fast.result.sources.some((source) => source.rowsRejected > 0)) oddSeen++;
        if (fast.result.sources.some((source) => source.rejectedByReason?.['far-time'])) farSeen++;
      });
    }),
    { numRuns: 120 },
  );
  expect(oddSeen).toBeGreaterThan(30); // the generator does make odd rows
  expect(farSeen).toBeGreaterThan(5);
});

test('zones are found in every packaging', { timeout: 300_000 }, async () => {
  const rows = Array.from({ length: 5 }, (_, i) => ({
    cells: [`21.${i}`, '150', '30.5', '1'],
    stepS: 10,
    shape: 'whole',
  }));
  const every = dialects.flatMap((dialect) =>
    times.flatMap((time) =>
      layouts.flatMap((layout) => [true, false].map((isQuoted) => ({ dialect, time, layout, isQuoted }))),
    ),
  );
  for (const packaging of every) {
    const { zones } = await inFolder(logFiles(rows, { ...plain, ...packaging }), (folder) => pourPaths([folder]));
    expect(
      zones.map(({ timeMs }) => timeMs.length),
      JSON.stringify([packaging, packaging.time(new Date(0))]),
    ).toEqual([30, 30]);
  }
});

test.each(layouts)('a log that is longer than the window of the reader: %s', { timeout: 300_000 }, async (layout) => {
  const rows = Array.from({ length: 60_000 }, (_, i) => ({
    cells: [(20 + (i % 900) / 10).toFixed(1), '150.0', i % 1500 === 7 ? '####' : '99.5', i % 2000 === 3 ? '"1"' : '1'],
    stepS: 10,
    shape: i % 700 === 5 ? 'long' : 'whole',
  }));
  const files = logFiles(rows, { ...plain, layout });
  expect(Object.values(files).join('').length).toBeGreaterThan(2_000_000);
  await inFolder(files, async (folder) => {
    const fast = await pourPaths([folder]);
    const slow = await pourPaths([folder], {}, { isFast: false });
    expect(fast.zones[0]!.timeMs).toHaveLength(25 + rows.filter(({ shape }) => shape === 'whole').length);
    expect(fast.zones).toEqual(slow.zones);
    for (const part of ['sources', 'problems', 'examples'] as const)
      expect(fast.result[part]).toEqual(slow.result[part]);
  });
});
