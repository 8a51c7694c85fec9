import type { DraftFile } from './drafted-file.js';

/** Files that share so many of their readings come from one logger (own choice). */
const SHARED_READINGS = 0.5;

/**
 * Files of one logger log changes, or none of them does: on a day of rest only the sign of life is written, and such a
 * file alone looks like one of slow samples.
 *
 * @param logs Temperature logs. @returns The same, where another file of the logger proves changes with what it shows.
 */
export function settleChanges(logs: readonly DraftFile[]): DraftFile[] {
  const proven = logs.filter(({ isChangeLogged, file }) => isChangeLogged && file.layout === 'long');
  return logs.map((log) => {
    if (log.isChangeLogged || log.file.layout !== 'long') return log;
    const same = proven.filter((other) => areOfOneLogger(log, other));
    return same.length > 0 ? asChanges(log, same) : log;
  });
}

function areOfOneLogger(a: DraftFile, b: DraftFile): boolean {
  if (a.file.header.join('\n') !== b.file.header.join('\n')) return false;
  const [own, others] = [readingNames(a), readingNames(b)];
  const shared = [...own].filter((name) => others.has(name)).length;
  return shared > 0 && shared >= SHARED_READINGS * Math.min(own.size, others.size);
}

function readingNames({ roled }: DraftFile): Set<string> {
  return new Set(roled.filter(({ role }) => role === 'reading').map(({ series }) => series.name));
}

function asChanges(log: DraftFile, proven: readonly DraftFile[]): DraftFile {
  const timing = {
    isChangeLogged: true,
    samplingMs: Math.min(...proven.map(({ samplingMs }) => samplingMs)),
    holdMs: Math.max(...proven.map(({ file }) => file.holdMs)),
    silenceMs: Math.max(...proven.map(({ file }) => file.silenceMs)),
  };
  const layoutText = log.file.layoutText.replace('long', 'long, changes only');
  return { ...log, ...timing, file: { ...log.file, ...timing, layoutText } };
}
