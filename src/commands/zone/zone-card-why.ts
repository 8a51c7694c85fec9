import { causes } from '../../model/cause.js';
import type { TermNote } from '../../model/findings.js';
import { errorBasis } from '../../report/sentences/reading-error.js';
import { recordShareHeads, recordShareRows, recordShareSays } from '../../report/sentences/record-shares.js';
import { untoldOf } from '../../report/sentences/untold.js';
import { reasonPhrase } from '../../report/sentences/verdict.js';
import { numberText, percentText } from '../../report/text/numbers.js';
import { causeWords } from '../../report/text/words.js';
import { bullet, cardText, type Card } from './zone-card-parts.js';
import { tableLines } from '../terminal/table.js';
import { safeText, wrapText } from '../terminal/text-width.js';

/** The sum: what each sign adds to the log-odds of each cause, a sign and its numbers below one another. */
export function whyLines(card: Card): readonly string[] {
  const { zone, unit, width, colours } = card;
  const added = (adds: TermNote['adds']): string =>
    causes
      .flatMap((cause) => {
        const value = adds[cause];
        if (value === undefined || Math.abs(value) < smallestAdd) return [];
        return [`${causeWords[cause]} ${value > 0 ? '+' : ''}${numberText(value, 1)}`];
      })
      .join(', ');
  const lines = (says: string, numbers: string): readonly string[] => [
    ...bullet(safeText(says), width),
    ...wrapText(numbers, width - 6).map((line) => colours.faint(`      ${line}`)),
  ];
  const shares = causes.map((cause) => `${causeWords[cause]} ${percentText(zone.probabilities[cause])}`);
  const unable = untoldOf(zone).flatMap(({ what, why }) =>
    bullet(cardText(reasonPhrase(`${what}: ${why}`), unit), width),
  );
  return [
    '',
    ...wrapText('Why (log-odds that each sign adds: +0.7 doubles the odds of a cause)', width).map(colours.bold),
    ...lines('Before any evidence', added(zone.prior)),
    ...zone.terms.flatMap(({ says, adds }) => lines(`${says.charAt(0).toUpperCase()}${says.slice(1)}`, added(adds))),
    ...lines('Sum, as probability', shares.join(', ')),
    ...(unable.length > 0 ? [colours.bold('What the log cannot tell here'), ...unable] : []),
    ...errorLines(card),
    ...recordLines(card),
  ];
}

/** Which method gave the size of the reading error. */
function errorLines({ zone, unit, width, colours }: Card): readonly string[] {
  const basis = errorBasis(zone);
  return basis.length === 0 ? [] : [colours.bold('Reading error'), ...bullet(cardText(basis, unit), width)];
}

/** What the plant's own record made of the shares before any evidence, where one is kept. */
function recordLines({ findings: { recordShares }, width, colours }: Card): readonly string[] {
  if (!recordShares) return [];
  const [cause, ...numbers] = recordShareHeads;
  const columns = [{ head: cause }, ...numbers.map((head) => ({ head, align: 'right' as const }))];
  return [
    '',
    ...wrapText('What was found at this plant (shares among faults)', width).map(colours.bold),
    ...tableLines(columns, recordShareRows(recordShares), width - 2).map((line) => `  ${line}`),
    ...recordShareSays(recordShares).flatMap((says) => bullet(says, width)),
  ];
}

/** Smaller ones would be written as 0.0. */
const smallestAdd = 0.05;
