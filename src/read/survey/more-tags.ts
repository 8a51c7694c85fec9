import { tagOfRow } from '../columns/series.js';
import type { SampledRow } from '../sources/sampled-row.js';
import type { FileShape } from '../layout/file-shape.js';
import type { RowSource } from '../sources/table-part.js';
import { allRows } from './all-rows.js';

/** Rows taken of each tag that the sample did not hold. */
const rowsPerTag = 60;

/**
 * Looks through a whole long file for tags that its sample does not hold. Only done where some stretch of the sample
 * holds tags that the beginning lacks: a file that lists one tag after the other, or tags that are seldom written.
 *
 * @returns Rows of such tags, each tag a stretch of its own; none where the beginning holds all.
 */
export async function rowsOfMoreTags(source: RowSource, shape: FileShape): Promise<SampledRow[]> {
  if (shape.layout !== 'long' || !isBeginningLacking(shape)) return [];
  const seen = new Set(shape.rows.map((row) => tagOfRow(row.cells, shape)));
  const taken = new Map<string, SampledRow[]>();
  const firstStretch = 1 + Math.max(...shape.rows.map((row) => row.stretch));
  for await (const { line, cells } of allRows(source, shape.firstDataLine)) {
    const tag = tagOfRow(cells, shape);
    if (tag === '' || cells.length < shape.rowWidth || seen.has(tag)) continue;
    let rows = taken.get(tag);
    if (!rows) taken.set(tag, (rows = []));
    if (rows.length < rowsPerTag) rows.push({ stretch: firstStretch + taken.size, line, cells });
  }
  return [...taken.values()].flat();
}

function isBeginningLacking(shape: FileShape): boolean {
  const first = new Set(shape.rows.filter((row) => row.stretch === 0).map((row) => tagOfRow(row.cells, shape)));
  return shape.rows.some((row) => row.stretch > 0 && !first.has(tagOfRow(row.cells, shape)));
}
