import type { CauseRow, Findings } from '../../model/findings.js';
import { html, type Html } from '../text/html.js';
import { numberText, percentText } from '../text/numbers.js';
import { causeWords } from '../text/words.js';
import { dataTable } from './figure.js';

/** What speaks for and against each cause, and what no log can tell of it. */
export function causeList({ causes }: Findings): Html | null {
  if (!causes || causes.length === 0) return null;
  const rows = causes.map((row) => [
    html`<strong>${causeWords[row.cause]}</strong>`,
    html`${percentText(row.priorShare)} <span class="faint">${row.priorNote}</span>`,
    evidence(row.for),
    evidence(row.against),
    row.cannotTell,
  ]);
  return html`<h3>How the causes are weighed</h3>
    <p>
      The numbers are log-odds at full value: +0.7 doubles the odds of the cause, −0.7 halves them. Each can be set in
      plant.yaml.
    </p>
    <div class="wide" tabindex="0" role="region" aria-label="How the causes are weighed">
      ${dataTable(['Cause', 'Before any evidence', 'Speaks for it most', 'Speaks against it most', 'No log can tell'], rows)}
    </div>`;
}

function evidence(terms: CauseRow['for']): Html | string {
  if (terms.length === 0) return 'nothing of its own';
  return html`<ul>
    ${terms.map(({ says, logOdds }) => html`<li>${says} <span class="faint">${numberText(logOdds, 1)}</span></li>`)}
  </ul>`;
}
