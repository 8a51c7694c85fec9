import type { AlarmThresholds } from './thresholds.js';

const TEN_MINUTES_MS = 600_000;

export interface Flood {
  readonly startMs: number;
  readonly endMs: number;
  readonly count: number;
  readonly peakPerTenMinutes: number;
}

/**
 * Floods in a list of activations: from the first ten minutes with more than `floodStartsAbove` alarms until the
 * last ten minutes hold fewer than `floodEndsBelow` (ISA-18.2). Windows slide with the alarms.
 *
 * @param starts Activation times in ms, ascending.
 * @returns Floods in order; `endMs` is when the count of the last ten minutes fell below the limit. Never throws.
 */
export function floodsOf(
  starts: ArrayLike<number>,
  limits: Pick<AlarmThresholds, 'floodStartsAbove' | 'floodEndsBelow'>,
): Flood[] {
  const floods: Flood[] = [];
  let oldest = 0;
  let flood: { first: number; peak: number } | null = null;
  for (let i = 0; i < starts.length; i++) {
    const endMs = flood ? endOf(starts, oldest, i, limits.floodEndsBelow) : Infinity;
    if (flood && endMs < starts[i]!) {
      floods.push(closed(starts, flood, i - 1, endMs));
      flood = null;
    }
    while (starts[i]! - starts[oldest]! >= TEN_MINUTES_MS) oldest++;
    const count = i - oldest + 1;
    if (flood) flood.peak = Math.max(flood.peak, count);
    else if (count > limits.floodStartsAbove) flood = { first: oldest, peak: count };
  }
  if (flood) {
    const endMs = endOf(starts, oldest, starts.length, limits.floodEndsBelow);
    floods.push(closed(starts, flood, starts.length - 1, endMs));
  }
  return floods;
}

/** When the ten minutes behind the alarms before place `next` hold fewer than the limit, if no more came. */
function endOf(starts: ArrayLike<number>, oldest: number, next: number, endsBelow: number): number {
  const leaves = next - endsBelow; // once this alarm is ten minutes old, fewer than `endsBelow` are left
  return leaves < oldest ? starts[next - 1]! : starts[leaves]! + TEN_MINUTES_MS;
}

function closed(
  starts: ArrayLike<number>,
  { first, peak }: { first: number; peak: number },
  last: number,
  endMs: number,
): Flood {
  return { startMs: starts[first]!, endMs, count: last - first + 1, peakPerTenMinutes: peak };
}

/** Most activations within any ten minutes. */
export function peakPerTenMinutes(starts: ArrayLike<number>): number {
  let oldest = 0;
  let peak = 0;
  for (let i = 0; i < starts.length; i++) {
    while (starts[i]! - starts[oldest]! >= TEN_MINUTES_MS) oldest++;
    peak = Math.max(peak, i - oldest + 1);
  }
  return peak;
}

/**
 * Activations that belong to chatter: `chatterCount` or more of one alarm within the window.
 *
 * @param starts Activation times of one alarm in ms, ascending.
 * @returns How many; 0 = the alarm does not chatter.
 */
export function chatterOf(starts: ArrayLike<number>, { chatterCount, chatterWindowSeconds }: AlarmThresholds): number {
  const isChatter = new Uint8Array(starts.length);
  for (let i = chatterCount - 1; i < starts.length; i++) {
    if (starts[i]! - starts[i - chatterCount + 1]! >= chatterWindowSeconds * 1000) continue;
    isChatter.fill(1, i - chatterCount + 1, i + 1);
  }
  return isChatter.reduce((sum, one) => sum + one, 0);
}
