import type { Cause } from '../../model/cause.js';
import type { SymptomNote } from '../../model/findings.js';
import { minutesText, numberText, withUnit } from '../text/numbers.js';
import type { Phrase } from '../text/phrase.js';

/** Gives a fact by its name, NaN when the symptom does not have it; what was asked for counts as said. */
export type Ask = (name: string) => number;

/** How to say what one detector saw. A detector without one gets its name and its facts. */
export interface Spoken {
  /** Id of the detector. */
  readonly detector: string;
  /** Causes of which it may be the reason in a verdict. */
  readonly speaksFor: readonly Cause[];
  /** How much a reader wants it as the reason of a verdict: higher comes first. */
  readonly weight: (ask: Ask) => number;
  /** False for comparisons, which have no place of their own on the trace. */
  readonly isOnTrace: boolean;
  /** One sentence without a full stop and without times. */
  readonly say: (ask: Ask, symptom: SymptomNote) => Phrase;
}

export function always(weight: number): Spoken['weight'] {
  return () => weight;
}

/** A comparison that chance explains is no reason of a verdict. */
const notByChance = 0.01;

/** The weight where the comparison's chance is small, and next to nothing where it is not. */
export function unlessChance(weight: number, ...chances: readonly string[]): Spoken['weight'] {
  return (ask) => (chances.some((name) => ask(name) < notByChance) ? weight : 10);
}

/** "not once", "once", "twice", "41 times". */
export function timesText(count: number): string {
  if (count === 0) return 'not once';
  if (count === 1) return 'once';
  return count === 2 ? 'twice' : `${numberText(count)} times`;
}

/** "12 times in 41 h". Rates far below one an hour say nothing to anybody; counts and hours do. */
export function timesInHours(count: number, hours: number): string {
  return `${timesText(count)} in ${hours >= 10 ? withUnit(hours, 'h') : minutesText(hours * 60)}`;
}

/** ", the longest for 3 h", or ", for 3 h" of a single one; '' where no length is known. */
export function longestText(minutes: number, count: number): string {
  if (!(minutes > 0)) return '';
  return count === 1 ? `, for ${minutesText(minutes)}` : `, the longest for ${minutesText(minutes)}`;
}

/** "higher" or "lower", "above" or "below": a word for the sign. */
export function bySign(value: number, above: string, below: string): string {
  return value < 0 ? below : above;
}
