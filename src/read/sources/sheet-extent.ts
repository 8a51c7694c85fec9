import { LogProblem } from '../../model/problem.js';

/** A sheet has no more rows and columns (common practice of all spreadsheets; the last column is XFD). */
const mostRows = 1_048_576;
const mostColumns = 16_384;

/** The reader makes a grid of all rows and columns in use, where an empty cell takes eight bytes: 256 MB. */
const mostGridCells = 32 * 1024 * 1024;

/** A row or a cell that begins, with its address (ECMA-376 part 1, 18.3.1.4 and 18.3.1.73). */
const openTag = /<(?:\w+:)?(?:row|c)\s(?:[^<>]*?\s)?r\s*=\s*["']([A-Za-z]*)(\d+)["'][^<>]*>/g;
/** A tag is no longer than this, so one that is cut between two pieces is seen in the next. */
const longestTag = 1000;

export interface SheetExtent {
  /** Takes the next piece of a sheet's text. */
  take(data: Uint8Array): void;
  /** Throws LogProblem 'too-large' when the grid of the sheet would not fit the memory. */
  demandModest(path: string): void;
}

/** Watches one text of a workbook for the last row and column in use. */
export function startSheetExtent(): SheetExtent {
  let rest = '';
  let lastRow = 0;
  let row = 0;
  let column = 0;
  return {
    take(data) {
      const text = rest + Buffer.from(data.buffer, data.byteOffset, data.byteLength).toString('latin1');
      let doneTo = 0;
      for (const match of text.matchAll(openTag)) {
        const [tag, letters, digits] = match;
        doneTo = match.index + tag.length;
        lastRow = Math.max(lastRow, Number(digits));
        if (letters === '' || tag.endsWith('/>')) continue; // a cell without a value takes no room
        row = Math.max(row, Number(digits));
        column = Math.max(column, columnNumber(letters!));
      }
      rest = text.slice(Math.max(doneTo, text.length - longestTag));
    },

    demandModest(path) {
      if (lastRow <= mostRows && column <= mostColumns && row * column <= mostGridCells) return;
      throw new LogProblem(
        'too-large',
        { file: path },
        `Cells are in use as far as row ${Math.max(row, lastRow)} and column ${column}, which would have to be held in memory.`,
        'Delete what stands far from the log, or export it as CSV, which has no limit.',
      );
    },
  };
}

/** 1 for A, 27 for AA. */
function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters.toUpperCase()) number = number * 26 + letter.charCodeAt(0) - 64;
  return number;
}
