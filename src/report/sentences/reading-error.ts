import type { OffsetBasis, ZoneFinding } from '../../model/findings.js';
import { phrase, signed, type Phrase } from '../text/phrase.js';

/** "−6.9 °C (−9.1 °C to −4.7 °C)": the one size of a zone's reading error. [] where none is told. */
export function errorSize({ offsetDegC, offsetBasis }: Pick<ZoneFinding, 'offsetDegC' | 'offsetBasis'>): Phrase {
  if (offsetDegC === null) return [];
  if (!offsetBasis) return phrase`${signed(offsetDegC)}`;
  const { lowDegC, highDegC } = offsetBasis;
  return phrase`${signed(offsetDegC)} (${signed(lowDegC)} to ${signed(highDegC)})`;
}

/** Which method gave it and why that one counts; what the others gave stands beside it as evidence. */
export function errorBasis({ offsetBasis }: Pick<ZoneFinding, 'offsetBasis'>): Phrase {
  return offsetBasis ? phrase`${basisText(offsetBasis)} The limits hold 9 times in 10, by its own reckoning.` : [];
}

function basisText({ detector, from, coldDegC, hotDegC }: OffsetBasis): Phrase {
  if (from === 'both' && coldDegC !== null && hotDegC !== null) {
    return phrase`At working temperature, from cold soaks (${signed(coldDegC)}) and duty (${signed(hotDegC)}) together: an error that is the same hot and cold is known best cold, one that grows with heat shows in the duty.`;
  }
  if (from === 'duty') {
    return phrase`From the duty alone, since no cold soak tells it: too large by up to a third where neighbours heat each other.`;
  }
  if (from === 'jump') {
    return phrase`From the jump with which it began, as the log shows it before the loop took it back${hotDegC === null ? [] : phrase`; the duty since then says ${signed(hotDegC)}, too large by up to a third where neighbours heat each other`}.`;
  }
  return detector === 'cold-soak-offset'
    ? phrase`From the last cold soaks against its neighbours: nothing shows that it has changed, so when it came is not told.`
    : phrase`From the cold soaks: the duty tells nothing of it. Hot it may be larger.`;
}
