import { MINUTE_MS, HOUR_MS } from '../../../model/time-units.js';
/**
 * How a change goes on after its onset: `step` stays; a ramp grows with this power of time, from one that levels out to
 * one that gets faster. What makes a sensor drift seldom goes at one even pace (common practice).
 */
export type Shape = 'step' | number | Decay;

/** Comes at once and goes with this time constant: what dries, or settles. Its size is that at the onset. */
export interface Decay {
  readonly decayHours: number;
}

/** An onset is never known better than this from half-hour means. */
const FINEST_STEP_MS = 30 * MINUTE_MS;
const MOST_TRIALS = 1000;
/** Hours that a ramp must last to be told from scatter (own choice). */
const SHORTEST_RAMP_MS = 6 * HOUR_MS;

/**
 * Onsets to try: for a step the middle between neighbouring rows, for a ramp an even grid.
 *
 * @param series Times of the rows of one or two series, UTC ms, rising.
 * @returns Rising; empty where there is no room for such a shape. Never throws.
 */
export function trialTimes(shape: Shape, series: readonly Float64Array[], endMs: number): number[] {
  // A decay is told apart from its onset only where its first row stands: it is tried right at the rows.
  if (typeof shape === 'object') return inOrder(series);
  if (shape === 'step') return inOrder(series.map(middlesBetween));
  const firstMs = Math.min(...series.map((rows) => rows[0] ?? Infinity));
  const lastMs = endMs - SHORTEST_RAMP_MS;
  if (!(lastMs > firstMs)) return [];
  const stepMs = Math.max(FINEST_STEP_MS, (lastMs - firstMs) / MOST_TRIALS);
  return Array.from({ length: Math.floor((lastMs - firstMs) / stepMs) + 1 }, (_, k) => firstMs + k * stepMs);
}

/** Times of one or two series, each once. Rows of a series rise, so one alone is in order as it is. */
function inOrder(series: readonly Float64Array[]): number[] {
  if (series.length === 1) return Array.from(series[0]!);
  return [...new Set(series.flatMap((times) => Array.from(times)))].sort((a, b) => a - b);
}

function middlesBetween(timeMs: Float64Array): Float64Array {
  const middles = new Float64Array(Math.max(0, timeMs.length - 1));
  for (let i = 0; i < middles.length; i++) middles[i] = (timeMs[i]! + timeMs[i + 1]!) / 2;
  return middles;
}
