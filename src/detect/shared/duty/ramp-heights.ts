/** Columns kept of one power: those that a zone tries and more; of a month of half hours they take 2 MB (own choice). */
const MOST_HELD = 192;

interface Held {
  readonly timeMs: Float64Array;
  readonly endMs: number;
  /** By power, then by onset. */
  readonly byPower: Map<number, Map<number, Float64Array>>;
}

let held: Held = { timeMs: new Float64Array(0), endMs: NaN, byPower: new Map() };

/**
 * Columns of ramps that grow with a power of time, from 0 at the onset to 1 at the end of the log. Powers are dear, so the
 * columns are kept for the rows last asked for: every series is searched twice, and zones of one machine mostly have the
 * same rows.
 *
 * @param timeMs Rising.
 * @returns The column for an onset and the first row behind it; rows before that one are not to be read, and the column
 * is not to be changed. Valid until the next call of either function. Never throws.
 */
export function rampHeights(
  timeMs: Float64Array,
  power: number,
  endMs: number,
): (onsetMs: number, from: number) => Float64Array {
  const columns = columnsOf(timeMs, power, endMs);
  let spare: Float64Array | null = null;
  return (onsetMs, from) => {
    const known = columns.get(onsetMs);
    if (known) return known;
    const isKept = columns.size < MOST_HELD;
    const column = isKept ? new Float64Array(timeMs.length) : (spare ??= new Float64Array(timeMs.length));
    const lengthMs = endMs - onsetMs;
    for (let i = from; i < timeMs.length; i++) column[i] = ((timeMs[i]! - onsetMs) / lengthMs) ** power;
    if (isKept) columns.set(onsetMs, column);
    return column;
  };
}

function columnsOf(timeMs: Float64Array, power: number, endMs: number): Map<number, Float64Array> {
  if (!isHeld(timeMs, endMs)) held = { timeMs: timeMs.slice(), endMs, byPower: new Map() };
  const columns = held.byPower.get(power) ?? new Map<number, Float64Array>();
  held.byPower.set(power, columns);
  return columns;
}

function isHeld(timeMs: Float64Array, endMs: number): boolean {
  if (endMs !== held.endMs || timeMs.length !== held.timeMs.length) return false;
  for (let i = 0; i < timeMs.length; i++) if (timeMs[i] !== held.timeMs[i]) return false;
  return true;
}
