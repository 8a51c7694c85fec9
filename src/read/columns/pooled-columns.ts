import type { Attached } from './draft-zone.js';

/** Values kept of a column over all its files; enough for quantiles, and hundreds of files stay small (own choice). */
const mostValues = 6000;

export function isSameColumn(a: Attached, b: Attached): boolean {
  return a.role === b.role && a.series.name === b.series.name;
}

/**
 * The columns of each file with the values of all files of the same logger in them. Files are of one logger when they hold
 * the same readings; what one of them shows of units and scales holds for all.
 *
 * @param attached By file.
 * @returns By file, one array shared by all files of a logger. A file that stands alone gets its own columns back.
 */
export function pooledColumns(attached: readonly (readonly Attached[])[]): readonly (readonly Attached[])[] {
  const groups = new Map<string, (readonly Attached[])[]>();
  for (const columns of attached) {
    const group = groups.get(keyOf(columns));
    if (group) group.push(columns);
    else groups.set(keyOf(columns), [columns]);
  }
  const pooled = new Map([...groups].map(([key, group]) => [key, group.length === 1 ? group[0]! : pool(group)]));
  return attached.map((columns) => pooled.get(keyOf(columns))!);
}

function keyOf(columns: readonly Attached[]): string {
  const readings = columns.filter(({ role }) => role === 'reading');
  return JSON.stringify(readings.map(({ series, zones }) => [series.name, series.unitText, ...zones]));
}

function pool(group: readonly (readonly Attached[])[]): Attached[] {
  const every = Math.ceil(group.reduce((sum, columns) => sum + (columns[0]?.series.value.length ?? 0), 0) / mostValues);
  const found = new Map<string, Attached>();
  for (const columns of group)
    for (const column of columns) {
      const key = `${column.role} ${column.series.name}`;
      const value = column.series.value.filter((_, i) => i % every === 0);
      const known = found.get(key);
      if (!known) found.set(key, { ...column, series: { ...column.series, value } });
      else {
        known.series.value.push(...value);
        known.series.decimals = Math.max(known.series.decimals, column.series.decimals);
      }
    }
  return [...found.values()];
}
