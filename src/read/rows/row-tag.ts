import type { LogFile } from '../../model/log-file.js';

/** Stands between what several cells of a row name together; no text of a log holds it. */
const joint = '\u001f';

/** Where a row of a long file says what it is about. */
export type TagPlace = Pick<LogFile, 'machineColumn' | 'zoneColumn'> & { readonly tagColumn: number };

/** Where the tag of a file stands in several cells; null where it stands in one. */
export function joinedTagOf({ columns, machineColumn, zoneColumn }: LogFile): TagPlace | null {
  const tagColumn = columns.find(({ role }) => role === 'tag')?.index;
  if (tagColumn === undefined || (machineColumn === undefined && zoneColumn === undefined)) return null;
  return {
    tagColumn,
    ...(machineColumn !== undefined && { machineColumn }),
    ...(zoneColumn !== undefined && { zoneColumn }),
  };
}

/** What a row of a long file is about: its tag, with machine and zone before it where these have columns of their own. */
export function rowTag(
  cells: readonly (string | number)[],
  { tagColumn, machineColumn, zoneColumn }: TagPlace,
): string {
  const text = (column: number | undefined): string => (column === undefined ? '' : String(cells[column] ?? '').trim());
  const tag = text(tagColumn);
  if (tag === '' || (machineColumn === undefined && zoneColumn === undefined)) return tag;
  return [text(machineColumn), text(zoneColumn), tag].join(joint);
}

/** What a row's tag is made of; machine and zone are empty where the row does not name them apart. */
export function partsOfTag(text: string): { readonly machine: string; readonly zone: string; readonly tag: string } {
  const [tag = '', zone = '', machine = ''] = text.split(joint).reverse();
  return { machine, zone, tag };
}
