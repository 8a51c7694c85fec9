import type { Numbers } from './finite.js';

/**
 * Median of a sliding window of places.
 *
 * @param values NaN and ±Infinity are skipped: a window's median is that of the usable values in it.
 * @param width Places in the window, whole, 1 or more; an even width looks one place further back than ahead.
 * @param align 'centre' looks both ways, 'trailing' looks back only (the place itself included).
 *   Windows are cut short at the ends.
 * @returns As long as `values`; NaN where a window holds nothing usable, or throughout for a width below 1. Never throws. Cost n·width at worst.
 */
export function runningMedian(values: Numbers, width: number, align: 'centre' | 'trailing' = 'centre'): Float64Array {
  if (!(width >= 1)) return new Float64Array(values.length).fill(NaN);
  const ahead = align === 'centre' ? Math.floor((width - 1) / 2) : 0;
  const window = new SortedWindow(width);
  const medians = new Float64Array(values.length);
  for (let i = -ahead; i < values.length; i++) {
    const coming = i + ahead < values.length ? values[i + ahead]! : NaN;
    const going = i + ahead - width >= 0 ? values[i + ahead - width]! : NaN;
    window.replace(going, coming);
    if (i >= 0) medians[i] = window.median();
  }
  return medians;
}

/**
 * The median that `runningMedian` has at one place, by itself.
 *
 * @param width As there; the window looks both ways. Never throws. Cost width².
 */
export function medianAround(values: Numbers, place: number, width: number): number {
  const ahead = Math.floor((width - 1) / 2);
  const window = new SortedWindow(width);
  for (let i = Math.max(0, place + ahead - width + 1); i <= Math.min(place + ahead, values.length - 1); i++)
    window.add(values[i]!);
  return window.median();
}

/** Keeps a few numbers in order; a move inside a typed array is far cheaper than sorting again. */
class SortedWindow {
  private readonly sorted: Float64Array;
  private count = 0;

  constructor(width: number) {
    this.sorted = new Float64Array(width + 1);
  }

  /** Numbers that are not finite are not kept, so they neither come nor go. */
  replace(going: number, coming: number): void {
    if (!Number.isFinite(going)) return this.add(coming);
    if (!Number.isFinite(coming)) return this.remove(going);
    const { sorted, count } = this;
    let place = this.placeOf(going);
    while (place + 1 < count && sorted[place + 1]! < coming) sorted[place] = sorted[++place]!;
    while (place > 0 && sorted[place - 1]! > coming) sorted[place] = sorted[--place]!;
    sorted[place] = coming;
  }

  add(value: number): void {
    if (!Number.isFinite(value)) return;
    const place = this.placeOf(value);
    this.sorted.copyWithin(place + 1, place, this.count++);
    this.sorted[place] = value;
  }

  private remove(value: number): void {
    const place = this.placeOf(value);
    this.sorted.copyWithin(place, place + 1, this.count--);
  }

  median(): number {
    const middle = this.count >> 1;
    if (this.count % 2 === 1) return this.sorted[middle]!;
    return this.count === 0 ? NaN : (this.sorted[middle - 1]! + this.sorted[middle]!) / 2;
  }

  private placeOf(value: number): number {
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.sorted[middle]! < value) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
