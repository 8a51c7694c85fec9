import type { Findings, ZoneFinding } from '../../model/findings.js';
import type { Clock } from '../../report/text/clock.js';
import { phraseText, type Phrase, type ShownUnit } from '../../report/text/phrase.js';
import type { Colours, Terminal } from '../terminal/colour.js';
import { safeText, wrapText } from '../terminal/text-width.js';

export interface CardOptions {
  /** Start of what is to be shown, UTC ms. */
  readonly fromMs: number;
  readonly unit: ShownUnit;
  /** All there is: every fault and measurement, and the sum behind the verdict. */
  readonly isWhyWanted: boolean;
  readonly terminal: Terminal;
}

/** What every part of the card is written from. */
export interface Card extends CardOptions {
  readonly zone: ZoneFinding;
  readonly findings: Findings;
  readonly clock: Clock;
  readonly colours: Colours;
  readonly width: number;
}

/** A phrase as text that is safe to print. */
export function cardText(parts: Phrase, unit: ShownUnit): string {
  return safeText(phraseText(parts, unit));
}

/** An entry of a list, indented below its sign. */
export function bullet(says: string, width: number, sign = '-'): readonly string[] {
  const indent = sign.length + 3;
  return wrapText(says, width - indent).map((line, i) => `${i === 0 ? `  ${sign} ` : ' '.repeat(indent)}${line}`);
}
