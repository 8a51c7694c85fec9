import { expect, test } from 'vitest';
import { detectDialect } from '../../src/read/layout/dialect.js';

const rows = (row: (i: number) => string): string[] => Array.from({ length: 6 }, (_, i) => row(i));

test('refuses a comma that parts cells and decimals', () => {
  const { ambiguous } = detectDialect(['Time,Zone 1,Zone 2', ...rows((i) => `2026-05-0${i + 1} 06:00,21,5,22,1`)]);
  expect(ambiguous).toMatch(/no rule can tell/);
});

test('reads whole degrees below a preamble whose lines hold commas, too', () => {
  const preamble = ['Report,Temperature history', 'Created,by operator'];
  const lines = [...preamble, 'Time,Zone 1,Zone 2,Zone 3', ...rows((i) => `2026-05-0${i + 1} 06:00,21,22,23`)];
  const { ambiguous, dialect } = detectDialect(lines);
  expect(ambiguous).toBeNull();
  expect(dialect.separator).toBe(',');
});

test.each([
  ['points group thousands beside whole numbers below', ['978', '991', '999', '1.002', '1.013', '1.498'], ',', '.'],
  ['commas do, too', ['978', '991', '999', '1,002', '1,013', '1,498'], '.', ','],
  ['three decimals behind a comma', ['180,125', '180,250', '179,875', '181,000', '180,500', '180,375'], ',', ''],
  ['three decimals behind a point', ['180.125', '180.250', '179.875', '181.000', '180.500', '180.375'], '.', ''],
  ['commas before an exponent', ['1,80E+02', '1,81E+02', '1,80E+02', '2,10E+01', '1,80E+02', '9,5E+00'], ',', ''],
  ['commas before a unit', ['180,1 °C', '180,2 °C', '21,0 °C', '21,5 °C', '180 °C', '180,0 °C'], ',', ''],
  ['both marks before a unit', ['1.180,1 °C', '1.180,2 °C', '21,0 °C', '21,5 °C', '1.180,0 °C', '9 °C'], ',', '.'],
  ['commas before a minus', ['180,1', '1,5-', '2,5-', '21,5', '1,0-', '180,0'], ',', ''],
  ['a point that leaves trailing zeros out', ['180.125', '180.25', '179', '181', '180', '180.375'], '.', ''],
])('semicolons: %s', (_, cells, decimal, thousands) => {
  const { dialect } = detectDialect(['Time;Zone 1', ...rows((i) => `2026-05-0${i + 1} 06:00;${cells[i]}`)]);
  expect(dialect).toMatchObject({ separator: ';', decimal, thousands });
});
