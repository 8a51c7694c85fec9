import type { Trace } from '../../../src/model/findings.js';
import { Random } from '../random.js';

export const dayMs = 86_400_000;
const hourMs = 3_600_000;
/** Two weeks in buckets of 14 minutes, as the thinning gives them. */
export const bucketMs = 14 * 60_000;

export interface MadeSpan {
  readonly startMs: number;
  readonly endMs: number;
}

export interface TraceRecipe {
  readonly seed: number;
  readonly startMs: number;
  readonly days: number;
  readonly setpointDegC: number;
  readonly roomDegC: number;
  readonly hasOutput: boolean;
  /** Spans in which the reading is open: no temperature, output zero. */
  readonly opens: readonly MadeSpan[];
  /** Duty in percent added at a time, for a fault that shows in the output only. */
  readonly dutyShift: (timeMs: number) => number;
  readonly noiseDegC: number;
}

/** Two shifts on weekdays, a short one on Saturday. */
export function isRunning(timeMs: number): boolean {
  const day = new Date(timeMs).getUTCDay();
  const hour = (timeMs % dayMs) / hourMs;
  if (day === 0) return false;
  return hour >= 6 && hour < (day === 6 ? 13 : 22) && !(hour >= 11.75 && hour < 12.25);
}

/** A plausible thinned trace: warm-up from room, holding with noise, cooling down, gaps where the sensor is open. */
export function makeTrace(recipe: TraceRecipe): Trace {
  const random = new Random(recipe.seed);
  const places = Math.floor((recipe.days * dayMs) / bucketMs);
  const columns = { timeMs: [] as number[], minDegC: [] as (number | null)[], maxDegC: [] as (number | null)[] };
  const setpointDegC: number[] = [];
  const outputPercent: (number | null)[] = [];
  const runningShare: number[] = [];
  const badCount: number[] = [];
  let degC = recipe.roomDegC;
  for (let i = 0; i < places; i++) {
    const timeMs = recipe.startMs + i * bucketMs;
    const running = isRunning(timeMs);
    const heated = running || isRunning(timeMs + hourMs);
    const open = recipe.opens.some((span) => span.startMs < timeMs + bucketMs && span.endMs >= timeMs);
    const target = heated ? recipe.setpointDegC : recipe.roomDegC;
    degC += (target - degC) * (heated ? 0.75 : 0.12);
    const widthDegC = Math.abs(random.gauss()) * recipe.noiseDegC + (heated ? 0.4 : 0.1);
    columns.timeMs.push(timeMs);
    columns.minDegC.push(round(degC - widthDegC));
    columns.maxDegC.push(round(degC + widthDegC));
    setpointDegC.push(heated ? recipe.setpointDegC : 0);
    const holding = heated ? 28 + random.gauss() * 2 + recipe.dutyShift(timeMs) : 0;
    const warming = heated && degC < recipe.setpointDegC - 5 ? 100 : holding;
    outputPercent.push(recipe.hasOutput ? round(Math.min(100, Math.max(0, open ? 0 : warming))) : null);
    runningShare.push(running ? 1 : 0);
    badCount.push(open ? 4 : 0);
  }
  return { ...columns, setpointDegC, outputPercent, runningShare, badCount };
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
