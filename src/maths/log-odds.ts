import type { Numbers } from './finite.js';

/**
 * log Σ exp(xᵢ), safe from overflow: the largest term is taken out first.
 *
 * @returns −Infinity for no terms, NaN when a term is NaN. Never throws.
 */
export function logSumExp(terms: Numbers): number {
  const largest = largestOf(terms);
  if (!Number.isFinite(largest)) return largest;
  let sum = 0;
  for (let i = 0; i < terms.length; i++) sum += Math.exp(terms[i]! - largest);
  return largest + Math.log(sum);
}

/**
 * Shares exp(xᵢ) / Σ exp(xⱼ), which sum to 1.
 *
 * @returns Empty for no terms; all NaN when a term is NaN or all are −Infinity. Never throws.
 */
export function softmax(terms: Numbers): number[] {
  const largest = largestOf(terms);
  const weights = Array.from(terms, (term) => Math.exp(term - largest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

function largestOf(terms: Numbers): number {
  let largest = -Infinity;
  for (let i = 0; i < terms.length; i++) largest = Math.max(largest, terms[i]!);
  return largest;
}
