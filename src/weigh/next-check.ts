import { causes, type Probabilities } from '../model/cause.js';
import { measurements, type Measurement } from './measurements.js';
import type { Presence } from './presence.js';
import { likeliestFault } from './verdict.js';

/** What settles less than this share of what is open is not worth the walk (own choice). */
const WORTH_SHARE = 0.1;

/**
 * The measurement that settles most per minute of work: largest expected fall of entropy over the causes, divided by
 * its minutes (Lindley 1956, expected information of an experiment). Where the causes are so sure that none tells
 * 0.01 bit, the one that proves the likeliest.
 */
export function nextCheck(probabilities: Probabilities, presence: Presence): Measurement {
  const met = measurements.map((one) => asMet(one, presence));
  const leastBits = Math.max(0.01, WORTH_SHARE * entropyBits(causes.map((cause) => probabilities[cause])));
  const worth = met.filter((one) => informationBits(probabilities, one) >= leastBits);
  return worth.length > 0
    ? largestBy(worth, (one) => informationBits(probabilities, one) / one.minutes)
    : largestBy(met, (one) => proofShare(probabilities, one));
}

/** How much more often the question is answered yes with the likeliest fault than with any other cause. */
function proofShare(probabilities: Probabilities, { yes }: Measurement): number {
  const likeliest = likeliestFault(probabilities);
  return yes[likeliest] - Math.max(...causes.filter((cause) => cause !== likeliest).map((cause) => yes[cause]));
}

function largestBy(from: readonly Measurement[], of: (one: Measurement) => number): Measurement {
  return from.reduce((best, one) => (of(one) > of(best) ? one : best));
}

/** The measurement's answers as the fitter will meet them: a fault that does not show answers as no fault does. */
function asMet(measurement: Measurement, { showsShare, isRepaired }: Presence): Measurement {
  if (measurement.asks === 'provokes' && !isRepaired) return measurement;
  const share = measurement.asks === 'repaired' ? Number(isRepaired) : showsShare;
  const { yes } = measurement;
  const met = causes.map((cause) => [cause, share * yes[cause] + (1 - share) * yes.none]);
  return { ...measurement, yes: Object.fromEntries(met) as Measurement['yes'] };
}

/** Expected fall of entropy, in bits, from asking the measurement's question once. Never negative. */
export function informationBits(probabilities: Probabilities, measurement: Measurement): number {
  const prior = causes.map((cause) => probabilities[cause]);
  const yes = causes.map((cause) => probabilities[cause] * measurement.yes[cause]);
  const no = causes.map((cause) => probabilities[cause] * (1 - measurement.yes[cause]));
  const yesShare = sum(yes);
  const noShare = sum(no);
  return Math.max(0, entropyBits(prior) - yesShare * entropyBits(yes) - noShare * entropyBits(no));
}

/** Entropy of weights scaled to sum to 1; 0 for no weight. */
function entropyBits(weights: readonly number[]): number {
  const total = sum(weights);
  if (!(total > 0)) return 0;
  return -weights.reduce(
    (bits, weight) => (weight > 0 ? bits + (weight / total) * Math.log2(weight / total) : bits),
    0,
  );
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
