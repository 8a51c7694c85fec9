import { expect, test } from 'vitest';
import type { StopRow } from '../../../src/model/event-rows.js';
import { stopEntries } from '../../../src/normalise/events/lists.js';

const stop = (reason: string, planned = ''): StopRow => ({ startMs: 0, endMs: 60_000, machine: '', reason, planned });
const isPlanned = (row: StopRow): boolean => stopEntries([row], [], { zones: [] }).stops[0]!.isPlanned;

// What stop lists say in words; common practice.
test.each([
  ['Lunch break', true],
  ['Changeover to format 2', true],
  ['No order', true],
  ['Kein Auftrag', true],
  ['Break', true],
  ['Tea break, stop', true],
  ['Przerwa', true],
  ['Zone 1 sensor break', false],
  ['Heater break', false],
  ['Web break', false],
  ['Przerwa czujnika', false],
  ['Film jam unit 1', false],
  ['No product', false],
  ['Not planned: changeover', false],
])('a list without a column for it: %s', (reason, expected) => {
  expect(isPlanned(stop(reason))).toBe(expected);
});

test.each([
  ['1', true],
  ['x', true],
  ['Yes', true],
  ['Planned', true],
  ['0', false],
  ['No', false],
  ['Unplanned', false],
  ['nein', false],
])('a column for it goes before the reason: %s', (planned, expected) => {
  expect(isPlanned(stop(expected ? 'Zone 1 sensor' : 'Lunch', planned))).toBe(expected);
});
