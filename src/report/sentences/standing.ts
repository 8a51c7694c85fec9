import type { ZoneFinding } from '../../model/findings.js';
import { statusWords } from '../text/words.js';

/** What a reader needs to know of a zone first; a fault that was put right is not one that needs a fitter. */
export type Standing = ZoneFinding['status'] | 'fixed';

export function standingOf({ status, fixed }: Pick<ZoneFinding, 'status' | 'fixed'>): Standing {
  const isFault = status === 'faulty' || status === 'watch';
  return isFault && fixed !== null ? 'fixed' : status;
}

export const standingWords: Readonly<Record<Standing, string>> = { ...statusWords, fixed: 'Put right: confirm it' };
