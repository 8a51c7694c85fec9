import type { DowntimeRow } from '../../model/downtime-findings.js';
import { lossWords, type LossKind } from '../text/words.js';

/** What kind of lost time a row is; undefined for planned time, which is not lost. */
export function lossKindOf({ bucket, isRestart }: DowntimeRow): LossKind | undefined {
  if (isRestart) return 'restart';
  return bucket === 'planned' ? undefined : bucket;
}

/** Rows with the names a reader sees: the machine is added where two rows would have one name. */
export function lossNames(
  rows: readonly DowntimeRow[],
): readonly { readonly name: string; readonly row: DowntimeRow }[] {
  const counts = new Map<string, number>();
  for (const row of rows) counts.set(row.name, (counts.get(row.name) ?? 0) + 1);
  return rows.map((row) => {
    const name = row.bucket === 'unknown' ? lossWords.unknown : row.name;
    const isShared = (counts.get(row.name) ?? 0) > 1 && row.machine !== null;
    return { name: isShared ? `${row.machine}: ${name}` : name, row };
  });
}
