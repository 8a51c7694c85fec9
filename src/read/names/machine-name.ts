/** Words that stand before a machine's number (common practice, several languages). */
const machineWord =
  '(?:m|l|mc|mach|machine|maschine|masch|line|linie|ligne|linea|linje|press|presse|extruder|sealer|packer|former|unit|cell)';
const prefixPattern = new RegExp(`^(${machineWord}[ _-]?\\d+)[\\s_.:/-]+(?=\\S)`, 'i');
const insidePattern = new RegExp(`(?:^|[^a-z0-9])(${machineWord}[ _-]?\\d+)(?![a-z0-9])`, 'i');

/** "M1" for "M1 Barrel feed"; null where the name does not begin with a machine. */
function machinePrefix(name: string): string | null {
  return prefixPattern.exec(name)?.[1] ?? null;
}

const tagPrefixPattern = /^([\p{L}]{1,5}[_-]?\d{1,3})[\s_.:/-]+(?=\S)/u;
/** Letters that number zones, channels and loops, not machines (common practice). */
const notAMachine = /^(z|zn|zone|t|tc|te|ti|tt|tic|tir|ch|chan|channel|kanal|loop|h|htr|heater|rtd|pt|temp)[_-]?\d/i;

/**
 * Beginnings such as "TS1" in "TS1 Top seal left", where every one of them stands before two names or more.
 *
 * @param names Names of all readings of one file.
 */
export function sharedPrefixes(names: readonly string[]): ReadonlySet<string> {
  const counts = new Map<string, number>();
  for (const name of new Set(names)) {
    const prefix = tagPrefixPattern.exec(name)?.[1];
    if (prefix && !notAMachine.test(prefix)) counts.set(prefix, (counts.get(prefix) ?? 0) + 1);
  }
  return new Set([...counts].filter(([, count]) => count >= 2).map(([prefix]) => prefix));
}

/** "Line 1" for "Plant/Line 1/Zone 1": a part of a path of tags that is a machine. */
function machineOfTagPath(name: string): string | null {
  const parts = name.split(/[\\/]/);
  return (
    parts
      .slice(0, -1)
      .find((part) => machineAlone.test(part.trim()))
      ?.trim() ?? null
  );
}

const machineAlone = new RegExp(`^${machineWord}[ _-]?\\d+$`, 'i');

/** The machine a name begins with: a word for a machine and its number, or a beginning that the file's names share. */
export function machineOfName(name: string, shared: ReadonlySet<string>): string | null {
  const prefix = tagPrefixPattern.exec(name)?.[1];
  return machinePrefix(name) ?? machineOfTagPath(name) ?? (prefix !== undefined && shared.has(prefix) ? prefix : null);
}

/** Machine named in the file's name, else in the nearest folder that names one; null = none. */
export function machineOfPath(path: string): string | null {
  const parts = path.split(/[\\/!]/).reverse();
  for (const part of parts.slice(0, 3)) {
    const found = insidePattern.exec(part.replace(/\.\w{2,5}(\.gz)?$/i, ''));
    if (found) return found[1]!.replace(/_/g, ' ');
  }
  return null;
}

/** "Machine: Tray sealer 1" above a header, in the languages that exports are met in (common practice). */
const machineLine =
  /^\W*(machine|maschine|anlage|line|linie|ligne|l[ií]nea|linha|linje|lijn|linka|linia|equipment|asset|press|presse|machina|macchina|máquina|maquina|maskin|maszyna|stroj)(?: (?:name|no|nr|id))?\.?\s*[:=;,\t][:=;,\s]*([^:=;,\t]*[\p{L}\d][^:=;,\t]*?)[\s:=;,]*$/iu;

/** Machine that a line above the header names; a bare number gets the word before it. Null = none. */
export function machineOfPreamble(lines: readonly string[]): string | null {
  for (const line of lines) {
    const [, word, name] = machineLine.exec(line) ?? [];
    if (name) return /\p{L}/u.test(name) ? name : `${word} ${name}`;
  }
  return null;
}

/** Names of files that say nothing of what is in them. */
const plainStem =
  /^(temps?|temperatures?|temperaturen|readings?|logs?|data|export|trends?|history|histor(y|ian)|values?|report|process|zones?|recording|daten|messwerte|csv|sheet ?\d*|table ?\d*)?$/i;

/** What a file's name says beside dates, counters and words such as "log": "Zone 3" for "Zone_3_2026-09-06.csv". */
export function stemOf(path: string): string {
  const file = path.split(/[\\/!]/).at(-1) ?? '';
  const stem = file
    .replace(/\.(gz|zip)$/i, '')
    .replace(/\.(csv|tsv|txt|dat|log|prn|asc|lst|xlsx|xlsm|parquet)$/i, '')
    .replace(/\d{4}[-_. ]?\d{2}[-_. ]?\d{2}([T_ -]?\d{2}[-_.]?\d{2}([-_.]?\d{2})?)?/g, ' ')
    .replace(/\b\d{2}[-_.]\d{2}[-_.]\d{4}\b/g, ' ')
    .replace(/\b(shift|schicht|day|tag|part|week|kw)[ _-]?\d+\b/gi, ' ')
    .replace(/_/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[\s.-]+|[\s.-]+$/g, '');
  return stem.split(' ').every((word) => plainStem.test(word)) ? '' : stem;
}

/** Name of the folder that a file stands in, inside an archive or around it; empty = none is given. */
export function folderOf(path: string): string {
  const [outer, entry] = path.split('!');
  return entry?.split(/[\\/]/).at(-2) ?? outer!.split(/[\\/]/).at(-2) ?? '';
}
