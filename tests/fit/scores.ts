import type { Numbers } from '../../src/maths/finite.js';

/** A forecast of a yes/no event and what came. Pairs with a probability outside 0 … 1 or NaN are skipped. */
export interface Forecast {
  readonly probability: number;
  readonly happened: boolean;
}

/**
 * Mean squared error of probabilities (Brier 1950, Monthly Weather Review 78:1–3, for two classes as commonly halved).
 *
 * @returns 0 perfect, 0.25 for always one half, 1 worst; NaN for no forecasts. Never throws.
 */
export function brierScore(forecasts: readonly Forecast[]): number {
  return meanOver(usable(forecasts), ({ probability, happened }) => (probability - Number(happened)) ** 2);
}

/**
 * Multi-class Brier score, Brier's own form: Σ over classes of (probability − outcome)², one case.
 *
 * @param probabilities One per class. @param truth Index of the class that came.
 * @returns 0 to 2; NaN for no classes. Never throws.
 */
export function brierOfClasses(probabilities: Numbers, truth: number): number {
  if (probabilities.length === 0) return NaN;
  let sum = 0;
  for (let i = 0; i < probabilities.length; i++) sum += (probabilities[i]! - Number(i === truth)) ** 2;
  return sum;
}

/**
 * Mean of −log(probability given to what came), natural logarithm.
 *
 * @param floor Probabilities are kept this far from 0 and 1, so that one sure miss does not give Infinity.
 * @returns NaN for no forecasts. Never throws.
 */
export function logLoss(forecasts: readonly Forecast[], floor = 1e-15): number {
  return meanOver(usable(forecasts), ({ probability, happened }) => {
    const given = happened ? probability : 1 - probability;
    return -Math.log(Math.min(1 - floor, Math.max(floor, given)));
  });
}

export interface CalibrationBin {
  /** The bin holds from ≤ probability < to; the last one holds 1 as well. */
  readonly from: number;
  readonly to: number;
  readonly count: number;
  /** NaN in an empty bin. */
  readonly meanProbability: number;
  /** Share of cases in which the event came; NaN in an empty bin. */
  readonly happenedShare: number;
}

/** Forecasts sorted into `bins` (1 or more, whole) equal ranges of probability. Never throws for such a number. */
export function calibrationBins(forecasts: readonly Forecast[], bins = 10): CalibrationBin[] {
  const inBin: Forecast[][] = Array.from({ length: bins }, () => []);
  for (const forecast of usable(forecasts)) {
    inBin[Math.min(bins - 1, Math.floor(forecast.probability * bins))]!.push(forecast);
  }
  return inBin.map((held, i) => ({
    from: i / bins,
    to: (i + 1) / bins,
    count: held.length,
    meanProbability: meanOver(held, ({ probability }) => probability),
    happenedShare: meanOver(held, ({ happened }) => Number(happened)),
  }));
}

/**
 * Area under the receiver operating curve: chance that a case that happened got a higher score than one that did not,
 * ties one half (Mann–Whitney form; Hanley & McNeil 1982, Radiology 143:29–36).
 *
 * @param scores Any number, higher = more likely; NaN is skipped. @param happened As long as `scores`.
 * @returns NaN when one of the two kinds is missing. Never throws. Cost n·log n.
 */
export function auroc(scores: Numbers, happened: ArrayLike<boolean>): number {
  const order = Array.from({ length: scores.length }, (_, i) => i)
    .filter((i) => !Number.isNaN(scores[i]!))
    .sort((a, b) => (scores[a]! < scores[b]! ? -1 : Number(scores[a]! > scores[b]!)));
  let yes = 0;
  let no = 0;
  let wins = 0;
  for (let i = 0; i < order.length;) {
    let tiedYes = 0;
    let tiedNo = 0;
    const score = scores[order[i]!]!;
    for (; i < order.length && scores[order[i]!] === score; i++) {
      if (happened[order[i]!]) tiedYes++;
      else tiedNo++;
    }
    wins += tiedYes * (no + tiedNo / 2);
    yes += tiedYes;
    no += tiedNo;
  }
  return yes > 0 && no > 0 ? wins / (yes * no) : NaN;
}

function usable(forecasts: readonly Forecast[]): Forecast[] {
  return forecasts.filter(({ probability }) => probability >= 0 && probability <= 1);
}

function meanOver<T>(items: readonly T[], value: (item: T) => number): number {
  return items.length === 0 ? NaN : items.reduce((sum, item) => sum + value(item), 0) / items.length;
}
