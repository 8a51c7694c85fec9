/**
 * Place of the first value that is not less than another.
 *
 * @param ascending Without NaN.
 * @returns The length where all are less. Never throws. Cost log n.
 */
export function firstPlaceFrom(ascending: ArrayLike<number>, least: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle]! < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
