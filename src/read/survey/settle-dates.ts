import type { TimeFormat } from '../../model/log-file.js';
import type { DraftFile, OpenedDrafts } from './draft-file.js';

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
  const settled: OpenedDrafts[] = [];
  for (const [i, { drafts, problems }] of opened.entries()) {
    const undecided = drafts.filter(({ file }) => file.time.isUndecided);
    const dates = [...new Set(undecided.map(({ file }) => orders.get(keyOf(file))))];
    const isSettled = dates.length === 1 && dates[0] !== undefined;
    settled.push(isSettled ? saidByOthers(await reopen(paths[i]!, dates[0]!), undecided) : { drafts, problems });
  }
  return settled;
}

function isDecided({ kind, order, isUndecided }: TimeFormat): boolean {
  return kind === 'date' && order !== 'ymd' && !isUndecided;
}

function keyOf({ kind, header, dialect }: DraftFile['file']): string {
  return JSON.stringify([kind, dialect.separator, header]);
}

function saidByOthers({ drafts, problems }: OpenedDrafts, undecided: readonly DraftFile[]): OpenedDrafts {
  const names = new Set(undecided.map(({ name }) => name));
  const reworded = drafts.map((draft) => {
    if (!names.has(draft.name)) return draft;
    const order = draft.file.time.order === 'dmy' ? 'day first' : 'month first';
    const time = { ...draft.file.time, why: `${order}: other files with the same header show it` };
    return { ...draft, file: { ...draft.file, time }, shape: draft.shape && { ...draft.shape, time } };
  });
  return { drafts: reworded, problems };
}
