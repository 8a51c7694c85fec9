/** Words that stand before a machine's number (common practice, several languages). */
const machineWord =
  '(?:m|l|mc|mach|machine|maschine|masch|line|linie|ligne|linea|linje|press|presse|extruder|sealer|packer|former|unit|cell)';
const prefixPattern = new RegExp(`^(${machineWord}[ _-]?\\d+)[\\s_.:/-]+(?=\\S)`, 'i');
const insidePattern = new RegExp(`(?:^|[^a-z0-9])(${machineWord}[ _-]?\\d+)(?![a-z0-9])`, 'i');

/** "M1" for "M1 Barrel feed"; null where the name does not begin with a machine. */
export function machinePrefix(name: string): string | null {
  return prefixPattern.exec(name)?.[1] ?? null;
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
