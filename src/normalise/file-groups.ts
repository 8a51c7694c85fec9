import type { LogFile } from '../model/log-file.js';

/**
 * Puts files together that must be read side by side: those over the same time that hold different columns of one zone
 * (one file per tag, or the running state in a file of its own). All others are read one after the other.
 *
 * @param files In the order in which they are to be read.
 */
export function groupFiles(files: readonly LogFile[]): LogFile[][] {
  const groups: FileOfZones[][] = [];
  for (const file of files.map((it) => ({ log: it, roles: rolesByZone(it) }))) {
    const joined = groups.filter((group) => group.some((other) => belongTogether(file, other)));
    const merged = [...joined.flat(), file];
    for (const group of joined) groups.splice(groups.indexOf(group), 1);
    groups.push(merged);
  }
  return groups.map((group) => group.map(({ log }) => log));
}

interface FileOfZones {
  readonly log: LogFile;
  readonly roles: ReadonlyMap<number, ReadonlySet<string>>;
}

function belongTogether(a: FileOfZones, b: FileOfZones): boolean {
  if (a.log.lastMs < b.log.firstMs || b.log.lastMs < a.log.firstMs) return false;
  for (const [zone, roles] of a.roles) {
    const others = b.roles.get(zone);
    if (others && (isMore(roles, others) || isMore(others, roles))) return true;
  }
  return false;
}

function isMore(roles: ReadonlySet<string>, others: ReadonlySet<string>): boolean {
  return [...roles].some((role) => !others.has(role));
}

function rolesByZone(file: LogFile): Map<number, Set<string>> {
  const roles = new Map<number, Set<string>>();
  for (const column of [...file.columns, ...file.tags])
    for (const zone of column.zones) roles.set(zone, (roles.get(zone) ?? new Set()).add(column.role));
  return roles;
}
