import { causes, type Cause } from '../../model/cause.js';
import type { ZoneFinding } from '../../model/findings.js';
import { phrase, phraseFromText, plain, type Phrase } from '../text/phrase.js';
import { causePlaces } from '../text/words.js';
import { leadingSymptoms, sentence, type SymptomText } from './symptom.js';

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

/** "probably the wiring to the sensor"; "the sensor itself or the wiring to the sensor: the log does not settle which". */
export function causeText(zone: ZoneFinding): string {
  const [first, second] = rankedCauses(zone);
  if (!first) return causePlaces.none;
  if (second && second[1] >= besideShare * first[1] && first[1] < 0.6) {
    return `${causePlaces[first[0]]} or ${causePlaces[second[0]]}: the log does not settle which`;
  }
  return `${likelihood(first[1])} ${causePlaces[first[0]]}`;
}

/** What the zone has, in a few plain sentences: the cause, what shows it, and the comparison that settled it. */
export function verdict(zone: ZoneFinding): Phrase {
  if (zone.status === 'healthy') return healthyText(zone);
  if (zone.status === 'insufficient-data') return plain('This log says too little to judge the zone.');
  const said = [plain(causeText(zone)), ...reasons(zone).map(({ says }) => says)];
  return said.map((part, i) => phrase`${i > 0 ? ' ' : ''}${sentence(part)}`).flat();
}

/** A sign that does not make a verdict is named all the same: it may be the beginning of one. */
function healthyText({ symptoms }: ZoneFinding): Phrase {
  const [first] = leadingSymptoms(symptoms, 'none').filter(({ isOnTrace }) => isOnTrace);
  return first === undefined ? plain('No sign of a fault.') : phrase`No fault is likely. What was seen: ${first.says}.`;
}

/** Comparisons from this weight on are no chance; see `unlessChance`. */
const settling = 90;

function reasons(zone: ZoneFinding): readonly SymptomText[] {
  const [cause] = rankedCauses(zone)[0]!;
  const signs = leadingSymptoms(zone.symptoms, cause);
  const seen = signs.find(({ isOnTrace }) => isOnTrace);
  const compared = signs.find(
    ({ isOnTrace, speaksFor, weight }) => !isOnTrace && weight >= settling && speaksFor.includes(cause),
  );
  return [seen, compared].filter((sign) => sign !== undefined);
}

/** Why a detector cannot tell; degrees in it are sizes of what does not show. */
export function reasonPhrase(why: string): Phrase {
  return phraseFromText(why, 'difference');
}

/** "Zone Front jaw heats up within 4 samples." → "Heats up within 4 samples.", where the zone is named already. */
export function withoutZone(why: string, zone: string): string {
  for (const name of [`Zone ${zone}: `, `Zone ${zone} `]) {
    if (!why.startsWith(name)) continue;
    const rest = why.slice(name.length);
    return rest.charAt(0).toUpperCase() + rest.slice(1);
  }
  return why;
}
