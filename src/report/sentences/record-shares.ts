import type { RecordShares } from '../../model/history-findings.js';
import { counted, numberText, percentText } from '../text/numbers.js';
import { causeWords } from '../text/words.js';

export const recordShareHeads = ['Cause', 'Fitted share', 'Found here', 'Share used'] as const;

/** One row per cause of a fault, under `recordShareHeads`. */
export function recordShareRows({ byCause }: RecordShares): string[][] {
  return byCause.map(({ cause, fittedShare, foundCount, usedShare, isSetByPlant }) => [
    causeWords[cause],
    percentText(fittedShare),
    numberText(foundCount),
    `${percentText(usedShare)}${isSetByPlant ? ', set in plant.yaml' : ''}`,
  ]);
}

/** How the record was used, sentence by sentence. */
export function recordShareSays({ byCause, priorFindings, nothingFoundCount }: RecordShares): string[] {
  const found = byCause.reduce((sum, { foundCount }) => sum + foundCount, 0);
  const worth = `the fitted shares count as much as ${counted(priorFindings, 'finding')}`;
  return [
    found === 0
      ? 'The record holds no fault yet, so the fitted shares stand.'
      : `${counted(found, 'fault')} found at this plant moved the shares of the causes among faults; ${worth}.`,
    'How often a zone has a fault at all stays as fitted: only zones that something speaks against are opened.',
    ...(nothingFoundCount === 0
      ? []
      : [`Opened and found without fault: ${numberText(nothingFoundCount)}; this counts for the verdicts alone.`]),
    'What was found at a zone since its log begins does not count for that zone itself.',
  ];
}
