import type { Cause } from '../../model/cause.js';
import type { TrackRecord } from '../../model/history-findings.js';
import type { PlacedEntry, RecordEntry } from '../../model/record.js';
import { clockOf } from '../../report/text/clock.js';
import { zoneOnMachine } from '../../report/text/names.js';
import { causeWords } from '../../report/text/words.js';
import { tableLines } from '../terminal/table.js';
import { safeText, wrapText } from '../terminal/text-width.js';

/** An entry with what the list says of it. */
export interface ListedEntry extends PlacedEntry {
  /** What the last report before it said; null = it did not call the zone faulty. */
  readonly said: Cause | null;
  /** False for what another line has told already. */
  readonly isCounted: boolean;
}

/** "Front jaw on Tray sealer 1". */
export function entryZone({ zone, machine }: RecordEntry): string {
  return safeText(machine === null ? zone : zoneOnMachine({ zone, machine }));
}

/** "Of 3 verdicts checked so far 2 were right." */
export function recordText({ confirmed, right }: TrackRecord): string {
  if (confirmed === 0) return 'No verdict could be checked with it yet.';
  const verdicts = confirmed === 1 ? 'the one verdict' : `${confirmed} verdicts`;
  return `Of ${verdicts} checked so far ${right} ${right === 1 ? 'was' : 'were'} right.`;
}

/** All that was noted, by line of the file, and how to correct it. */
export function recordList(
  entries: readonly ListedEntry[],
  { track, file, timezone, width }: { track: TrackRecord; file: string; timezone: string; width: number },
): string {
  if (entries.length === 0) return `Nothing has been noted in ${safeText(file)} yet.\n`;
  const clock = clockOf(timezone);
  const rows = entries.map((entry) => [
    String(entry.place?.line ?? ''),
    clock.dateWithYear(entry.time),
    entryZone(entry),
    causeWords[entry.found],
    entry.said === null ? '–' : causeWords[entry.said],
    `${entry.isCounted ? '' : '(counted already) '}${safeText(entry.note)}`.trim(),
  ]);
  const columns = [
    { head: 'Line', align: 'right', least: 4 } as const,
    { head: 'When', least: 11 },
    { head: 'Zone' },
    { head: 'Found' },
    { head: 'Report said' },
    { head: 'Note' },
  ];
  const correct = `To correct an entry, change or delete its line in ${safeText(file)}.`;
  return [...tableLines(columns, rows, width), '', ...wrapText(`${recordText(track)} ${correct}`, width), ''].join(
    '\n',
  );
}
