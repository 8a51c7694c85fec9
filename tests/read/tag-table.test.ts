import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CellBounds } from '../../src/read/rows/cell-bounds.js';
import { TagTable } from '../../src/read/rows/tag-table.js';

const dialects = [',', ';', ' '].map((separator) => ({ ...{ decimal: '.', thousands: '', quote: '"' }, separator }));

function tableOf(names: readonly string[], dialect: unknown): TagTable {
  const table = new TagTable(new CellBounds(dialect as ConstructorParameters<typeof CellBounds>[0]));
  for (const name of names) table.add(Buffer.from(name));
  return table;
}

test('a tag that is expected is the tag that would be found', () => {
  // Names that begin alike, and names that cannot stand in a cell as they are.
  const names = ['Z1', 'Z1 PV', 'Z1 PV,b', 'Z2', 'Ofen ä', ' Z3', 'Z"4', 'Z'];
  let expected = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...dialects),
      fc.array(fc.constantFrom(...names, 'Z1 P', 'unknown'), { minLength: 1, maxLength: 4 }),
      fc.constantFrom('', ',', ' PV', ',b'),
      (dialect, round, odd) => {
        const table = tableOf(names, dialect);
        const bounds = new CellBounds(dialect as never);
        for (const name of [...round, ...round, ...round, round[0]! + odd, ...round]) {
          const bytes = Buffer.from(`${name}${dialect.separator}1\n`);
          const end = bounds.endOf(bytes, 0);
          const skimmed = table.skim(bytes, 0);
          if (skimmed >= 0) {
            expected++;
            expect(skimmed).toBe(end);
            expect(names[table.number]).toBe(bytes.toString('utf8', 0, end));
          } else if (end >= 0) expect(table.find(bytes, 0, end)).toBe(names.indexOf(bytes.toString('utf8', 0, end)));
        }
      },
    ),
    { numRuns: 500 },
  );
  expect(expected).toBeGreaterThan(1000);
});

test('hundreds of tags keep their numbers', () => {
  const names = Array.from({ length: 700 }, (_, i) => `Zone ${i}`);
  const table = tableOf(names, dialects[0]);
  const found = names.map((name) => table.find(Buffer.from(name), 0, Buffer.byteLength(name)));
  expect(found).toEqual(names.map((_, i) => i));
});
