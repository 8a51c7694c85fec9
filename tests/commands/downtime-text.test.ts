import { expect, test } from 'vitest';
import { parse } from 'csv-parse/sync';
import { downtimeCsv, downtimeText } from '../../src/commands/downtime/downtime-text.js';
import type { DowntimeFindings } from '../../src/model/downtime-findings.js';

const row = (name: string, minutes: number) =>
  ({
    name,
    bucket: 'zone-fault',
    machine: 'M1',
    minutes,
    stops: 2,
    longestMinutes: minutes / 2,
    cost: minutes * 5,
  }) as const;
const findings: DowntimeFindings = {
  from: ['running'],
  stoppedMinutes: 180,
  plannedMinutes: 0,
  zoneFaultMinutes: 180,
  otherMinutes: 0,
  unknownMinutes: 0,
  currency: 'EUR',
  cost: 900,
  byZone: [row('=cmd|" /C calc"!A0', 120), row('Front jaw of the long machine in hall three', 60)],
  byMachine: [row('M1', 180)],
  byWeek: [row('2026-W02', 180)],
  pareto: [row('Front jaw', 180)],
  reliability: [],
  notes: ['No log says when M1 ran, so stops are told from alarms.'],
};

test('CSV cells that a spreadsheet would run are defused, numbers stay numbers', () => {
  const [head, first] = parse(downtimeCsv(findings, 'zone')) as string[][];
  expect(head).toContain('minutes');
  expect(first![0]).toBe(`'=cmd|" /C calc"!A0`);
  expect(first![3]).toBe('120');
});

test.each([60, 80, 120])('no line of the table is wider than %i columns', (width) => {
  const lines = downtimeText(findings, 'machine', width).split('\n');
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
});

test('hours, money and notes are there', () => {
  const text = downtimeText(findings, 'week', 80);
  expect(text).toContain('2026-W02');
  expect(text).toContain('3.0');
  expect(text).toContain('900 EUR');
  expect(text).toContain('No log says when M1 ran');
});
