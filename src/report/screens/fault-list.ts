import type { ZoneFinding } from '../../model/findings.js';
import { html, joined, type Html } from '../text/html.js';
import { counted } from '../text/numbers.js';
import { phraseHtml } from '../text/phrase.js';
import { idWords } from '../text/words.js';
import { kindText, lengthText } from '../sentences/kinds.js';
import { numberedFaults, otherSigns, type NumberedFault, type SeenSign } from '../sentences/numbered.js';
import { sentence } from '../sentences/symptom.js';
import type { Context } from './context.js';

/** What was seen, numbered as on the trace; then what was only counted; then the last single faults. */
export function faultList(zone: ZoneFinding, context: Context): Html | null {
  const faults = numberedFaults(zone);
  const others = otherSigns(zone);
  if (faults.length + others.length === 0) return null;
  return html`<section class="faults" aria-label="Faults seen">
    <h3>Faults seen, numbered as on the trace</h3>
    <ol>
      ${faults.map((fault) => faultItem(fault, context))}
    </ol>
    ${
      others.length > 0 &&
      html`<ul class="others">
        ${others.map((sign) => html`<li>${phraseHtml(sentence(sign.text.says))} ${numbersOf(sign)}</li>`)}
      </ul>`
    }
    ${lastSingles(zone, context)}
  </section>`;
}

function faultItem(fault: NumberedFault, { clock }: Context): Html {
  const { symptom, text } = fault;
  const isMoment = symptom.start === symptom.end;
  return html`<li>
    <span class="when">${clock.dateTime(symptom.start)}${!isMoment && ` to ${clock.dateTime(symptom.end)}`}</span>
    ${phraseHtml(sentence(text.says))}
    <button
      type="button"
      class="off-sheet small"
      data-from="${clock.wallMs(Date.parse(symptom.start))}"
      data-to="${clock.wallMs(Date.parse(symptom.end))}"
    >
      Show on trace<span class="unseen">: ${phraseHtml(text.says)}</span>
    </button>
    ${numbersOf(fault)}
  </li>`;
}

function numbersOf({ symptom, text }: SeenSign): Html | null {
  if (text.details.length === 0) return null;
  return html`<details class="off-sheet numbers">
    <summary>Its numbers<span class="unseen">: ${phraseHtml(text.says)}</span></summary>
    <p class="faint">${idWords(symptom.detector)}: ${joined(text.details.map(phraseHtml), '; ')}.</p>
  </details>`;
}

/** What a fitter asks first: when was it last. */
const shownSingles = 8;

function lastSingles({ faultMarks = [] }: ZoneFinding, { clock }: Context): Html | null {
  if (faultMarks.length === 0) return null;
  const last = faultMarks.slice(-shownSingles).reverse();
  const isOnlyOne = faultMarks.length === 1;
  return html`<h4>${isOnlyOne ? 'The single fault' : `Last of ${counted(faultMarks.length, 'single fault')}`}</h4>
    <ul class="singles">
      ${last.map(({ start, end, kind }) => {
        const seconds = (Date.parse(end) - Date.parse(start)) / 1000;
        return html`<li>
          <span class="when">${clock.dateTime(start)}</span> ${kindText(kind)}${lengthText(kind, seconds)}
        </li>`;
      })}
    </ul>`;
}
