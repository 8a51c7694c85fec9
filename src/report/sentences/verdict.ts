import { causes, type Cause } from '../../model/cause.js';
import type { ZoneFinding } from '../../model/findings.js';
import { phrase, plain, type Phrase } from '../text/phrase.js';
import { causePlaces } from '../text/words.js';
import { leadingSymptom, sentence } from './symptom.js';

/** Causes of a fault, the likeliest first. */
export function rankedCauses(zone: ZoneFinding): readonly (readonly [Cause, number])[] {
  return causes
    .filter((cause) => cause !== 'none')
    .map((cause) => [cause, zone.probabilities[cause]] as const)
    .sort((a, b) => b[1] - a[1]);
}

/** The second cause is named beside the first when it is at least this share of it. Our own choice for reading. */
const besideShare = 0.5;

/** Words for a probability. Our own steps for reading; the number stands beside them. */
function likelihood(share: number): string {
  if (share >= 0.9) return 'almost certainly';
  if (share >= 0.6) return 'probably';
  return share >= 0.35 ? 'most likely' : 'perhaps';
}

/** "probably the wiring to the sensor"; "the sensor itself or the wiring to the sensor: the log does not settle it". */
export function causeText(zone: ZoneFinding): string {
  const [first, second] = rankedCauses(zone);
  if (!first) return causePlaces.none;
  if (second && second[1] >= besideShare * first[1] && first[1] < 0.6) {
    return `${causePlaces[first[0]]} or ${causePlaces[second[0]]}: the log does not settle which`;
  }
  return `${likelihood(first[1])} ${causePlaces[first[0]]}`;
}

/** What the zone has, in one or two plain sentences. */
export function verdict(zone: ZoneFinding): Phrase {
  if (zone.status === 'healthy') return plain('No sign of a fault.');
  if (zone.status === 'insufficient-data') return plain('This log says too little to judge the zone.');
  const seen = leadingSymptom(zone.symptoms);
  const cause = sentence(plain(causeText(zone)));
  return seen ? phrase`${cause} ${sentence(seen.says)}` : cause;
}

/** Why a zone could not be judged. */
export function whyUntold(zone: ZoneFinding): string {
  return zone.unable.map(({ why }) => why).join(' ') || 'Nothing in the log speaks for or against a fault.';
}
