import { expect, test } from 'vitest';
import { detectDialect } from '../../src/read/dialect.js';

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
