import { softmax } from '../maths/log-odds.js';
import { updatedShares } from '../maths/share-update.js';
import { causes, type Cause } from '../model/cause.js';
import type { RecordShares } from '../model/history-findings.js';
import type { PlantFile } from '../model/plant-file.js';
import type { ConfirmedFinding } from '../model/record.js';
import type { Strengths } from './strengths.js';

/**
 * What the fitted shares are worth, in findings: after as many of its own, a plant's record counts as much as the fit.
 * At 20 the fit says of another plant that the sensor's share among faults (0.39 fitted) lies between 0.20 and 0.61,
 * and the input card's (0.07) below 0.21, 19 times in 20: as far as plants of one trade differ by age, wash-down and
 * movement. Common practice, no source; `priorFindings` in plant.yaml replaces it.
 */
export const FITTED_WORTH_FINDINGS = 20;

export type FoundCounts = Readonly<Record<Cause, number>>;

const faults = causes.filter((cause) => cause !== 'none');

/**
 * How often each cause was found. At a zone itself nothing counts that was found since its log begins: the log is asked
 * for just that, and an answer that was told beforehand would prove itself right.
 *
 * @param zone Index of the zone that is weighed; null = the plant as a whole.
 */
export function foundCounts(findings: readonly ConfirmedFinding[], zone: number | null): FoundCounts {
  const counted = findings.filter((finding) => finding.isBeforeLog || zone === null || finding.zone !== zone);
  const count = (cause: Cause): number => counted.filter(({ found }) => found === cause).length;
  return Object.fromEntries(causes.map((cause) => [cause, count(cause)])) as FoundCounts;
}

/**
 * The strengths of a plant that keeps a record: shares *among faults* move towards what was found, as Beta (together
 * Dirichlet) counts; how often zones have a fault at all stays as fitted. Zones are opened because something spoke
 * against them, so a record says what the faults of a plant are, not how rare they are: its share of "no fault found"
 * is the share of false calls, which the track record tells, and would make every zone suspect if it were taken for
 * the share of healthy zones. Verdicts that nobody checked do not count; faults that no verdict called do.
 *
 * The counts are by zone, as in the fit: a card that took four zones along counts at each zone it was noted at. What a
 * record cannot put right: a kind of fault that nobody notices stays rare in it.
 *
 * @returns The same strengths where no fault was found. Never throws.
 */
export function withRecord(fitted: Strengths, counts: FoundCounts, worth = FITTED_WORTH_FINDINGS): Strengths {
  if (faults.every((cause) => counts[cause] === 0)) return fitted;
  const faultWeight = faults.reduce((sum, cause) => sum + Math.exp(fitted.prior[cause]), 0);
  const shares = updatedShares(
    faultShares(fitted.prior),
    worth,
    faults.map((cause) => counts[cause]),
  );
  const moved = faults.map((cause, i) => [cause, Math.log(faultWeight * (shares[i] ?? NaN))] as const);
  return { ...fitted, prior: { ...fitted.prior, ...Object.fromEntries(moved) } };
}

/** What the record did to the shares among faults, for the reader. */
export function recordShares(
  before: Strengths['prior'],
  used: Strengths['prior'],
  counts: FoundCounts,
  plant: PlantFile,
): RecordShares {
  const [fittedShares, usedShares] = [faultShares(before), faultShares(used)];
  return {
    priorFindings: plant.priorFindings ?? FITTED_WORTH_FINDINGS,
    nothingFoundCount: counts.none,
    byCause: faults.map((cause, i) => ({
      cause,
      fittedShare: fittedShares[i] ?? NaN,
      foundCount: counts[cause],
      usedShare: usedShares[i] ?? NaN,
      isSetByPlant: plant.priors?.[cause] !== undefined,
    })),
  };
}

/** Shares among faults, in the order of `faults`. */
function faultShares(prior: Strengths['prior']): number[] {
  return softmax(faults.map((cause) => prior[cause]));
}
