import { expect, test } from 'vitest';
import { startSheetExtent } from '../../src/read/sources/sheet-extent.js';
import { workbookOf } from '../make/workbook.js';
import { pourFiles } from './poured.js';

const cell = (place: string): string => `<c r="${place}"><v>1</v></c>`;
const sheetOf = (rows: string): string => `<worksheet><sheetData>${rows}</sheetData></worksheet>`;

/** Whether a sheet is refused, its text cut into pieces of so many bytes. */
function isRefused(text: string, pieceBytes = text.length): boolean {
  const extent = startSheetExtent();
  for (let at = 0; at < text.length; at += pieceBytes) extent.take(Buffer.from(text.slice(at, at + pieceBytes)));
  try {
    extent.demandModest('book.xlsx');
    return false;
  } catch (error) {
    expect(error).toMatchObject({ code: 'too-large', place: { file: 'book.xlsx' } });
    return true;
  }
}

// The last cell of a sheet is XFD1048576: common practice, from memory.
test.each([
  ['the last cell of a sheet', `<row r="1048576">${cell('XFD1048576')}</row>`, true],
  [
    'rows far down beside columns far right',
    `<row r="1">${cell('XFD1')}</row><row r="9999">${cell('A9999')}</row>`,
    true,
  ],
  ['a row that no sheet has, even without cells', '<row r="99999999999"/>', true],
  ['a column that no sheet has', `<row r="1">${cell('XFE1')}</row>`, true],
  ['a million rows of twenty columns', `<row r="1048576">${cell('A1048576')}${cell('T1048576')}</row>`, false],
  ['a far cell without a value', `<row r="1048576"><c r="XFD1048576" s="1"/></row>`, false],
  [
    'a first row formatted to its end',
    `<row r="1"><c r="XFD1" s="1"/></row><row r="9999">${cell('A9999')}</row>`,
    false,
  ],
])('%s', (_, rows, expected) => {
  const text = sheetOf(`<row r="1">${cell('A1')}</row>`.repeat(50) + rows);
  for (const pieceBytes of [text.length, 64, 7]) expect(isRefused(text, pieceBytes)).toBe(expected);
});

test('a cell whose text is longer than any cell can be is cut, and the rest is read', async () => {
  const rows = Array.from({ length: 60 }, (_, i) => `2026-01-05 00:${String(i).padStart(2, '0')}:00,22.${i % 10}`);
  const book = workbookOf(`Time,Z1 PV\n${rows.join('\n')}\n${'q'.repeat(1_000_000)},22.0\n`);
  const { zones, result } = await pourFiles({ 'log.xlsx': book });
  expect(zones[0]!.timeMs).toHaveLength(60);
  expect(result.sources[0]!.rowsRejected).toBe(1);
});
