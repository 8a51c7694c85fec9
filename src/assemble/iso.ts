/** A time for the findings; null for NaN. */
export function isoOrNull(timeMs: number): string | null {
  return Number.isNaN(timeMs) ? null : new Date(timeMs).toISOString();
}
