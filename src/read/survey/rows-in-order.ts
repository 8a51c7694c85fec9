import type { LogFile } from '../../model/log-file.js';
import { splitCells } from '../layout/dialect.js';
import type { FileShape } from '../layout/file-shape.js';
import { nearestRank } from '../columns/nearest-rank.js';
import { timeCell } from '../times/time-cell.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { readTable } from '../sources/table-source.js';
import { readLines } from '../sources/text-source.js';
import { compileTime } from '../times/time-format.js';

/** Rows looked at of a file without order; a long one needs more, for each of its tags has a step (own choice). */
const wantedRows = { wide: 1000, long: 4000, none: 0 } as const;

type Source = Pick<LogFile, 'name' | 'path' | 'part' | 'container' | 'encoding' | 'dialect' | 'sizeBytes'>;

/**
 * Rows of a file without order that follow each other in time: neighbours in such a file say nothing of its step. The whole
 * file is read for them, but only the rows of one span of time are kept, some thousands from the middle.
 *
 * @param clock Clock of each sampled row of the shape, which tells how long the span may be.
 * @returns By time, as one stretch. Throws LogProblem when the file cannot be read further.
 */
export async function rowsInOrder(source: Source, shape: FileShape, clock: readonly number[]): Promise<SampledRow[]> {
  const known = clock.filter((ms) => !Number.isNaN(ms));
  const read = compileTime(shape.time);
  const most = 2 * wantedRows[shape.layout];
  const kept: { ms: number; row: SampledRow }[] = [];
  let [fromMs, toMs] = [-Infinity, Infinity];
  for await (const row of rowsOf(source, shape)) {
    const ms = read(timeCell(row.cells, shape));
    if (!(ms >= fromMs && ms <= toMs)) continue;
    kept.push({ ms, row });
    if (kept.length < most) continue;
    // Twice as many as wanted: the half that lies nearest to the middle of the file stays.
    [fromMs, toMs] = middleHalf(
      kept.map((it) => it.ms),
      nearestRank(known, 0.5),
    );
    const inside = kept.filter((it) => it.ms >= fromMs && it.ms <= toMs);
    kept.splice(0, kept.length, ...inside);
  }
  return kept.sort((a, b) => a.ms - b.ms || a.row.line - b.row.line).map(({ row }) => row);
}

/** The span that holds the half of some times which lies nearest to one. */
function middleHalf(timesMs: readonly number[], middleMs: number): [number, number] {
  const reachMs = nearestRank(
    timesMs.map((ms) => Math.abs(ms - middleMs)),
    0.5,
  );
  return [middleMs - reachMs, middleMs + reachMs];
}

async function* rowsOf(source: Source, { firstDataLine, rowWidth }: FileShape): AsyncGenerator<SampledRow> {
  const { container, dialect, encoding } = source;
  if (container === 'workbook' || container === 'parquet') {
    for await (const { firstLine, rows } of readTable(source))
      for (const [i, cells] of rows.entries())
        if (firstLine + i >= firstDataLine) yield { stretch: 0, line: firstLine + i, cells };
    return;
  }
  for await (const { number, text } of readLines(source, encoding)) {
    if (number < firstDataLine) continue;
    const cells = splitCells(text, dialect);
    if (cells.length >= rowWidth) yield { stretch: 0, line: number, cells };
  }
}
