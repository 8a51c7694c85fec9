import type { Findings, ZoneFinding } from '../model/findings.js';
import { causes } from '../model/cause.js';
import { safeCsvCell } from './safe-csv.js';

type Cell = string | number | null;

const columns: readonly (readonly [string, (zone: ZoneFinding) => Cell])[] = [
  ['rank', (zone) => zone.rank],
  ['zone', (zone) => zone.zone],
  ['machine', (zone) => zone.machine],
  ['status', (zone) => zone.status],
  ...causes.map(
    (cause) => [`probability_${cause}`, (zone: ZoneFinding) => percent(zone.probabilities[cause])] as const,
  ),
  ['onset', (zone) => zone.onset],
  ['fixed', (zone) => zone.fixed],
  ['offset_degC', (zone) => zone.offsetDegC],
  ['downtime_minutes', (zone) => Math.round(zone.downtimeMinutes)],
  ['next_check', (zone) => zone.nextCheck],
];

/** One line per zone for a work-order system; cells that a spreadsheet would run as a formula are defused. */
export function findingsCsv(findings: Findings): string {
  const rows = [columns.map(([name]) => name), ...findings.zones.map((zone) => columns.map(([, cell]) => cell(zone)))];
  return rows.map((row) => `${row.map(safeCsvCell).join(',')}\r\n`).join('');
}

function percent(share: number): number {
  return Math.round(share * 1000) / 10;
}
