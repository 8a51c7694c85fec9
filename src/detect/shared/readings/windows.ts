import type { Evidence } from '../../../model/detector.js';
import type { ZoneDigest } from '../../../model/digest.js';
import { MINUTE_MS, HOUR_MS } from '../../../model/time-units.js';
import { meanBetween } from '../../../maths/mean-between.js';
import { oncePer } from '../basics/memo.js';
import { samplingMsOf } from '../basics/sampling.js';
import { zoneState, zoneStatesOf } from './zone-state.js';

/** Shortest window: long enough to average several loop periods (common practice). */
const WINDOW_MS = 30 * MINUTE_MS;
/** More windows than this tell no more of a slow drift, so longer windows are taken (own choice). */
const MOST_WINDOWS = 1500;
/** Share of the expected samples that a window must hold (own choice). */
const LEAST_SHARE = 0.7;

/** Means over windows of half an hour or more; NaN where the zone was not in one state throughout. */
export interface ZoneWindows {
  /** `zoneState` of all places, or unknown where they differ. */
  readonly state: Uint8Array;
  readonly readingDegC: Float64Array;
  /** Slope of the readings inside the window. */
  readonly rateDegCPerHour: Float64Array;
  readonly outputPercent: Float64Array;
  readonly setpointDegC: Float64Array;
  readonly runningShare: Float64Array;
}

export interface Windows {
  readonly startMs: number;
  readonly windowMs: number;
  readonly count: number;
  readonly zones: readonly ZoneWindows[];
}

/** Cuts the digest into equal windows. One pass over the digest; never throws. */
export const windowsOf = oncePer((evidence: Evidence): Windows => {
  const { digest } = evidence;
  const spanMs = digest.length * digest.periodMs;
  const factor = Math.max(1, Math.ceil(spanMs / WINDOW_MS / MOST_WINDOWS));
  const places = Math.max(1, Math.round((WINDOW_MS * factor) / digest.periodMs));
  const windowMs = places * digest.periodMs;
  const startMs = digest.startMs;
  const count = Math.floor(digest.length / places);
  const states = zoneStatesOf(evidence);
  const zones = evidence.zones.map((zone) => {
    const expected = LEAST_SHARE * Math.min(places, windowMs / samplingMsOf(zone));
    return cut(digest.zones[zone.index]!, states[zone.index]!, count, places, expected, digest.periodMs);
  });
  return { startMs, windowMs, count, zones };
});

function cut(
  digest: ZoneDigest,
  states: Uint8Array,
  count: number,
  places: number,
  expected: number,
  periodMs: number,
): ZoneWindows {
  const column = () => new Float64Array(count).fill(NaN);
  const zone = {
    state: new Uint8Array(count),
    readingDegC: column(),
    rateDegCPerHour: column(),
    outputPercent: column(),
    setpointDegC: column(),
    runningShare: column(),
  };
  for (let w = 0; w < count; w++) {
    const from = w * places;
    const state = commonState(states, from, from + places);
    if (state === zoneState.unknown) continue;
    const line = lineOf(digest.meanDegC, from, from + places);
    if (line.count < expected) continue;
    zone.state[w] = state;
    zone.readingDegC[w] = line.mean;
    zone.rateDegCPerHour[w] = (line.slope * HOUR_MS) / periodMs;
    zone.outputPercent[w] = meanBetween(digest.outputPercent, from, from + places);
    zone.setpointDegC[w] = meanBetween(digest.setpointDegC, from, from + places);
    zone.runningShare[w] = meanBetween(digest.runningShare, from, from + places);
  }
  return zone;
}

function commonState(states: Uint8Array, from: number, to: number): number {
  const first = states[from]!;
  for (let i = from + 1; i < to; i++) if (states[i] !== first) return zoneState.unknown;
  return first;
}

/** Mean and least-squares slope per place; slope NaN for fewer than 2 values. */
export function lineOf(values: Float32Array, from: number, to: number): { mean: number; slope: number; count: number } {
  let count = 0;
  let x = 0;
  let xx = 0;
  let y = 0;
  let xy = 0;
  const base = values[from]!;
  const shift = Number.isNaN(base) ? 0 : base;
  for (let i = from; i < to; i++) {
    const value = values[i]! - shift;
    if (Number.isNaN(value)) continue;
    const at = i - from;
    count++;
    x += at;
    xx += at * at;
    y += value;
    xy += at * value;
  }
  const spread = count * xx - x * x;
  return { mean: shift + y / count, slope: spread > 0 ? (count * xy - x * y) / spread : NaN, count };
}
