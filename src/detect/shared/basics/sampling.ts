import type { Zone } from '../../../model/zone.js';

/** Taken where the log does not tell its sampling time yet (own choice, the middle of 1 s … 120 s logs). */
const USUAL_SAMPLING_MS = 30_000;

/** Taken where the digits of the log are not known: most controllers export tenths (common practice). */
const USUAL_RESOLUTION_DEG_C = 0.1;

/** Usual time between samples, never NaN or 0. */
export function samplingMsOf(zone: Zone): number {
  return zone.samplingMs > 0 ? zone.samplingMs : USUAL_SAMPLING_MS;
}

/** Places of the digest that one sample stands for, with their fraction: a slower log leaves the others empty. At least 1. */
export function placesPerSampleOf(zone: Zone, periodMs: number): number {
  return Math.max(1, samplingMsOf(zone) / periodMs);
}

/** Whole samples that span so long or a little more, in places of the digest: from one reading to another. */
export function samplesAhead(zone: Zone, spanMs: number, periodMs: number): number {
  const apart = placesPerSampleOf(zone, periodMs);
  return Math.round(Math.max(1, Math.ceil(spanMs / periodMs / apart)) * apart);
}

/** Smallest step between readings, never NaN or 0. */
export function resolutionDegCOf(zone: Zone): number {
  return zone.resolutionDegC > 0 ? zone.resolutionDegC : USUAL_RESOLUTION_DEG_C;
}

/**
 * In a slower log a quick loop has taken a step or a jump of the reading back before the next sample (own choice: two
 * minutes and a bit).
 */
export const SLOWEST_SAMPLING_FOR_STEPS_MS = 130_000;

/** Neighbouring samples further apart than this have a hole between them. */
export function holeMsOf(zone: Zone): number {
  return 3.5 * samplingMsOf(zone);
}
