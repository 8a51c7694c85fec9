import type { LogFile, TimeRange } from '../../model/log-file.js';

const dayMs = 86_400_000;

/**
 * A row this far from the rest is far: a year typed wrong is 365 days off, less what its neighbours lie apart, while
 * machines do stand still for months (own choice).
 */
export const farMs = 300 * dayMs;

/**
 * Where clocks begin to count when nobody has set them: POSIX time counts from 1970, the dates of the FAT file system
 * (ECMA-107) from 1980; controllers that begin with 1990 or 2000 are common practice.
 */
const clockStartsMs = [1970, 1980, 1990, 2000].map((year) => Date.UTC(year, 0, 1));
/** A clock west of Greenwich begins on the day before. */
const beforeStartMs = dayMs;
/** A clock that nobody sets runs on for so long at most, before power or somebody ends it (own choice). */
const longestUnsetMs = 366 * dayMs;

/** True for what a clock shows that was never set. Only where other times lie years later does this mean anything. */
export function isUnsetClock(ms: number): boolean {
  return clockStartsMs.some((startMs) => ms >= startMs - beforeStartMs && ms <= startMs + longestUnsetMs);
}

/** True when a time is in a range or not far from it. */
export function isNearRange(ms: number, { fromMs, toMs }: TimeRange): boolean {
  return ms >= fromMs - farMs && ms <= toMs + farMs;
}

/**
 * The spans of time in which a file is at home, from a sample of its rows: the span that holds most rows, and every
 * span that holds most of one sampled stretch, so that parts years apart all count and stray rows do not. A span from
 * which the file comes back to where it was is a clock that was upset, and no home.
 *
 * @param clock Times of the sampled rows, NaN where there is none.
 * @param stretch Number of the sampled stretch of each row.
 * @returns By time, each further than {@link farMs} from the next; empty when there is no time at all.
 */
export function homeTimes(clock: readonly number[], stretch: readonly number[]): TimeRange[] {
  const spans = spansOf(clock);
  const rowsIn = spans.map(() => new Map<number, number>());
  const rowsOf = new Map<number, number>();
  clock.forEach((ms, i) => {
    const at = spans.findIndex(({ fromMs, toMs }) => ms >= fromMs && ms <= toMs);
    if (at >= 0)
      for (const counts of [rowsIn[at]!, rowsOf]) counts.set(stretch[i]!, (counts.get(stretch[i]!) ?? 0) + 1);
  });
  const sizes = rowsIn.map((counts) => [...counts.values()].reduce((sum, count) => sum + count, 0));
  const largest = sizes.indexOf(Math.max(...sizes));
  const spanOf = [...rowsOf.keys()].map((number) =>
    rowsIn.findIndex((counts) => (counts.get(number) ?? 0) > rowsOf.get(number)! / 2),
  );
  return spans.filter((_, at) => at === largest || (spanOf.includes(at) && !isLeftAgain(spanOf, at)));
}

/** @param spanOf Span of each sampled stretch, in file order; −1 where none holds most of it. */
function isLeftAgain(spanOf: readonly number[], at: number): boolean {
  const before = spanOf[spanOf.indexOf(at) - 1];
  return before !== undefined && before >= 0 && before === spanOf[spanOf.lastIndexOf(at) + 1];
}

function spansOf(clock: readonly number[]): TimeRange[] {
  const spans: { fromMs: number; toMs: number }[] = [];
  for (const ms of clock.filter((it) => !Number.isNaN(it)).sort((a, b) => a - b)) {
    const last = spans.at(-1);
    if (last && ms <= last.toMs + farMs) last.toMs = ms;
    else spans.push({ fromMs: ms, toMs: ms });
  }
  return spans;
}

/**
 * Takes spans of a clock that was not set out of the homes of all files, where any file has times far behind them. A log
 * that has no other times keeps them: it is all there is.
 */
export function withoutUnsetClocks(files: readonly LogFile[]): LogFile[] {
  const all = files.filter(({ time }) => time.kind !== 'elapsed').flatMap(({ homeMs }) => homeMs);
  const isUnset = ({ fromMs, toMs }: TimeRange): boolean =>
    isUnsetClock(fromMs) && isUnsetClock(toMs) && all.some((other) => other.fromMs > toMs + farMs);
  return files.map((file) =>
    file.time.kind === 'elapsed' ? file : { ...file, homeMs: file.homeMs.filter((range) => !isUnset(range)) },
  );
}
