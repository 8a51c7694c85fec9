import type { Preview, PreviewFile, PreviewZone } from './preview-facts.js';

/** The preview as plain lines for a terminal. */
export function previewText(preview: Preview): string {
  const logs = preview.files.filter((file) => file.kind !== 'other');
  const others = preview.files.filter((file) => file.kind === 'other');
  return [
    ...logs.flatMap(fileLines),
    ...(others.length > 0
      ? ['Not read as logs:', ...others.map((file) => `  ${clean(file.file)}: ${file.why}`), '']
      : []),
    ...zoneLines(preview.zones),
    ...section('What is missing', preview.missing),
    ...section('Taken for granted', preview.assumptions),
    ...section(
      'Problems',
      preview.problems.map(
        (it) =>
          `${it.file ? `${clean(it.file)}${it.line === undefined ? '' : `:${it.line}`}: ` : ''}${clean(it.what)} ${it.todo}`,
      ),
    ),
  ].join('\n');
}

/** Names in a log may hold anything; a terminal must not obey it. */
function clean(text: string): string {
  return text.replace(/[\u0000-\u001f\u007f-\u009f]/g, '�');
}

function fileLines(file: PreviewFile): string[] {
  const lines = [
    clean(file.file),
    `  taken for   ${file.kind} log (${file.why})`,
    `  layout      ${file.layout}, ${file.encoding}${file.container === 'text' ? '' : `, ${file.container}`}`,
  ];
  if (file.time) lines.push(`  time        ${file.time}`);
  for (const note of file.notes)
    lines.push(`  ${note.startsWith('unit: ') ? `unit        ${note.slice(6)}` : `note        ${note}`}`);
  if (file.samplingSeconds !== null) lines.push(`  step        ${file.samplingSeconds} s`);
  if (file.rowsRead !== null)
    lines.push(`  rows        ${file.rowsRead} read, ${file.rowsRejected} left out${reasons(file)}`);
  for (const { line, reason, text } of file.examples)
    lines.push(`              line ${line}: ${reason}${text === '' ? '' : `: "${clean(text)}"`}`);
  lines.push(...leftAloneLines(file), '');
  return lines;
}

function reasons({ rejectedByReason }: PreviewFile): string {
  const parts = Object.entries(rejectedByReason).map(([reason, count]) => `${reason} ${count}`);
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
}

const mostLeftAlone = 8;

function leftAloneLines({ leftAlone }: PreviewFile): string[] {
  const shown = leftAlone.slice(0, mostLeftAlone).map(({ column, why }) => `  left alone  "${clean(column)}": ${why}`);
  const more = leftAlone.length - shown.length;
  return more > 0 ? [...shown, `              and ${more} more columns (--json shows all)`] : shown;
}

function zoneLines(zones: readonly PreviewZone[]): string[] {
  if (zones.length === 0) return ['No zones were found.', ''];
  const head = ['Zone', 'Machine', 'Unit', 'Samples', 'Not good', 'Gaps', 'Longest', 'From °C', 'To °C', 'Columns'];
  const rows = zones.map((zone) => [
    ...[
      clean(zone.zone),
      clean(zone.machine),
      zone.unit ?? '?',
      String(zone.samples),
      String(zone.notGood),
      String(zone.gaps),
    ],
    ...[`${zone.longestGapMinutes} min`, degrees(zone.lowestDegC), degrees(zone.highestDegC)],
    Object.entries(zone.tags)
      .map(([role, name]) => `${role} "${clean(name)}"`)
      .join(', '),
  ]);
  const widths = head.map((title, i) => Math.max(title.length, ...rows.map((row) => row[i]!.length)));
  const line = (cells: readonly string[]): string =>
    cells.map((cell, i) => (i === cells.length - 1 ? cell : cell.padEnd(widths[i]!))).join('  ');
  const [first] = zones;
  const window = first?.start ? [`Window ${first.start} to ${first.end} (first zone)`] : [];
  return [...window, line(head), ...rows.map(line), ''];
}

function degrees(degC: number | null): string {
  return degC === null ? '-' : degC.toFixed(1);
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [`${title}:`, ...lines.map((line) => `  - ${line}`), ''];
}
