import type { ProblemNote } from '../../model/problem.js';
import { alike } from '../../report/text/alike.js';
import { filesInOrder } from '../../report/text/file-order.js';
import { counted } from '../../report/text/numbers.js';
import { clockOf } from '../../report/text/clock.js';
import type { Preview, PreviewFile, PreviewZone } from './preview-facts.js';
import { tableLines } from '../terminal/table.js';
import { safeText, textWidth, wrapText } from '../terminal/text-width.js';

/** The preview as plain lines, none wider than the terminal. */
export function previewText(preview: Preview, width = 80): string {
  const logs = preview.files.filter((file) => file.kind !== 'other');
  const others = preview.files.filter((file) => file.kind === 'other');
  const lines = [
    ...logFileLines(filesInOrder(logs)),
    ...section(
      'Not read as logs',
      others.map((file) => notReadText(file, preview)),
    ),
    ...windowLines(preview),
    ...zoneLines(preview.zones, width),
    ...section('What is missing', preview.missing),
    ...section(
      'Taken for granted',
      preview.assumptions.filter((text) => !isToldAsProblem(text, preview)),
    ),
    ...section('Problems', problemTexts(preview)),
  ];
  return lines.flatMap((line) => wrapped(line, width)).join('\n');
}

/** "22 files, 16 zones, 1234 rows read, 3 left out, 2 problems", with a line end. */
export function previewLine({ files, zones, problems }: Preview): string {
  const logs = files.filter((file) => file.kind !== 'other');
  const sum = (of: (file: PreviewFile) => number | null): number =>
    logs.reduce((total, file) => total + (of(file) ?? 0), 0);
  const parts = [
    counted(logs.length, 'file'),
    counted(zones.length, 'zone'),
    `${counted(
      sum(({ rowsRead }) => rowsRead),
      'row',
    )} read`,
    `${sum(({ rowsRejected }) => rowsRejected)} left out`,
    counted(problems.length, 'problem'),
  ];
  return `${parts.join(', ').replaceAll('\u00A0', ' ')}\n`;
}

/** Why a file was not read, and what to do where it should have been. */
function notReadText({ file, why }: PreviewFile, { problems }: Preview): string {
  const problem = problems.find((it) => it.file === file);
  const what = problem?.what.replace(/^Not read as a log: /, '');
  return problem ? `${file}: ${what} ${problem.todo}` : `${file}: ${why}.`;
}

/** What is not certain of a file stands among the problems, with what to do. */
function isToldAsProblem(assumption: string, { problems }: Preview): boolean {
  return problems.some(
    ({ code, file }) =>
      (code === 'ambiguous-unit' || code === 'unknown-layout') && file && assumption.startsWith(`${file}: `),
  );
}

/** Rows that are shown below their file, and files that are told as not read, are not told again. */
function isToldWithFile({ code, file, line, todo }: ProblemNote, { files }: Preview): boolean {
  const about = files.find((it) => it.file === file);
  if (!about) return false;
  if (about.kind === 'other') return true;
  const isRow = code === 'bad-row' || code === 'half-line';
  return isRow && !todo.includes('plant.yaml') && about.examples.some((example) => example.line === line);
}

function problemTexts(preview: Preview): string[] {
  const problems = preview.problems.filter((problem) => !isToldWithFile(problem, preview));
  const texts = problems.map(({ file, line, what, todo }) => ({
    name: file ? `${file}${line === undefined ? '' : `:${line}`}` : '',
    says: `${what} ${todo}`,
  }));
  return alike(texts, ({ says }) => says).map((group) => {
    const names = namesText(group.map(({ name }) => name));
    return `${names}${names === '' ? '' : ': '}${group[0].says}`;
  });
}

/** "day-1.csv and 12 more like it". */
function namesText(names: readonly string[]): string {
  if (names[0] === '') return '';
  return names.length === 1 ? names[0]! : `${names[0]} and ${names.length - 1} more like it`;
}

/** Files that were taken for the same in every respect are told once. */
function logFileLines(logs: readonly PreviewFile[]): string[] {
  const told = logs.map((file) => ({ name: file.file, lines: fileLines(file) }));
  return alike(told, ({ lines }) => lines.join('\n')).flatMap((group) => [
    namesText(group.map(({ name }) => name)),
    ...group[0].lines,
  ]);
}

const kindWords: Readonly<Record<PreviewFile['kind'], string>> = {
  ...{ temperature: 'temperature log', alarm: 'alarm log', maintenance: 'maintenance list', stops: 'stop list' },
  ...{ plant: 'plant file', other: 'no log' },
};

function fileLines(file: PreviewFile): string[] {
  const lines = [
    `  taken for   ${kindWords[file.kind]} (${file.why})`,
    `  layout      ${[file.layout, ...storageWords(file)].join(', ')}`,
  ];
  if (file.time) lines.push(`  time        ${file.time}`);
  for (const note of file.notes) lines.push(noteLine(note));
  if (file.samplingSeconds !== null) lines.push(`  step        ${file.samplingSeconds} s`);
  if (file.rowsRead !== null)
    lines.push(`  rows        ${file.rowsRead} read, ${file.rowsRejected} left out${reasons(file)}`);
  for (const { line, reason, text } of file.examples)
    lines.push(`              line ${line}: ${reason}${text === '' ? '' : `: "${text}"`}`);
  return [...lines, ...leftAloneLines(file), ''];
}

function noteLine(note: string): string {
  const said = /^(unit|columns): (.*)$/s.exec(note);
  return said ? `  ${said[1]!.padEnd(12)}${said[2]!}` : `  note        ${note}`;
}

/** How it is stored, as far as the layout does not say it: workbooks and Parquet have no encoding of their own. */
function storageWords({ encoding, container }: PreviewFile): string[] {
  if (container === 'workbook' || container === 'parquet') return [];
  return container === 'text' ? [encoding] : [encoding, `packed as ${container}`];
}

function reasons({ rejectedByReason }: PreviewFile): string {
  const parts = Object.entries(rejectedByReason).map(([reason, count]) => `${reason.replaceAll('-', ' ')} ${count}`);
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
}

const mostLeftAlone = 8;

function leftAloneLines({ leftAlone }: PreviewFile): string[] {
  const shown = leftAlone.slice(0, mostLeftAlone).map(({ column, why }) => `  left alone  "${column}": ${why}`);
  const more = leftAlone.length - shown.length;
  return more > 0 ? [...shown, `              and ${more} more columns (--json shows all)`] : shown;
}

function windowLines({ zones, timezone }: Preview): string[] {
  const starts = zones.flatMap(({ start }) => start ?? []).sort();
  const ends = zones.flatMap(({ end }) => end ?? []).sort();
  if (starts.length === 0) return [];
  const clock = clockOf(timezone ?? undefined);
  const [from, to] = [starts[0]!, ends.at(-1)!].map((time) => clock.dateTime(time));
  return [`${from} to ${to} ${clock.dateWithYear(ends.at(-1)!).slice(-4)}, ${clock.timezone}`];
}

/** A line of numbers for each zone, and below it the columns that were taken for it. */
function zoneLines(zones: readonly PreviewZone[], width: number): string[] {
  if (zones.length === 0)
    return [
      'No zones were found. Give the temperature logs, or the folder with them, as the controllers export them.',
      '',
    ];
  const isMachineInName = zones.every(({ zone, machine }) => zone.startsWith(machine));
  const left = ['Zone', ...(isMachineInName ? [] : ['Machine']), 'Unit'].map((head) => ({ head, least: 4 }));
  const right = ['Samples', 'Not good', 'Gaps', 'Longest', 'From °C', 'To °C'].map((head) => ({
    ...{ head, least: head.length },
    align: 'right' as const,
  }));
  const [head, ...rows] = tableLines(
    [...left, ...right],
    zones.map((zone) => zoneCells(zone, isMachineInName)),
    width,
  );
  return [head!, ...rows.flatMap((row, i) => [row, columnsText(zones[i]!)]), ''];
}

function zoneCells(zone: PreviewZone, isMachineInName: boolean): string[] {
  const names = [zone.zone, ...(isMachineInName ? [] : [zone.machine]), zone.unit ?? '?'];
  const counts = [zone.samples, zone.notGood, zone.gaps].map(String);
  const degrees = [zone.lowestDegC, zone.highestDegC].map((degC) => (degC === null ? '-' : degC.toFixed(1)));
  return [...names, ...counts, `${zone.longestGapMinutes} min`, ...degrees].map(safeText);
}

function columnsText({ tags, flags, flagAlarms }: PreviewZone): string {
  const parts = Object.entries(tags).map(([role, name]) => `${role === 'setpoint' ? 'set point' : role} "${name}"`);
  return `    ${[...parts, ...flagTexts(flags, flagAlarms)].join(', ')}`;
}

function flagTexts(flags: readonly string[], alarmCount: number): string[] {
  if (flags.length === 0) return [];
  const names = flags.map((name) => `"${name}"`).join(', ');
  return [
    `alarm flag${flags.length === 1 ? '' : 's'} ${names}: ${alarmCount} ${alarmCount === 1 ? 'alarm' : 'alarms'}`,
  ];
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [`${title}:`, ...lines.map((line) => `  - ${line}`), ''];
}

/** Where the words of `  taken for   …` begin. */
const hangingColumns = 14;

/** Broken to the width; what follows stands below the words, not below the label. Names may hold anything. */
function wrapped(given: string, width: number): readonly string[] {
  const line = safeText(given);
  if (textWidth(line) <= width) return [line];
  const label = /^(?: {2}[a-z ]{12}| {2}- | {4,})/.exec(line)?.[0] ?? '';
  const indent = ' '.repeat(Math.min(label.length, hangingColumns));
  return wrapText(line.slice(label.length), width - label.length).map(
    (part, i) => `${i === 0 ? label : indent}${part}`,
  );
}
