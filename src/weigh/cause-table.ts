import { causes, type Cause } from '../model/cause.js';
import type { CauseRow } from '../model/findings.js';
import { softmax } from '../maths/log-odds.js';
import { causeNotes } from './cause-notes.js';
import type { Strengths } from './strengths.js';
import type { Term } from './term.js';

/** Terms named for and against each cause; the rest are in strengths.json. */
const NAMED = 4;

/** Every cause with its share before evidence, the terms that speak loudest for and against it, and what stays open. */
export function causeTable(strengths: Strengths, terms: readonly Term[]): CauseRow[] {
  const shares = softmax(causes.map((cause) => strengths.prior[cause]));
  return causes.map((cause, i) => ({
    cause,
    priorShare: shares[i] ?? 0,
    ...causeNotes[cause],
    for: loudest(cause, 1, strengths, terms),
    against: loudest(cause, -1, strengths, terms),
  }));
}

function loudest(cause: Cause, sign: 1 | -1, strengths: Strengths, terms: readonly Term[]): CauseRow['for'] {
  return terms
    .map(({ id, says }) => ({ term: id, says, logOdds: strengths.terms[id]?.[cause] ?? 0 }))
    .filter(({ logOdds }) => logOdds * sign > 0)
    .sort((a, b) => sign * (b.logOdds - a.logOdds))
    .slice(0, NAMED);
}
