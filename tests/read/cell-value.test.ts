import { expect, test } from 'vitest';
import { cellMark } from '../../src/model/log-file.js';
import { readCell } from '../../src/read/rows/cell-value.js';

const marksOf = (cells: readonly string[]): number[] =>
  cells.map((cell) => readCell(cell, { decimal: '.', thousands: '' }).mark);

test("takes a spreadsheet's own errors for nothing, and a display full of hashes for an open input", () => {
  // Error values of ECMA-376 part 1 (Office Open XML), clause 18.17.3.
  const errors = ['#DIV/0!', '#N/A', '#NAME?', '#NULL!', '#NUM!', '#REF!', '#VALUE!'];
  expect(marksOf(errors)).toEqual(errors.map(() => cellMark.blank));
  expect(marksOf(['####', '#####', 'OL'])).toEqual([cellMark.openText, cellMark.openText, cellMark.openText]);
});

test('a minus behind the number counts, one that stands for a range does not', () => {
  const valueOf = (cell: string): number => readCell(cell, { decimal: ',', thousands: '.' }).value;
  expect(['1,5-', '1.850,0 °C', '1,85E+02', '−3,5'].map(valueOf)).toEqual([-1.5, 1850, 185, -3.5]);
  expect(['-', '1-2-', '--5'].map(valueOf)).toEqual([NaN, NaN, NaN]);
});

test('signs for degrees and percent in one character, or without a letter', () => {
  const read = (cell: string) => readCell(cell, { decimal: '.', thousands: '' });
  for (const cell of ['180.5℃', '180.5 ℉', '180.5°', '180.5％'])
    expect(read(cell)).toEqual({ value: 180.5, mark: cellMark.number });
});
