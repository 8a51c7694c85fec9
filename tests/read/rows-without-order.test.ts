import { describe, expect, test } from 'vitest';
import { workbookOf } from '../make/workbook.js';
import { Random } from '../make/random.js';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 2, 2);
const stepMs = 30_000;
/** Two hours are missing in the middle. */
const timesMs = Array.from({ length: 9000 }, (_, i) => startMs + i * stepMs + (i >= 5000 ? 7_200_000 : 0));
const iso = (ms: number): string => new Date(ms).toISOString().slice(0, 19);
const reading = (i: number): string => (150 + (i % 11) / 10).toFixed(1);

function shuffled<T>(rows: readonly T[]): T[] {
  const random = new Random(7);
  const mixed = [...rows];
  for (let i = mixed.length - 1; i > 0; i--) {
    const j = Math.floor(random.next() * (i + 1));
    [mixed[i], mixed[j]] = [mixed[j]!, mixed[i]!];
  }
  return mixed;
}

describe('a file without any order gives what the ordered one gives', () => {
  const wide = timesMs.map((ms, i) => `${iso(ms)},${reading(i)},150.0`);
  const long = timesMs.flatMap((ms, i) => [`${iso(ms)};Z1 PV;${reading(i)}`, `${iso(ms)};Z1 SP;150.0`]);
  const sheet = timesMs.slice(4000, 6000).map((ms, i) => `${ms / 86_400_000 + 25_569},${reading(i + 4000)},150`);
  test.each<[string, string, readonly string[], string, number]>([
    ['wide', 'log.csv', wide, 'Time,Z1 PV,Z1 SP\n', 9000],
    ['long', 'log.csv', long, 'Time;Tag;Value\n', 9000],
    ['workbook', 'log.xlsx', sheet, 'Time,Z1 PV,Z1 SP\n', 2000],
  ])('%s', async (_, name, rows, header, sampleCount) => {
    const file = (lines: readonly string[]) => {
      const text = `${header}${lines.join('\n')}\n`;
      return { [name]: name.endsWith('xlsx') ? workbookOf(text, 1) : text };
    };
    const ordered = await pourFiles(file(rows));
    const mixed = await pourFiles(file(shuffled(rows)));
    expect(ordered.found.files[0]!.samplingMs).toBe(stepMs);
    expect(mixed.found.files[0]!.samplingMs).toBe(stepMs);
    expect(mixed.found.files[0]!.order).toBe('mixed');
    expect(mixed.found.files[0]!.isChangeLogged).toBe(false);
    expect(mixed.zones[0]!.timeMs).toHaveLength(sampleCount);
    expect(mixed.zones).toEqual(ordered.zones);
  });
});

test('the hour that stands twice in autumn is told where no order tells its turns apart', async () => {
  // 25 October 2026: clocks in Europe go from 03:00 back to 02:00 (Directive 2000/84/EC).
  const fromMs = Date.UTC(2026, 9, 24, 20);
  const clock = (utcMs: number): string => iso(utcMs + (utcMs < Date.UTC(2026, 9, 25, 1) ? 2 : 1) * 3_600_000);
  const rows = Array.from({ length: 1200 }, (_, i) => `${clock(fromMs + i * stepMs)},${reading(i)},150.0`);
  const file = (lines: readonly string[]) => ({ 'log.csv': `Time,Z1 PV,Z1 SP\n${lines.join('\n')}\n` });
  const ordered = await pourFiles(file(rows), { timezone: 'Europe/Oslo' });
  const mixed = await pourFiles(file(shuffled(rows)), { timezone: 'Europe/Oslo' });
  expect(ordered.zones[0]!.timeMs).toHaveLength(1200);
  expect(mixed.zones[0]!.timeMs).toHaveLength(1080);
  const told = mixed.result.problems.find(({ code }) => code === 'clock-jump')!;
  expect(told.what).toContain('The hour from 2026-10-25 02:00 stands twice on the clock');
  expect(ordered.result.problems).toEqual([]);
});
