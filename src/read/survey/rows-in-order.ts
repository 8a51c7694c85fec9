import type { FileShape } from '../layout/file-shape.js';
import { nearestRank } from '../columns/nearest-rank.js';
import { timeCell } from '../times/time-cell.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { ClockDays } from '../times/clock-days.js';
import { compileTime } from '../times/time-format.js';
import type { RowSource } from '../sources/table-part.js';
import { allRows } from './all-rows.js';

/** Rows looked at of a file without order; a long one needs more, for each of its tags has a step (own choice). */
const wantedRows = { wide: 1000, long: 4000, none: 0 } as const;

/**
 * Rows of a file without order that follow each other in time: neighbours in such a file say nothing of its step. The whole
 * file is read for them, but only the rows of one span of time are kept, some thousands from the middle.
 *
 * @param clock Clock of each sampled row of the shape, which tells how long the span may be.
 * @returns By time, as one stretch. Throws LogProblem when the file cannot be read further.
 */
export async function rowsInOrder(
  source: RowSource,
  shape: FileShape,
  clock: readonly number[],
): Promise<SampledRow[]> {
  const known = clock.filter((ms) => !Number.isNaN(ms));
  const read = compileTime(shape.time);
  const days = shape.days && new ClockDays(shape.days);
  const most = 2 * wantedRows[shape.layout];
  const kept: { ms: number; row: SampledRow }[] = [];
  let [fromMs, toMs] = [-Infinity, Infinity];
  for await (const row of allRows(source, shape.firstDataLine)) {
    if (row.cells.length < shape.rowWidth) continue;
    const ms = read(timeCell(row.cells, shape)) + (days?.dayMs(row.line) ?? 0);
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
