import type { Findings } from '../../model/findings.js';
import { recordShareHeads, recordShareRows, recordShareSays } from '../sentences/record-shares.js';
import { html, type Html } from '../text/html.js';
import { dataTable, wide } from './figure.js';

/** What the plant's own record made of the shares before any evidence. */
export function recordSharesPart({ recordShares }: Findings): Html | null {
  if (!recordShares) return null;
  return html`<h3>What was found at this plant</h3>
    <p>${recordShareSays(recordShares).join(' ')}</p>
    ${wide('Shares among faults', dataTable(recordShareHeads, recordShareRows(recordShares)))}`;
}
