import type { TextRecord } from '../sources/records.js';
import { isListHeader } from './list-header.js';

/** What reads one table of a file. */
interface TableReader {
  take: (record: TextRecord) => void;
}

/** A table and the columns it stands in. */
interface Block<Reader> {
  readonly reader: Reader;
  readonly from: number;
  readonly to: number;
}

/**
 * Hands the rows of a file to its tables. People put several on one sheet: one below the other, each with names of its own
 * above it, or side by side. Names that are said again begin no new table.
 */
export class TablesOfFile<Reader extends TableReader> {
  readonly first: Reader;
  readonly all: Reader[] = [];
  private blocks: Block<Reader>[] = [];
  private names = '';
  /** Whether any row came since the last names. */
  private hasRows = false;

  constructor(private readonly begin: () => Reader) {
    this.first = this.added();
    this.blocks = [{ reader: this.first, from: 0, to: Infinity }];
  }

  take(record: TextRecord): void {
    if (isListHeader(record.cells)) {
      const names = record.cells.map((name) => name.trim()).join('\0');
      if (names === this.names) return;
      if (this.names !== '' && this.hasRows) this.blocks = [{ reader: this.added(), from: 0, to: Infinity }];
      if (this.names === '' || this.hasRows) this.divide(record.cells);
      this.names = names;
      this.hasRows = false;
    } else this.hasRows ||= this.names !== '' && record.cells.filter((cell) => cell.trim() !== '').length > 1;
    const [only] = this.blocks;
    if (this.blocks.length === 1) only!.reader.take(record);
    else
      for (const { reader, from, to } of this.blocks) {
        const cells = record.cells.slice(from, to);
        if (cells.some((cell) => cell.trim() !== '')) reader.take({ ...record, cells });
      }
  }

  private divide(names: readonly string[]): void {
    const [first, ...others] = placesOfTables(names);
    if (others.length === 0) return;
    const { reader } = this.blocks[0]!;
    this.blocks = [{ reader, ...first! }, ...others.map((place) => ({ reader: this.added(), ...place }))];
  }

  private added(): Reader {
    const reader = this.begin();
    this.all.push(reader);
    return reader;
  }
}

/** Where tables stand side by side: behind a column without a name, or where the first name comes again; each is a list. */
function placesOfTables(names: readonly string[]): { readonly from: number; readonly to: number }[] {
  const starts = names.flatMap((name, i) => {
    const isBehindGap = i > 0 && name.trim() !== '' && names[i - 1]!.trim() === '';
    return i === 0 || isBehindGap || (name.trim() !== '' && name.trim() === names[0]!.trim()) ? [i] : [];
  });
  const places = starts.map((from, i) => ({ from, to: starts[i + 1] ?? Infinity }));
  const areLists = places.every(({ from, to }) => isListHeader(names.slice(from, to)));
  return areLists ? places : [{ from: 0, to: Infinity }];
}
