import type { Numbers } from './finite.js';

/**
 * Kendall's S: pairs in which the later value is higher minus pairs in which it is lower.
 *
 * @param values In order, all usable. Cost n·log n.
 */
export function kendallS(values: Numbers): number {
  const ranks = denseRanks(values);
  const seen = new Float64Array(values.length + 1); // Fenwick tree: how many of each rank came before
  let s = 0;
  for (let i = 0; i < ranks.length; i++) {
    const below = countUpTo(seen, ranks[i]! - 1);
    const above = i - countUpTo(seen, ranks[i]!);
    s += below - above;
    for (let at = ranks[i]!; at < seen.length; at += at & -at) seen[at] = seen[at]! + 1;
  }
  return s;
}

/**
 * Variance of Kendall's S under no trend, with ties in either variable (Kendall 1970, Rank Correlation Methods, 4.9).
 *
 * @param x, y All usable, the same length. 0 for fewer than 2. Cost n·log n.
 */
export function kendallVariance(x: Numbers, y: Numbers): number {
  const n = y.length;
  if (n < 2) return 0;
  const tiesX = tieGroups(x);
  const tiesY = tieGroups(y);
  const sum = (groups: number[], term: (size: number) => number) => groups.reduce((total, g) => total + term(g), 0);
  const outer = (t: number) => t * (t - 1) * (2 * t + 5);
  const pairs = (t: number) => t * (t - 1);
  const triples = (t: number) => t * (t - 1) * (t - 2);
  const main = (outer(n) - sum(tiesX, outer) - sum(tiesY, outer)) / 18;
  const both2 = (sum(tiesX, pairs) * sum(tiesY, pairs)) / (2 * pairs(n));
  const both3 = n > 2 ? (sum(tiesX, triples) * sum(tiesY, triples)) / (9 * triples(n)) : 0;
  return main + both2 + both3;
}

function denseRanks(values: Numbers): Int32Array {
  const distinct = [...new Set(Float64Array.from(values).sort())];
  const rankOf = new Map(distinct.map((value, i) => [value, i + 1]));
  return Int32Array.from(values, (value) => rankOf.get(value)!);
}

function countUpTo(tree: Float64Array, rank: number): number {
  let count = 0;
  for (let at = rank; at > 0; at -= at & -at) count += tree[at]!;
  return count;
}

function tieGroups(values: Numbers): number[] {
  const sizes = new Map<number, number>();
  for (let i = 0; i < values.length; i++) sizes.set(values[i]!, (sizes.get(values[i]!) ?? 0) + 1);
  return [...sizes.values()].filter((size) => size > 1);
}
