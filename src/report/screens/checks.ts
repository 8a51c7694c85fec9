import type { Check, CheckOutcome } from '../../model/check.js';
import type { ZoneFinding } from '../../model/findings.js';
import { html, joined, raw, type Html } from '../text/html.js';
import { phraseFromText, phraseHtml } from '../text/phrase.js';
import { causeWords, placeWords } from '../text/words.js';
import { conditionText, expectedText, isComparable } from '../sentences/expected.js';
import { firstStep, whatToBring } from '../sentences/next-step.js';
import { swatch } from './marks.js';

/** What to measure: the order, the numbers to expect, and what each result means. */
export function checksBlock(zone: ZoneFinding, title: string): Html {
  return zone.status === 'healthy' ? valuesBlock(zone, title) : stepsBlock(zone, title);
}

/** At a healthy zone nothing is to be measured; the values stay, to compare a neighbour with. */
function valuesBlock({ checks }: ZoneFinding, title: string): Html {
  const known = checks.filter(({ kind, expected }) => kind === 'measure' && expected.some(isComparable));
  return html`<section class="checks" aria-labelledby="${title}">
    <h3 id="${title}">What its sensor gives when all is well</h3>
    ${
      known.length === 0
        ? html`<p>The sensor type is not known, so no numbers can be given. Name it in plant.yaml.</p>`
        : html`<p>Locked out, leads off the input; to compare with, nothing needs to be measured here.</p>
            <ul>
              ${known.map(valueItem)}
            </ul>`
    }
  </section>`;
}

function valueItem({ where, between, power, expected }: Check): Html {
  const values = expected.map((value) => {
    const condition = conditionText(value);
    return html`<b>${phraseHtml(expectedText(value))}</b>${condition.length > 0 && html` ${phraseHtml(condition)}`}`;
  });
  return html`<li>
    ${placeWords[where]}${power === 'live' && ' (power on: authorised people only)'}${between.length > 0 && `, between ${between.join('; ')}`}:
    ${joined(values, '; ')}
  </li>`;
}

function stepsBlock(zone: ZoneFinding, title: string): Html {
  const prepare = zone.checks.filter(({ kind }) => kind === 'prepare');
  const measure = zone.checks.filter(({ kind }) => kind === 'measure');
  return html`<section class="checks" aria-labelledby="${title}">
    <h3 id="${title}">What to measure</h3>
    <p class="first-step"><strong>First:</strong> ${phraseHtml(firstStep(zone))}</p>
    <p class="bring"><strong>Bring:</strong> ${joined(whatToBring(zone), '; ')}.</p>
    ${prepare.map(({ says }) => html`<p class="prepare"><strong>Prepare:</strong> ${phraseHtml(phraseFromText(says))}</p>`)}
    ${
      measure.length > 0
        ? html`<p>Every step locked out and proved dead, unless it says power on.</p>
            ${checkTable(measure)}`
        : html`<p>
            The sensor type is not known, so no numbers can be given. Name it in plant.yaml, or measure at the sensor’s
            own connector and again at the cabinet and compare with a healthy neighbour.
          </p>`
    }
  </section>`;
}

/** Cards on a phone, a table elsewhere; so the roles are written out. */
function checkTable(checks: readonly Check[]): Html {
  const head = ['Step', 'Where and what', 'Expect', 'Measured', 'What it means'] as const;
  return html`<table class="check-table" role="table" aria-label="Measurements in order">
    <thead role="rowgroup">
      <tr role="row">
        ${head.map((name) => html`<th role="columnheader" scope="col" class="${name === 'Measured' ? 'on-sheet' : ''}">${name}</th>`)}
      </tr>
    </thead>
    <tbody role="rowgroup">
      ${checks.map((check, index) => checkRow(check, index))}
    </tbody>
  </table>`;
}

function checkRow(check: Check, index: number): Html {
  return html`<tr role="row">
    <td role="cell" data-label="Step"><span class="rank">${index + 1}</span></td>
    <td role="cell" data-label="Where and what">
      <strong>${placeWords[check.where]}</strong>
      ${check.power === 'live' && html`<span class="live">Power on.</span>`} ${phraseHtml(phraseFromText(check.says))}
      ${check.between.length > 0 && html`<span class="between">Between ${joined(check.between, '; ')}.</span>`}
      <span class="source">${check.source}</span>
    </td>
    <td role="cell" data-label="Expect">
      ${check.expected.map(
        (value) =>
          html`<span class="expect"
            ><b>${phraseHtml(expectedText(value))}</b> ${phraseHtml(conditionText(value))}</span
          >`,
      )}
    </td>
    <td role="cell" class="on-sheet measured" data-label="Measured"></td>
    <td role="cell" data-label="What it means">
      <ul class="outcomes">
        ${joined(check.outcomes.map(outcomeItem), raw(' '))}
      </ul>
    </td>
  </tr>`;
}

function outcomeItem({ says, points }: CheckOutcome): Html {
  return html`<li>
    ${phraseHtml(phraseFromText(says))}${points && html` <span class="points">${swatch(points)}${causeWords[points]}</span>`}
  </li>`;
}
