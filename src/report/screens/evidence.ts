import { causes } from '../../model/cause.js';
import type { TermNote, ZoneFinding } from '../../model/findings.js';
import { html, type Html } from '../text/html.js';
import { numberText, percentText } from '../text/numbers.js';
import { plain, phraseHtml } from '../text/phrase.js';
import { causeWords } from '../text/words.js';
import { sentence } from '../sentences/symptom.js';
import { untoldOf } from '../sentences/untold.js';
import { reasonPhrase } from '../sentences/verdict.js';
import { swatch } from './marks.js';

/** The sum behind the verdict: what the log shows, and how much each sign speaks for or against each cause. */
export function evidence(zone: ZoneFinding): Html {
  return html`<section class="evidence off-sheet" aria-label="Why">
    <h3>Why: evidence for and against</h3>
    ${zone.terms.length === 0 ? html`<p>No sign speaks for or against a fault.</p>` : termTable(zone)}
    ${
      zone.unable.length > 0 &&
      html`<h4>What this log cannot tell here</h4>
        <ul>
          ${untoldOf(zone).map(({ what, why }) => html`<li><strong>${what}:</strong> ${phraseHtml(reasonPhrase(why))}</li>`)}
        </ul>`
    }
  </section>`;
}

function termTable({ terms, prior, probabilities }: ZoneFinding): Html {
  return html`<div class="wide" tabindex="0" role="region" aria-label="The sum behind the verdict">
      <table class="plain terms">
        <thead>
          <tr>
            <th scope="col">What the log shows</th>
            ${causes.map((cause) => html`<th scope="col" class="number">${swatch(cause)} ${causeWords[cause]}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${terms.map((term) => termRow(term))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Before any evidence</th>
            ${causes.map((cause) => html`<td>${addText(prior[cause])}</td>`)}
          </tr>
          <tr class="total">
            <th scope="row">Sum, as probability</th>
            ${causes.map((cause) => html`<td>${percentText(probabilities[cause])}</td>`)}
          </tr>
        </tfoot>
      </table>
    </div>
    <p class="note">
      Each number is added to the logarithm of the odds: +0.7 doubles the odds of a cause, −0.7 halves them. The sums
      are scaled so that all causes together make 100 %.
    </p>`;
}

function termRow(term: TermNote): Html {
  return html`<tr>
    <th scope="row">
      ${phraseHtml(sentence(plain(term.says)))}${term.value < 0.995 && html` <span class="faint">applies ${percentText(term.value)}</span>`}
    </th>
    ${causes.map((cause) => addCell(term.adds[cause]))}
  </tr>`;
}

function addCell(adds: number | undefined): Html {
  if (adds === undefined || Math.abs(adds) < 0.005) return html`<td>·</td>`;
  return html`<td class="${adds > 0 ? 'adds-for' : 'adds-against'}">${addText(adds)}</td>`;
}

function addText(adds: number | undefined): string {
  if (adds === undefined) return '·';
  return `${adds > 0 ? '+' : ''}${numberText(adds, 2)}`;
}
