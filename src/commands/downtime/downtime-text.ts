import type { DowntimeBucket, DowntimeFindings, DowntimeRow } from '../../model/downtime-findings.js';
import { safeCsvCell } from '../../report/safe-csv.js';
import { tableLines } from '../terminal/table.js';

export const downtimeGroups = ['cause', 'zone', 'machine', 'week'] as const;
export type DowntimeGroup = (typeof downtimeGroups)[number];

const bucketWords: Readonly<Record<DowntimeBucket, string>> = {
  'zone-fault': 'zone fault',
  'other-cause': 'other cause',
  unknown: 'not known',
  planned: 'planned',
};

function rowsFor({ pareto, byZone, byMachine, byWeek }: DowntimeFindings, by: DowntimeGroup): readonly DowntimeRow[] {
  return { cause: pareto, zone: byZone, machine: byMachine, week: byWeek }[by];
}

/** The table for a screen of that many columns, with totals and how the stops were told. */
export function downtimeText(findings: DowntimeFindings, by: DowntimeGroup, width: number): string {
  const hasCost = findings.cost !== null;
  const columns = [
    { head: by === 'week' ? 'Week' : by === 'machine' ? 'Machine' : by === 'zone' ? 'Zone' : 'Cause', least: 8 },
    ...(by === 'cause' || by === 'zone' ? [{ head: 'Machine', least: 4 }] : []),
    { head: 'Kind', least: 8 },
    { head: 'Hours', align: 'right' as const },
    { head: 'Stops', align: 'right' as const, least: 5 },
    { head: 'Longest min', align: 'right' as const },
    ...(hasCost ? [{ head: findings.currency ?? 'Cost', align: 'right' as const }] : []),
  ];
  const rows = rowsFor(findings, by).map((row) => [
    by === 'cause' || by === 'zone' ? besideMachine(row) : row.name,
    ...(by === 'cause' || by === 'zone' ? [row.machine ?? ''] : []),
    bucketWords[row.bucket],
    hours(row.minutes),
    String(row.stops),
    row.longestMinutes.toFixed(0),
    ...(hasCost ? [row.cost === null ? '' : row.cost.toFixed(0)] : []),
  ]);
  const table = rows.length === 0 ? ['No stopped time was found.'] : tableLines(columns, rows, width);
  return [
    ...table,
    '',
    ...totals(findings),
    ...mtbfLines(findings),
    ...findings.notes.flatMap((note) => wrap(note, width)),
  ]
    .map((line) => `${line}\n`)
    .join('');
}

/** The machine has a column of its own, so its name before a zone's only takes the room of the zone's. */
function besideMachine({ name, machine }: DowntimeRow): string {
  return machine !== null && name.startsWith(`${machine} `) ? name.slice(machine.length + 1) : name;
}

/** "Zone faults 4.3 h of 62.4 h stopped without a plan; 67454 EUR for all of it", with a line end. */
export function downtimeLine({
  stoppedMinutes,
  plannedMinutes,
  zoneFaultMinutes,
  cost,
  currency,
}: DowntimeFindings): string {
  const money = cost === null ? '' : `; ${cost.toFixed(0)}${currency ? ` ${currency}` : ''} for all of it`;
  return `Zone faults ${hours(zoneFaultMinutes)} h of ${hours(stoppedMinutes - plannedMinutes)} h stopped without a plan${money}\n`;
}

function totals(findings: DowntimeFindings): string[] {
  const { stoppedMinutes, plannedMinutes, zoneFaultMinutes, otherMinutes, unknownMinutes, cost, currency } = findings;
  const parts: readonly (readonly [string, number])[] = [
    ['Stopped in all', stoppedMinutes],
    ['  planned', plannedMinutes],
    ['  zone faults', zoneFaultMinutes],
    ['  other causes', otherMinutes],
    ['    restarts', findings.restartMinutes ?? 0],
    ['  cause not known', unknownMinutes],
  ];
  const lines = parts.map(([name, minutes]) => `${name.padEnd(18)}${`${hours(minutes)} h`.padStart(10)}`);
  return cost === null
    ? lines
    : [...lines, `${'Cost, unplanned'.padEnd(18)}${cost.toFixed(0).padStart(8)} ${currency ?? ''}`];
}

function mtbfLines({ reliability }: DowntimeFindings): string[] {
  return reliability.flatMap((row) => {
    if (row.failures === 0 || row.mtbfHours === null) return [];
    const limits = `${number(row.mtbfLowHours)}–${number(row.mtbfHighHours)} h`;
    return [
      `${row.name}: a stop every ${number(row.mtbfHours)} h (90 % limits ${limits}), ${number(row.mttrMinutes)} min each`,
    ];
  });
}

/** One line per row; cells that a spreadsheet would run are defused. */
export function downtimeCsv(findings: DowntimeFindings, by: DowntimeGroup): string {
  const head = ['name', 'machine', 'bucket', 'minutes', 'stops', 'longestMinutes', 'cost', 'currency'];
  const rows = rowsFor(findings, by).map((row) =>
    [
      row.name,
      row.machine,
      row.bucket,
      rounded(row.minutes),
      row.stops,
      rounded(row.longestMinutes),
      row.cost === null ? null : rounded(row.cost),
      row.cost === null ? null : findings.currency,
    ]
      .map(safeCsvCell)
      .join(','),
  );
  return [head.join(','), ...rows].map((line) => `${line}\r\n`).join('');
}

function hours(minutes: number): string {
  return (minutes / 60).toFixed(1);
}

function number(value: number | null): string {
  return value === null ? '–' : value.toFixed(1);
}

function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}

function wrap(text: string, width: number): string[] {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const last = lines.at(-1)!;
    if (last !== '' && last.length + 1 + word.length > width) lines.push(word);
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return ['', ...lines];
}
