import type { ZoneFinding } from '../../model/findings.js';
import { html, type Html } from '../text/html.js';
import { isSameZone, machineLine, nameHtml, shortName } from '../text/names.js';
import { counted, minutesText } from '../text/numbers.js';
import { phraseHtml, signed, temperatureHtml } from '../text/phrase.js';
import { changeWords } from '../text/words.js';
import { standingOf } from '../sentences/standing.js';
import { firstStep } from '../sentences/next-step.js';
import { summary } from '../sentences/summary.js';
import { whyUntold } from '../sentences/untold.js';
import { verdict } from '../sentences/verdict.js';
import { cautionBox } from './caution-box.js';
import { zoneAddress, type Context } from './context.js';
import { causeBar, heatMark, mark, statusMark, trendMark } from './marks.js';

/** The first screen: who needs a fitter, what for, and what to do first. */
export function actScreen(context: Context): Html {
  const numbered = context.zones.map((zone, index) => ({ zone, index }));
  const needing = numbered.filter(({ zone }) => zone.status === 'faulty' || zone.status === 'watch');
  const untold = numbered.filter(({ zone }) => zone.status === 'insufficient-data');
  const healthy = numbered.filter(({ zone }) => zone.status === 'healthy');
  return html`<section id="act" class="view open" aria-labelledby="act-title">
    <h2 id="act-title" tabindex="-1">Act on this</h2>
    <p class="lead">${summary(context.findings)}</p>
    ${cautionBox()} ${needing.length > 0 && actTable(needing, context)} ${untold.length > 0 && untoldList(untold)}
    ${healthy.length > 0 && healthyList(healthy)}
  </section>`;
}

type Numbered = readonly { readonly zone: ZoneFinding; readonly index: number }[];

const columns = [
  'Rank',
  'Zone',
  'What it is',
  'Probability by cause',
  'Since, trend',
  'Lost',
  'First thing to do',
] as const;

/** Roles are written out, since the narrow layout turns rows into cards and would lose the table's meaning. */
function actTable(needing: Numbered, context: Context): Html {
  return html`<table class="act-table" role="table" aria-label="Zones that need someone, most urgent first">
    <thead role="rowgroup">
      <tr role="row">
        ${columns.map((name) => html`<th role="columnheader" scope="col">${name}</th>`)}
      </tr>
    </thead>
    <tbody role="rowgroup">
      ${needing.map(({ zone, index }) => actRow(zone, index, context))}
    </tbody>
  </table>`;
}

function actRow(zone: ZoneFinding, index: number, { clock, findings }: Context): Html {
  const change = findings.history?.changes.find((entry) => isSameZone(entry, zone))?.change;
  const cells: readonly (readonly [string, Html])[] = [
    ['Rank', html`<span class="rank">${zone.rank}</span>`],
    [
      'Zone',
      html`<a class="zone-link" href="#${zoneAddress(index)}">${nameHtml(zone.zone)}</a> ${machineLine(zone)}
        ${statusMark(zone)} ${heatMark(zone)}`,
    ],
    ['What it is', phraseHtml(verdict(zone))],
    ['Probability by cause', causeBar(zone.probabilities)],
    [
      'Since, trend',
      html`${zone.onset ? clock.dateTime(zone.onset) : 'not told'}${zone.fixed && html`<br />fixed ${clock.dateTime(zone.fixed)}`}
      ${!zone.fixed && html`<span class="stacked">${trendMark(zone)}</span>`}
      ${change && html`<span class="change">${changeWords[change]}</span>`}`,
    ],
    ['Lost', html`${zone.downtimeMinutes > 0 ? minutesText(zone.downtimeMinutes) : nothingLost(findings)}`],
    ['First thing to do', phraseHtml(firstStep(zone))],
  ];
  return html`<tr role="row" class="row-${standingOf(zone)}">
    ${cells.map(
      ([name, content], i) =>
        html`<td role="${i === 1 ? 'rowheader' : 'cell'}" data-label="${name}"><div class="cell">${content}</div></td>`,
    )}
  </tr>`;
}

function untoldList(untold: Numbered): Html {
  return html`<h3>${mark('insufficient-data')} Could not be judged</h3>
    <ul class="untold">
      ${untold.map(
        ({ zone, index }) =>
          html`<li>
            <a href="#${zoneAddress(index)}">${nameHtml(zone.zone)}</a>
            ${machineLine(zone)} ${phraseHtml(whyUntold(zone))}
          </li>`,
      )}
    </ul>`;
}

/** Names in the folded line; the list below has them all. */
const shownHealthy = 8;

function healthyList(healthy: Numbered): Html {
  return html`<details class="healthy">
    <summary>
      <h3>${mark('healthy')} ${counted(healthy.length, 'healthy zone')}</h3>
      <span class="faint"
        >${healthy
          .slice(0, shownHealthy)
          .map(({ zone }) => shortName(zone.zone))
          .join(', ')}${healthy.length > shownHealthy && ' …'}</span
      >
    </summary>
    <ul>
      ${healthy.map(
        ({ zone, index }) =>
          html`<li>
            <a href="#${zoneAddress(index)}">${nameHtml(zone.zone)}</a>
            ${machineLine(zone)} ${offsetNote(zone)}
          </li>`,
      )}
    </ul>
  </details>`;
}

/** Whether nothing was lost, or nothing tells. */
function nothingLost({ downtime }: Context['findings']): string {
  return downtime.from.length === 0 ? 'not told' : 'none';
}

function offsetNote({ offsetDegC }: ZoneFinding): Html | null {
  return offsetDegC === null
    ? null
    : html`<span class="faint">reads off by ${temperatureHtml(signed(offsetDegC))}</span>`;
}
