import { causes } from '../../src/model/cause.js';
import type { ZoneFinding } from '../../src/model/findings.js';
import { median } from '../../src/maths/quantile.js';
import { auroc, brierOfClasses } from './scores.js';
import type { PlantTruth, ZoneTruth } from './truth.js';

export interface ScoredZone {
  readonly plant: PlantTruth;
  readonly truth: ZoneTruth;
  /** null when the findings do not name the zone; it then counts as called healthy. */
  readonly found: ZoneFinding | null;
}

/** One line of a table; NaN where a figure has no cases. Shares are 0 to 1. */
export function scoreRow(rows: readonly ScoredZone[]): Record<string, number> {
  const faulty = rows.filter((row) => row.truth.cause !== 'none');
  const healthy = rows.filter((row) => row.truth.cause === 'none' && row.truth.drawn === 'none');
  const judged = [...faulty, ...healthy];
  const flaggedFaulty = faulty.filter(isFlagged).length;
  const flaggedHealthy = healthy.filter(isFlagged).length;
  const weeks = healthy.reduce((sum, row) => sum + row.plant.meta.days / 7, 0);
  const open = faulty.filter((row) => row.truth.cause === 'sensor' || row.truth.cause === 'wiring');
  const lost = faulty.filter((row) => row.truth.downtimeMin > 5);
  return rounded({
    zones: rows.length,
    faulty: faulty.length,
    auroc: auroc(
      judged.map(faultShare),
      judged.map((row) => row.truth.cause !== 'none'),
    ),
    precision: flaggedFaulty / (flaggedFaulty + flaggedHealthy),
    recall: flaggedFaulty / faulty.length,
    falsePerWeek: flaggedHealthy / weeks,
    rightCause: faulty.filter((row) => topCause(row) === row.truth.cause).length / faulty.length,
    sensorWiringAuc: auroc(
      open.map((row) => share(row, 'sensor') - share(row, 'wiring')),
      open.map((row) => row.truth.cause === 'sensor'),
    ),
    brier: mean(
      judged.map((row) =>
        brierOfClasses(
          causes.map((cause) => share(row, cause)),
          causes.indexOf(row.truth.cause),
        ),
      ),
    ),
    onsetMedianH: median(faulty.filter(isFlagged).map(onsetErrorHours)),
    driftMedianC: median(faulty.map(driftErrorDegC)),
    downtimeError:
      lost.reduce((sum, row) => sum + Math.abs((row.found?.downtimeMinutes ?? 0) - row.truth.downtimeMin), 0) /
      lost.reduce((sum, row) => sum + row.truth.downtimeMin, 0),
  });
}

/** By tenths of the probability of a fault as said: how many zones, what was said on average, how many had one. */
export function calibrationRows(rows: readonly ScoredZone[]): Record<string, Record<string, number>> {
  const bins = Array.from({ length: 10 }, (_, bin) =>
    rows.filter((row) => Math.min(9, Math.floor(faultShare(row) * 10)) === bin),
  );
  return Object.fromEntries(
    bins.map((bin, i) => [
      `said ${i / 10} to ${(i + 1) / 10}`,
      rounded({
        zones: bin.length,
        said: mean(bin.map(faultShare)),
        true: mean(bin.map((row) => Number(row.truth.cause !== 'none'))),
      }),
    ]),
  );
}

function isFlagged(row: ScoredZone): boolean {
  return row.found?.status === 'faulty' || row.found?.status === 'watch';
}

function share(row: ScoredZone, cause: (typeof causes)[number]): number {
  return row.found?.probabilities[cause] ?? (cause === 'none' ? 1 : 0);
}

function faultShare(row: ScoredZone): number {
  return 1 - share(row, 'none');
}

function topCause(row: ScoredZone): string {
  return causes.reduce((best, cause) => (share(row, cause) > share(row, best) ? cause : best), 'none');
}

function onsetErrorHours(row: ScoredZone): number {
  if (!row.found?.onset || !row.truth.onset) return NaN;
  return Math.abs(Date.parse(row.found.onset) - Date.parse(row.truth.onset)) / 3_600_000;
}

function driftErrorDegC(row: ScoredZone): number {
  if (row.truth.fault !== 'sensor_drift' || row.truth.driftC === null) return NaN;
  const offset = row.found?.offsetDegC ?? NaN;
  return Math.abs(offset - row.truth.driftC);
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? NaN : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function rounded(row: Record<string, number>): Record<string, number> {
  return Object.fromEntries(Object.entries(row).map(([name, value]) => [name, Math.round(value * 1000) / 1000]));
}
