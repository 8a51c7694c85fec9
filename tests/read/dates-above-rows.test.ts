import { describe, expect, test } from 'vitest';
import { pourFiles, type Poured } from './poured.js';

const stepMs = 60_000;

/** Rows "HH:MM:SS;reading;set point" from a moment on. */
function clockRows(start: string, count: number, separator = ';'): string {
  return Array.from({ length: count }, (_, i) => {
    const clock = new Date(Date.parse(`${start}Z`) + i * stepMs).toISOString().slice(11, 19);
    return [clock, (150 + (i % 7) / 10).toFixed(1), 150].join(separator);
  }).join('\n');
}

const timesOf = ({ zones }: Poured): string[] =>
  [zones[0]!.timeMs[0]!, zones[0]!.timeMs.at(-1)!].map((ms) => new Date(ms).toISOString().slice(0, 16));
const header = 'Time;Front jaw PV;Front jaw SP';

describe('rows of times of day get their date', () => {
  test.each([
    ['from a line above the header', `Plant log\nDate: 2026-03-02\n${header}\n`, {}],
    ['with the day first', `Datum: 02.03.2026\n\n${header}\n`, {}],
    ['in words, with the moment of writing beside it', `Exported: 2026-03-09\nMonday 2 March 2026\n${header}\n`, {}],
    ['in words, with begin and end', `From;2026-03-02\nTo;2026-03-09\n${header}\n`, {}],
    ['below the header', `${header}\n2026-03-02\n`, {}],
    ['with the month first, as the option says', `Date: 3/2/2026\n${header}\n`, { dates: 'month-first' as const }],
  ])('%s, and midnight begins the next day', async (_, top, options) => {
    const poured = await pourFiles({ 'log.csv': `${top}${clockRows('2026-03-02T22:00:00', 300)}\n` }, options);
    expect(poured.found.zones.map(({ name }) => name)).toEqual(['Front jaw']);
    expect(timesOf(poured)).toEqual(['2026-03-02T22:00', '2026-03-03T02:59']);
    expect(poured.zones[0]!.timeMs).toHaveLength(300);
    expect(poured.result.sources[0]).toMatchObject({ rowsRead: 300, rowsRejected: 0 });
  });

  test('from the name of the file, a file for each day', async () => {
    const files = Object.fromEntries(
      ['02', '03'].map((day) => [`log_202603${day}.csv`, `${header}\n${clockRows(`2026-03-${day}T06:00:00`, 100)}\n`]),
    );
    const poured = await pourFiles(files);
    expect(timesOf(poured)).toEqual(['2026-03-02T06:00', '2026-03-03T07:39']);
    expect(poured.found.files[0]!.time.why).toContain("in the file's name");
  });

  test('from lines between the rows; headers that stand again are counted', async () => {
    const days = ['02', '03', '05'].map(
      (day) => `Date: 2026-03-${day};;\n${header}\n${clockRows(`2026-03-${day}T06:00:00`, 60)}`,
    );
    for (const isFast of [true, false]) {
      const poured = await pourFiles({ 'log.csv': `${days.join('\n')}\n` }, {}, { isFast });
      const { timeMs } = poured.zones[0]!;
      expect([0, 60, 120].map((i) => new Date(timeMs[i]!).toISOString().slice(0, 16))).toEqual([
        ...['2026-03-02T06:00', '2026-03-03T06:00'],
        '2026-03-05T06:00',
      ]);
      expect(poured.result.sources[0]!.rejectedByReason).toEqual({ 'repeated-header': 2 });
    }
  });

  test('late rows behind midnight belong to the day before', async () => {
    const rows = clockRows('2026-03-02T22:00:00', 300).split('\n');
    [rows[119], rows[120]] = [rows[120]!, rows[119]!];
    const poured = await pourFiles({ 'log.csv': `Date: 2026-03-02\n${header}\n${rows.join('\n')}\n` });
    expect(timesOf(poured)).toEqual(['2026-03-02T22:00', '2026-03-03T02:59']);
    expect(poured.zones[0]!.timeMs).toHaveLength(300);
  });

  test('a file that is longer than what is sampled of it', async () => {
    const poured = await pourFiles({
      'log.csv': `Date: 2026-03-02\n${header}\n${clockRows('2026-03-02T22:00:00', 30_000)}\n`,
    });
    expect(poured.zones[0]!.timeMs).toHaveLength(30_000);
    expect(timesOf(poured)).toEqual(['2026-03-02T22:00', '2026-03-23T17:59']);
  });
});

test('without a date anywhere the file is told as not read, and why', async () => {
  const { found } = await pourFiles({ 'log.csv': `${header}\n${clockRows('2026-03-02T22:00:00', 300)}\n` });
  expect(found.zones).toEqual([]);
  expect(found.problems[0]!.what).toContain('neither a column, nor a line above the rows');
});

describe('a date that stands where a day begins, and is blank below', () => {
  const named = `Date;${header}`;
  const day = (date: string, start: string, count: number): string =>
    clockRows(start, count)
      .split('\n')
      .map((row, i) => `${i === 0 ? date : ''};${row}`)
      .join('\n');
  const days = [
    day('02.03.2026', '2026-03-02T06:00:00', 200),
    day('03.03.2026', '2026-03-03T05:00:00', 200),
    day('05.03.2026', '2026-03-05T05:00:00', 1200),
  ].join('\n');

  test.each([true, false])('holds until the next, also past midnight (fast: %s)', async (isFast) => {
    const poured = await pourFiles({ 'log.csv': `${named}\n${days}\n` }, {}, { isFast });
    const { timeMs } = poured.zones[0]!;
    expect(poured.found.zones.map(({ name }) => name)).toEqual(['Front jaw']);
    expect([0, 199, 200, 400, 1599].map((i) => new Date(timeMs[i]!).toISOString().slice(0, 16))).toEqual([
      ...['2026-03-02T06:00', '2026-03-02T09:19', '2026-03-03T05:00', '2026-03-05T05:00', '2026-03-06T00:59'],
    ]);
    expect(poured.result.sources[0]).toMatchObject({ rowsRead: 1600, rowsRejected: 0 });
    expect(poured.found.files[0]!.time.why).toContain('in "Date" stands where a day begins');
  });

  test('rows before the first date are of the day before, where the clock has passed midnight', async () => {
    const begun = day('', '2026-03-01T22:00:00', 120);
    const poured = await pourFiles({
      'log.csv': `${named}\n${begun}\n${day('02.03.2026', '2026-03-02T00:00:00', 300)}\n${day('13.03.2026', '2026-03-13T06:00:00', 60)}\n`,
    });
    expect(timesOf(poured)).toEqual(['2026-03-01T22:00', '2026-03-13T06:59']);
    expect(poured.zones[0]!.timeMs).toHaveLength(480);
  });

  test('in a long log, too', async () => {
    const rows = clockRows('2026-03-02T22:00:00', 300)
      .split('\n')
      .flatMap((row, i) => {
        const [clock, reading, setpoint] = row.split(';');
        const date = clock === '00:00:00' || i === 0 ? (i === 0 ? '2026-03-02' : '2026-03-03') : '';
        return [`${date};${clock};Front jaw PV;${reading}`, `;${clock};Front jaw SP;${setpoint}`];
      });
    const poured = await pourFiles({ 'log.csv': `Date;Time;Tag;Value\n${rows.join('\n')}\n` });
    expect(timesOf(poured)).toEqual(['2026-03-02T22:00', '2026-03-03T02:59']);
    expect(poured.zones[0]!.timeMs).toHaveLength(300);
  });
});
