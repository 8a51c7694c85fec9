import type { Evidence } from '../../../model/detector.js';
import { fitChange, rampPowers, type ChangeFit, type ChangeSize, type ChangeSeries } from './change-fit.js';
import { dutyRowsOf, type Duty, type DutyRows } from './duty-model.js';
import { newSensorsMsOf } from '../opens/repair-lives.js';
import { oncePer } from '../basics/memo.js';
import { movingTogetherOf } from '../cold/moving-together.js';
import { soaksOf, type SoakPoint } from '../cold/soaks.js';

/** A change this clear (squared standard deviations) makes a zone no reference for its peers: five and a half sigma. */
const CLEAR_GAIN = 30;
/** … and this large: less would not move a median of peers by a tenth of a class B tolerance (own choice). */
const CLEAR_CHANGE_DEG_C = 0.3;
/** Four hours of half hours, three looks at soaks: less behind a change may be chance (own choice). */
const LEAST_HOT_ROWS = 8;
const LEAST_COLD_ROWS = 3;
/** The first settled hours of a log are seldom like the rest; a usual duty needs a shift of eight hours. */
const LEAST_HOT_ROWS_BEFORE = 16;
/** Fewer soaks than this show no change (a level and a change need three). */
const LEAST_SOAKS = 3;

/** What soaks and duty of one zone say of a change of its reading error. */
export interface ZoneChange {
  readonly ramp: ChangeFit | null;
  readonly step: ChangeFit | null;
  readonly soaks: readonly SoakPoint[];
  readonly duty: Duty | null;
  /** Soak offsets as they went into the fits; null where there are too few. */
  readonly cold: ChangeSeries | null;
  readonly soaksUnable: string | null;
  readonly dutyUnable: string | null;
  /** Whether other zones may take this one for a reference. */
  readonly isReference: boolean;
  /** The zones that were no reference for this one. */
  readonly leftOut: ReadonlySet<number>;
}

/**
 * Soaks and duty of all zones, each against peers that have no change of their own: the zone with the clearest change
 * is found first and left out as a peer, then the next, until none is clear. Zones that moved together are left out from
 * the start. Never throws.
 */
export const zoneChangesOf = oncePer((evidence: Evidence): readonly ZoneChange[] => {
  const machines = [...new Set(evidence.zones.map(({ machine }) => machine))];
  const changes = new Array<ZoneChange>(evidence.zones.length);
  const moved = movingTogetherOf(evidence).flatMap((group) => group.zones);
  for (const machine of machines) {
    const zones = evidence.zones.filter((z) => z.machine === machine).map(({ index }) => index);
    const leftOut = new Set(moved.filter((index) => zones.includes(index)));
    const together = new Set(leftOut);
    for (const index of together) changes[index] = { ...changeOf(evidence, index, together), isReference: false };
    for (;;) {
      const noReference = new Set(leftOut); // kept with the changes, while the other one grows
      for (const index of zones) if (!leftOut.has(index)) changes[index] = changeOf(evidence, index, noReference);
      const clearest = clearestOf(
        zones.filter((index) => !leftOut.has(index)),
        changes,
      );
      if (clearest === null || leftOut.size + 1 > zones.length / 2) break;
      leftOut.add(clearest);
      changes[clearest] = { ...changes[clearest]!, isReference: false };
    }
  }
  return changes;
});

/** The zone that surely changed most. Size decides, not clarity: its peers show part of it, turned round, as clearly. */
function clearestOf(zones: readonly number[], changes: readonly ZoneChange[]): number | null {
  let clearest: number | null = null;
  let most = CLEAR_CHANGE_DEG_C;
  for (const index of zones) {
    const { ramp, step } = changes[index]!;
    for (const fit of [ramp, step]) {
      if (!fit || fit.gain < CLEAR_GAIN) continue;
      const size = Math.max(sureSize(fit.hot), sureSize(fit.cold));
      if (size > most) [most, clearest] = [size, index];
    }
  }
  return clearest;
}

/** What of a change is sure: its size less two standard errors. */
function sureSize(size: ChangeSize | null): number {
  return size ? Math.abs(size.degC) - 2 * size.errorDegC : 0;
}

function changeOf(evidence: Evidence, index: number, leftOut: ReadonlySet<number>): ZoneChange {
  const { digest } = evidence;
  const endMs = digest.startMs + digest.length * digest.periodMs;
  const soaks = soaksOf(evidence, index, leftOut);
  const answer = dutyRowsOf(evidence, index, leftOut);
  const lives = newSensorsMsOf(evidence)[index]!;
  const rows = 'rows' in answer ? answer.rows : null;
  const hot = rows && hotSeries(rows, lives);
  const cold = soaks.points.length >= LEAST_SOAKS ? coldSeries(soaks.points, lives) : null;
  return {
    ramp: fitChange(rampPowers, hot, cold, endMs),
    step: fitChange(['step'], hot, cold, endMs),
    cold,
    soaks: soaks.points,
    duty: rows && rows.duty,
    soaksUnable: soaks.unable,
    dutyUnable: 'unable' in answer ? answer.unable : null,
    isReference: true,
    leftOut,
  };
}

/**
 * The duty of a zone with all that explains it, as it went into the fits. Made anew when it is asked for: of 200 zones
 * it would take more memory than the digest.
 */
export function dutyRowsAgain(evidence: Evidence, index: number): DutyRows | null {
  const answer = dutyRowsOf(evidence, index, zoneChangesOf(evidence)[index]!.leftOut);
  return 'rows' in answer ? answer.rows : null;
}

/** Duty as reading error, as it went into the fits; null where there is too little. Made anew, as the rows are. */
export function hotSeriesAgain(evidence: Evidence, index: number): ChangeSeries | null {
  const rows = dutyRowsAgain(evidence, index);
  return rows && hotSeries(rows, newSensorsMsOf(evidence)[index]!);
}

function hotSeries({ duty, columns, ridge }: DutyRows, lives: readonly number[]): ChangeSeries {
  const steps = lifeSteps(duty.timeMs, lives);
  return {
    timeMs: duty.timeMs,
    degC: duty.dutyPercent.map((percent) => -percent / duty.percentPerDegC),
    columns: [...columns, ...steps],
    ridge: [...ridge, ...steps.map(() => 0)],
    weights: new Float64Array(duty.timeMs.length).fill(1),
    leastSd: duty.leastErrorDegC,
    leastRows: LEAST_HOT_ROWS,
    leastRowsBefore: LEAST_HOT_ROWS_BEFORE,
  };
}

function coldSeries(points: readonly SoakPoint[], lives: readonly number[]): ChangeSeries {
  const timeMs = Float64Array.from(points, (p) => p.timeMs);
  const steps = lifeSteps(timeMs, lives);
  return {
    timeMs,
    degC: Float64Array.from(points, (p) => p.offsetDegC),
    columns: [new Float64Array(points.length).fill(1), ...steps],
    ridge: [],
    weights: Float64Array.from(points, (p) => 1 / p.uncertaintyDegC ** 2),
    leastSd: 1,
    leastRows: LEAST_COLD_ROWS,
    leastRowsBefore: LEAST_COLD_ROWS,
  };
}

/** One column per change of sensor that has rows on both sides: the new one may have another small offset. */
function lifeSteps(timeMs: Float64Array, lives: readonly number[]): Float64Array[] {
  return lives
    .map((at) => timeMs.map((t) => (t >= at ? 1 : 0)))
    .filter((step) => step.some((v) => v === 1) && step.some((v) => v === 0));
}
