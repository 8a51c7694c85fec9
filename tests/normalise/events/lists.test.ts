import { expect, test } from 'vitest';
import type { StopRow } from '../../../src/model/event-rows.js';
import { maintenanceEntries, stopEntries } from '../../../src/normalise/events/lists.js';
import { namedZone } from '../../make/event-file.js';

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

const zones = [1, 2, 3, 4, 5].map((number, index) => namedZone(index, `Zone ${number}`));
const namedBy = (zone: string, done = 'sensors replaced', all = zones): (number | null)[] =>
  maintenanceEntries([{ timeMs: 0, zone, machine: '', done, found: '' }], all, { zones: [] }).map((it) =>
    it.zone === null ? null : it.zone + 1,
  );

// How people name several zones in one cell; common practice.
test.each([
  ['Z1+Z3', [1, 3]],
  ['zones 2, 4', [2, 4]],
  ['Zonen 2 und 4', [2, 4]],
  ['1-4', [1, 2, 3, 4]],
  ['Z2 - Z4', [2, 3, 4]],
  ['zones 1 to 3', [1, 2, 3]],
  ['1; 3-5', [1, 3, 4, 5]],
  ['Zone 1, left', [1]],
  ['Zone 3', [3]],
  ['4-9', [null]],
])('work on several zones is told of each: %s', (zone, expected) => {
  expect(namedBy(zone)).toEqual(expected);
});

test('a zone whose own name looks like several is one', () => {
  const all = ['1-3', '1', '2', '3'].map((name, index) => namedZone(index, name));
  expect(namedBy('1-3', 'sensor replaced', all)).toEqual([1]);
});

test.each([
  ['RTD of zones 1 and 3 replaced', [1, 3]],
  ['Z1+Z3 sensors replaced', [1, 3]],
  ['Fühler Zone 2 und Zone 4 getauscht', [2, 4]],
  ['zone 2, 3 ohm too high, RTD replaced', [2]],
  ['RTD of zone 3 replaced', [3]],
])('several zones in the words of the work: %s', (done, expected) => {
  expect(namedBy('', done)).toEqual(expected);
});

test.each([
  ['Zone 1 sensor break', 0],
  ['too cold: zone 2', 1],
  ['Zone 2', 1],
  ['Jam at zone 2', null],
  ['Jam', null],
])('a stop for "%s" is of zone %s', (reason, zone) => {
  const zones = [namedZone(0, 'Zone 1'), namedZone(1, 'Zone 2')];
  const row = { startMs: 0, endMs: 60_000, machine: '', reason, planned: '' };
  expect(stopEntries([row], zones, { zones: [] }).stops[0]!.zone).toBe(zone);
});
