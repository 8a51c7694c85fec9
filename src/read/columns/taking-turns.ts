import type { RoledSeries } from './roled-series.js';
import type { Series } from './series.js';

/** So many values that follow each other show whether two series take turns: they may cross over while machines heat (own choice). */
const windowValues = 30;
/** Series that take turns change places so often, and each has so many of the values (own choice). */
const leastShare = 0.3;
/** So many times further a value lies from the one before it than from the last of its own series, in all (own choice). */
const timesFurther = 8;
/** Two levels of fewer values are a code, or an input that comes and goes (own choice). */
const fewestLevels = 5;
/** So many of the rows must be of the same series by every reading (own choice). */
const leastAgreement = 0.95;

/**
 * Marks the readings of a file whose rows seem to be of two machines or zones in turn, with no column that tells them
 * apart: every second value or so goes on from the one before the last, far from its neighbour. At least two readings must
 * show it in the same rows, so that one input that comes and goes does not; one reading alone, where each of the two has
 * times of its own.
 */
export function markTurns(roled: readonly RoledSeries[]): readonly RoledSeries[] {
  const readings = roled.filter(({ role }) => role === 'reading');
  const turns = readings.flatMap((it) => {
    const places = turnsOf(it.series);
    return places ? [{ it, places }] : [];
  });
  const [first] = turns;
  if (!first) return roled;
  const agreeing = turns.filter(({ places }) => agreement(first.places, places) >= leastAgreement);
  const isShown =
    readings.length > 1 ? agreeing.length * 2 > readings.length : haveOwnTimes(first.it.series, first.places);
  if (!isShown || (readings.length > 1 && agreeing.length < 2)) return roled;
  return roled.map((it) => (it.role === 'reading' ? { ...it, isMixed: true } : it));
}

/** By value: 1 = of the higher of two series, 0 = of the lower, −1 = not known; null where one series explains the values. */
function turnsOf({ value, stretch }: Series): Int8Array | null {
  const places = new Int8Array(value.length).fill(-1);
  const levels = [new Set<number>(), new Set<number>()] as const;
  let [windows, shown] = [0, 0];
  for (let from = 0; from + windowValues <= value.length; from += windowValues) {
    if (stretch[from] !== stretch[from + windowValues - 1]) continue;
    const window = value.slice(from, from + windowValues);
    if (window.some(Number.isNaN)) continue;
    windows++;
    const found = turnsIn(window);
    if (!found) continue;
    shown++;
    places.set(found, from);
    window.forEach((it, i) => levels[found[i] === 1 ? 1 : 0].add(it));
  }
  const areMoving = levels.every(({ size }) => size >= fewestLevels);
  return shown > 0 && areMoving && shown * 2 >= windows ? places : null;
}

/** The same for some values that follow each other. */
function turnsIn(values: readonly number[]): Int8Array | null {
  const places = Int8Array.from(values, () => 0);
  const last: [number, number] = [values[0]!, farthestFrom(values)];
  let [turns, alone, together] = [0, 0, 0];
  values.forEach((now, i) => {
    const place = Math.abs(now - last[1]) < Math.abs(now - last[0]) ? 1 : 0;
    places[i] = place;
    if (i === 0) return;
    if (place !== places[i - 1]) turns++;
    alone += Math.abs(now - values[i - 1]!);
    together += Math.abs(now - last[place]);
    last[place] = now;
  });
  const ofSecond = places.reduce((sum, place) => sum + place, 0);
  const areBoth = Math.min(ofSecond, values.length - ofSecond, turns) >= leastShare * values.length;
  if (!areBoth || alone <= timesFurther * together) return null;
  return last[1] > last[0] ? places : places.map((place) => 1 - place);
}

/** Of the first values the one that lies furthest from the very first. */
function farthestFrom(values: readonly number[]): number {
  const first = values[0]!;
  return values.slice(0, 6).reduce((a, b) => (Math.abs(b - first) > Math.abs(a - first) ? b : a));
}

/** Share of the values that stand alike in both, whichever of the two is called the first. */
function agreement(a: Int8Array, b: Int8Array): number {
  let [same, other] = [0, 0];
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    if (a[i]! < 0 || b[i]! < 0) continue;
    if (a[i] === b[i]) same++;
    else other++;
  }
  return same + other === 0 ? 0 : Math.max(same, other) / (same + other);
}

/** Whether the steps within each series are more even than those from row to row. */
function haveOwnTimes({ clockMs, stretch }: Series, places: Int8Array): boolean {
  const own = [0, 1].map((place) =>
    unevenness(
      [...clockMs.keys()].filter((i) => places[i] === place),
      clockMs,
      stretch,
    ),
  );
  const all = unevenness([...clockMs.keys()], clockMs, stretch);
  return all > 0.1 && own.every((it) => it * 2 < all);
}

/** Mean difference of the steps from their median, as a share of it; steps over a break of the sample left out. */
function unevenness(rows: readonly number[], clockMs: readonly number[], stretch: readonly number[]): number {
  const steps = rows.flatMap((row, k) =>
    k > 0 && stretch[row] === stretch[rows[k - 1]!] ? [clockMs[row]! - clockMs[rows[k - 1]!]!] : [],
  );
  const median = steps.toSorted((a, b) => a - b)[steps.length >> 1] ?? NaN;
  return steps.reduce((sum, step) => sum + Math.min(1, Math.abs(step - median) / median), 0) / steps.length;
}
