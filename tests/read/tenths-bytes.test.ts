import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Dialect } from '../../src/model/log-file.js';
import { putNumber } from '../../src/read/rows/number-bytes.js';
import { TenthsBytes } from '../../src/read/rows/tenths-bytes.js';

const into = new Float64Array(3);

function put(
  row: string,
  separator: Dialect['separator'] = ';',
  decimal: Dialect['decimal'] = '.',
): { next: number; value: number } {
  const places = { numbers: into, firstPlace: Int32Array.of(1), runEnd: Int32Array.of(1) };
  const tenths = new TenthsBytes({ separator, decimal }, places);
  into.fill(7);
  tenths.lookAt(Buffer.from(row, 'latin1'));
  const isRead = tenths.putRun(0, 0, 0) === 1;
  expect([into[0], into[2]]).toEqual([7, 7]);
  expect(tenths.behind > 0).toBe(isRead);
  return { next: isRead ? tenths.behind : -1, value: into[1]! };
}

test.each([
  ['152.3;', 6, 152.3],
  ['30.5;', 5, 30.5],
  ['007.0;', 6, 7],
])('%j is read', (cell, next, value) => {
  expect(put(`${cell}1;23456`)).toEqual({ next, value });
});

test('whatever stands in a cell, it is left alone or read as the careful way reads it', () => {
  // Bytes beside the digits, and those that differ from a digit or the mark in one bit or by a carry.
  const letter = fc.constantFrom(...'0123456789.;,-:/>? \n', '\u00ca', '\u00b0', '\u00ff', '\u0000', 'p', 'n');
  const odd = fc.string({ unit: letter, maxLength: 2 });
  const usual = (...texts: string[]) => fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...texts) }, odd);
  const row = fc.tuple(
    usual('152', '30', '9', '-4'),
    usual('.', ','),
    usual('0', '5', '9'),
    usual(';', ',', ' '),
    fc.string({ unit: letter, minLength: 4, maxLength: 8 }),
  );
  let readCount = 0;
  fc.assert(
    fc.property(
      row,
      fc.constantFrom<Dialect['separator'][]>(';', ',', ' '),
      fc.constantFrom<Dialect['decimal'][]>('.', ','),
      (parts, separator, decimal) => {
        const text = parts.join('');
        const { next, value } = put(text, separator, decimal);
        if (next < 0) {
          expect(value).toBe(7);
          return;
        }
        const careful = new Float64Array(1);
        const end = putNumber(Buffer.from(`${text}\n`, 'latin1'), 0, decimal.charCodeAt(0), careful, 0);
        readCount++;
        expect([end + 1, careful[0]]).toEqual([next, value]);
        expect(text[end]).toBe(separator);
      },
    ),
    { numRuns: 20_000, seed: 3 },
  );
  expect(readCount).toBeGreaterThan(500);
});

test('every cell of tenths is the double that Number gives', () => {
  for (let count = 0; count < 10_000; count++) {
    const text = (count / 10).toFixed(1).padStart(4, '0');
    expect(put(`${text};12345`).value).toBe(Number(text));
  }
});

test('a run goes on to the first cell of another kind, and no further than it may', () => {
  const numbers = new Float64Array(4).fill(7);
  const tenths = new TenthsBytes(
    { separator: ',', decimal: '.' },
    { numbers, firstPlace: Int32Array.of(0, 1, 2, 3), runEnd: Int32Array.of(3, 3, 3, 3) },
  );
  tenths.lookAt(Buffer.from('152.3,30.5,-1.5,20.0,20.0,20.0\n', 'latin1'));
  expect([tenths.putRun(0, 0, 0), tenths.behind, [...numbers]]).toEqual([2, 11, [152.3, 30.5, 7, 7]]);
  expect([tenths.putRun(16, 2, 0), tenths.behind, [...numbers]]).toEqual([3, 21, [152.3, 30.5, 20, 7]]);
});

test('at the end of the bytes, where four more may not stand, nothing is read', () => {
  expect(put('30.5;').next).toBe(-1);
  expect(put('30.5').next).toBe(-1);
});
