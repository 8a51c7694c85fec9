import { causes, type Cause } from '../../src/model/cause.js';
import type { Strengths } from '../../src/weigh/strengths.js';
import type { Term } from '../../src/weigh/term.js';

/** One zone of a plant whose truth is known. */
export interface Example {
  /** One value per term, 0 to 1; a term that could not be told stands as 0. */
  readonly values: readonly number[];
  readonly cause: Cause;
  readonly weight: number;
}

export interface FitOptions {
  /** Pull of each strength towards its start (ridge): λ/2 · Σ (strength − start)², per example. */
  readonly ridge: number;
  readonly steps: number;
}

/**
 * Multinomial logistic regression with a ridge, by projected gradient steps of the Adam kind (Kingma & Ba 2015):
 * a strength exists only for the causes a term names, at or above zero where it speaks for, at or below where it
 * speaks against. The priors are free. Deterministic: no random start, no sampling.
 */
export function fitStrengths(examples: readonly Example[], terms: readonly Term[], options: FitOptions): Strengths {
  const signs = terms.map((term) => causes.map((cause) => signOf(term, cause)));
  const width = causes.length;
  const size = width + terms.length * width;
  const start = startOf(terms);
  const point = Float64Array.from(start);
  const mean = new Float64Array(size);
  const square = new Float64Array(size);
  const total = examples.reduce((sum, example) => sum + example.weight, 0);
  for (let step = 1; step <= options.steps; step++) {
    const slope = gradient(examples, terms.length, point, total);
    for (let i = width; i < size; i++) slope[i]! += options.ridge * (point[i]! - start[i]!);
    const rate = 0.1 / (1 + step / (options.steps / 4));
    for (let i = 0; i < size; i++) {
      mean[i] = 0.9 * mean[i]! + 0.1 * slope[i]!;
      square[i] = 0.999 * square[i]! + 0.001 * slope[i]! ** 2;
      const move = mean[i]! / (1 - 0.9 ** step) / (Math.sqrt(square[i]! / (1 - 0.999 ** step)) + 1e-9);
      point[i]! -= rate * move;
      if (i >= width) point[i] = clip(point[i]!, signs[Math.floor(i / width) - 1]![i % width]!);
    }
  }
  return toStrengths(point, terms);
}

function gradient(examples: readonly Example[], termCount: number, point: Float64Array, total: number): Float64Array {
  const width = causes.length;
  const slope = new Float64Array(point.length);
  const odds = new Float64Array(width);
  for (const { values, cause, weight } of examples) {
    for (let c = 0; c < width; c++) odds[c] = point[c]!;
    for (let t = 0; t < termCount; t++) {
      const value = values[t]!;
      if (value === 0) continue;
      for (let c = 0; c < width; c++) odds[c]! += value * point[width + t * width + c]!;
    }
    const highest = Math.max(...odds);
    let sum = 0;
    for (let c = 0; c < width; c++) sum += odds[c] = Math.exp(odds[c]! - highest);
    for (let c = 0; c < width; c++) {
      const error = ((odds[c]! / sum - (causes[c] === cause ? 1 : 0)) * weight) / total;
      slope[c]! += error;
      for (let t = 0; t < termCount; t++) if (values[t] !== 0) slope[width + t * width + c]! += error * values[t]!;
    }
  }
  return slope;
}

/** Priors at zero; each strength at what the trade would give it before any data. */
function startOf(terms: readonly Term[]): Float64Array {
  const strengths = terms.flatMap((term) => causes.map((cause) => signOf(term, cause) * (term.start ?? 0.5)));
  return Float64Array.from([...causes.map(() => 0), ...strengths]);
}

function signOf(term: Term, cause: Cause): number {
  if (term.for.includes(cause)) return 1;
  return term.against.includes(cause) ? -1 : 0;
}

function clip(value: number, sign: number): number {
  if (sign === 0) return 0;
  return sign > 0 ? Math.max(0, value) : Math.min(0, value);
}

function toStrengths(point: Float64Array, terms: readonly Term[]): Strengths {
  const width = causes.length;
  const row = (at: number, keepZero: boolean): Partial<Record<Cause, number>> =>
    Object.fromEntries(
      causes
        .map((cause, c) => [cause, rounded(point[at + c]!)] as const)
        .filter(([, value]) => keepZero || value !== 0),
    );
  return {
    prior: row(0, true) as Record<Cause, number>,
    terms: Object.fromEntries(terms.map((term, t) => [term.id, row(width + t * width, false)])),
  };
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
