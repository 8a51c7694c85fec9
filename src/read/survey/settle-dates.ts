import type { TimeFormat } from '../../model/log-file.js';
import type { OpenedDrafts } from './draft-file.js';
import type { DraftFile } from './drafted-file.js';

type Dates = 'day-first' | 'month-first';

/**
 * Files in which nothing tells day from month follow those with the same header in which something does: the first days of
 * a month are read as the rest of it.
 *
 * @param reopen Looks into a path again with an order of dates given.
 * @returns What was opened, with such files in the place of those that were looked at first.
 */
export async function settleDates(
  paths: readonly string[],
  opened: readonly OpenedDrafts[],
  reopen: (path: string, dates: Dates) => Promise<OpenedDrafts>,
): Promise<OpenedDrafts[]> {
  const orders = new Map<string, Dates>();
  for (const { file } of opened.flatMap(({ drafts }) => drafts))
    if (isDecided(file.time)) orders.set(keyOf(file), file.time.order === 'dmy' ? 'day-first' : 'month-first');
  const byNearness = new Map([...ordersByNearness(opened)].filter(([key]) => !orders.has(key)));
  for (const [key, dates] of byNearness) orders.set(key, dates);
  const settled: OpenedDrafts[] = [];
  for (const [i, { drafts, problems }] of opened.entries()) {
    const undecided = drafts.filter(({ file }) => file.time.isUndecided);
    const dates = [...new Set(undecided.map(({ file }) => orders.get(keyOf(file))))];
    const isSettled = dates.length === 1 && dates[0] !== undefined;
    settled.push(
      isSettled ? saidByOthers(await reopen(paths[i]!, dates[0]!), undecided, byNearness) : { drafts, problems },
    );
  }
  return settled;
}

/** So many times nearer to each other the files of one logger must lie in one order than in the other (own choice). */
const timesNearer = 3;

/**
 * Files of the same header that follow each other in one order of dates, and lie months apart in the other: 03/02, 03/03
 * and 03/04 are three days of March.
 */
function ordersByNearness(opened: readonly OpenedDrafts[]): Map<string, Dates> {
  const groups = new Map<string, DraftFile['file'][]>();
  for (const { file } of opened.flatMap(({ drafts }) => drafts))
    if (file.time.isUndecided && file.time.kind === 'date') {
      groups.set(keyOf(file), [...(groups.get(keyOf(file)) ?? []), file]);
    }
  const found = new Map<string, Dates>();
  for (const [key, files] of groups) {
    const asRead = reachOf(files.map(({ firstMs }) => firstMs));
    const swapped = reachOf(files.map(({ firstMs }) => withMonthAsDay(firstMs)));
    const isDayFirst = files[0]!.time.order === 'dmy';
    if (asRead * timesNearer < swapped) found.set(key, isDayFirst ? 'day-first' : 'month-first');
    else if (swapped * timesNearer < asRead) found.set(key, isDayFirst ? 'month-first' : 'day-first');
  }
  return found;
}

/** From the first day to the last, in ms; days only, since a clock has none of it. NaN where one is not known. */
function reachOf(timesMs: readonly number[]): number {
  return Math.max(...timesMs) - Math.min(...timesMs);
}

/** A nothing-telling date has a day that may be a month. */
function withMonthAsDay(ms: number): number {
  const date = new Date(ms);
  return Date.UTC(date.getUTCFullYear(), date.getUTCDate() - 1, date.getUTCMonth() + 1) + (ms % 86_400_000);
}

function isDecided({ kind, order, isUndecided }: TimeFormat): boolean {
  return kind === 'date' && order !== 'ymd' && !isUndecided;
}

function keyOf({ kind, header, dialect }: DraftFile['file']): string {
  return JSON.stringify([kind, dialect.separator, header]);
}

function saidByOthers(
  { drafts, problems }: OpenedDrafts,
  undecided: readonly DraftFile[],
  byNearness: ReadonlyMap<string, Dates>,
): OpenedDrafts {
  const names = new Set(undecided.map(({ name }) => name));
  const reworded = drafts.map((draft) => {
    if (!names.has(draft.name)) return draft;
    const order = draft.file.time.order === 'dmy' ? 'day first' : 'month first';
    const how = byNearness.has(keyOf(draft.file))
      ? 'so the files with the same header follow each other'
      : 'other files with the same header show it';
    const time = { ...draft.file.time, why: `${order}: ${how}` };
    return { ...draft, file: { ...draft.file, time }, shape: draft.shape && { ...draft.shape, time } };
  });
  return { drafts: reworded, problems };
}
