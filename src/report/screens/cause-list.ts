import type { CauseRow, Findings } from '../../model/findings.js';
import { html, type Html } from '../text/html.js';
import { numberText, percentText } from '../text/numbers.js';
import { causeWords } from '../text/words.js';

/** What speaks for and against each cause, and what no log can tell of it. */
export function causeList({ causes }: Findings): Html | null {
  if (!causes || causes.length === 0) return null;
  return html`<h3>How the causes are weighed</h3>
    <p>
      The numbers are log-odds at full value: +0.7 doubles the odds of the cause, −0.7 halves them. Each can be set in
      plant.yaml.
    </p>
    ${causes.map(causePart)}`;
}

function causePart({ cause, priorShare, priorNote, for: speaksFor, against, cannotTell }: CauseRow): Html {
  return html`<section class="cause">
    <h4>${causeWords[cause]}</h4>
    <p>${percentText(priorShare)} before any evidence. <span class="faint">${priorNote}</span></p>
    <div class="cause-parts">
      <div>
        <h5>Speaks for it most</h5>
        ${evidence(speaksFor)}
      </div>
      <div>
        <h5>Speaks against it most</h5>
        ${evidence(against)}
      </div>
      <div>
        <h5>No log can tell</h5>
        <p>${cannotTell}</p>
      </div>
    </div>
  </section>`;
}

function evidence(terms: CauseRow['for']): Html {
  if (terms.length === 0) return html`<p>nothing of its own</p>`;
  return html`<ul>
    ${terms.map(({ says, logOdds }) => html`<li>${says} <span class="faint">${numberText(logOdds, 1)}</span></li>`)}
  </ul>`;
}
