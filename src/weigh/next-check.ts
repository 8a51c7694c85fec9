import { causes, type Probabilities } from '../model/cause.js';
import { measurements, type Measurement } from './measurements.js';
import type { Presence } from './presence.js';

/**
 * The measurement that settles most per minute of work: largest expected fall of entropy over the causes, divided by
 * its minutes (Lindley 1956, expected information of an experiment).
 *
 * @returns null when the causes are so sure already that no measurement tells 0.01 bit.
 */
export function nextCheck(probabilities: Probabilities, presence: Presence): Measurement | null {
  let best: Measurement | null = null;
  let bestBitsPerMinute = 0;
  for (const measurement of measurements.map((one) => asMet(one, presence))) {
    const bits = informationBits(probabilities, measurement);
    if (bits < 0.01 || bits / measurement.minutes <= bestBitsPerMinute) continue;
    best = measurement;
    bestBitsPerMinute = bits / measurement.minutes;
  }
  return best;
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
