import type { ZoneFinding } from '../../model/findings.js';
import { alike } from '../text/alike.js';
import type { Phrase } from '../text/phrase.js';
import { idWords } from '../text/words.js';
import { reasonPhrase, withoutZone } from './verdict.js';

/** Named up to this many, where one reason holds for more. */
const mostNamed = 3;

export interface Untold {
  /** "cool down, heat up"; "cool down, heat up, slow drift and 20 more". */
  readonly what: string;
  readonly why: string;
}

/** What the log cannot tell of a zone: each reason once, with the detectors that it holds for. */
export function untoldOf({ zone, unable }: ZoneFinding): readonly Untold[] {
  return [...alike(unable, ({ why }) => why)].map((same) => {
    const names = same.slice(0, mostNamed).map(({ detector }) => idWords(detector));
    const more = same.length - names.length;
    return { what: `${names.join(', ')}${more > 0 ? ` and ${more} more` : ''}`, why: withoutZone(same[0].why, zone) };
  });
}

/** Why a zone could not be judged, each reason once. */
export function whyUntold(zone: ZoneFinding): Phrase {
  const reasons = untoldOf(zone).map(({ why }) => why);
  return reasonPhrase(reasons.join(' ') || 'Nothing in the log speaks for or against a fault.');
}
