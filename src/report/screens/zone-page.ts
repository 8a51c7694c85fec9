import type { ZoneFinding } from '../../model/findings.js';
import { html, type Content, type Html } from '../text/html.js';
import { machineBeside, nameHtml, shortName } from '../text/names.js';
import { listText, minutesText, ohmText } from '../text/numbers.js';
import { level, phraseHtml, temperatureHtml } from '../text/phrase.js';
import { sensorName } from '../sentences/next-step.js';
import { errorBasis, errorSize } from '../sentences/reading-error.js';
import { whyUntold } from '../sentences/untold.js';
import { verdict } from '../sentences/verdict.js';
import { cautionBox } from './caution-box.js';
import { checksBlock } from './checks.js';
import { zoneAddress, type Context } from './context.js';
import { evidence } from './evidence.js';
import { factList } from './fact-list.js';
import { faultList } from './fault-list.js';
import { causeBar, heatMark, statusMark, trendMark } from './marks.js';
import { zoneChartFigures, traceFigure } from './zone-figures.js';

/** All there is about one zone; its printed form is the sheet to take to the machine. */
export function zonePage(zone: ZoneFinding, index: number, context: Context): Html {
  const address = zoneAddress(index);
  return html`<section id="${address}" class="view zone" aria-labelledby="${address}-title">
    <p class="steps off-sheet off-print">${neighbourLinks(index, context)}</p>
    <h2 id="${address}-title" tabindex="-1">
      ${nameHtml(zone.zone)}
      ${machineBeside(zone) !== '' && html`<span class="machine">${nameHtml(machineBeside(zone))}</span>`}
    </h2>
    <div class="head">
      <div class="judged">
        <p>${statusMark(zone)} ${heatMark(zone)}</p>
        <p class="lead">${phraseHtml(verdict(zone))}</p>
        ${zone.status === 'insufficient-data' && html`<p>${phraseHtml(whyUntold(zone))}</p>`}
        ${zone.status !== 'insufficient-data' && causeBar(zone.probabilities)} ${basisLine(zone)}
      </div>
      ${zoneFacts(zone, context)}
    </div>
    <p class="print-line off-sheet">
      <button type="button" class="main-button" data-do="sheet">Print the sheet to take to the machine</button>
    </p>
    ${cautionBox()} ${traceFigure(zone)} ${faultList(zone, context)} ${checksBlock(zone, `${address}-checks`)}
    ${evidence(zone)}
    <div class="figures off-sheet">${zoneChartFigures(zone, context)}</div>
    ${repairList(zone, context)}
    <p class="sheet-foot on-sheet">
      Measured by ______________________ Date ______________ What was found ____________________________________________
    </p>
  </section>`;
}

function neighbourLinks(index: number, { zones }: Context): Html {
  const link = (to: number, before: string, after = ''): Content => {
    const zone = zones[to];
    return zone && html`<a href="#${zoneAddress(to)}">${before} <bdi>${shortName(zone.zone)}</bdi>${after}</a>`;
  };
  return html`<a href="#act">All zones that need someone</a> ${link(index - 1, '← Rank before:')}
    ${link(index + 1, 'Next rank:', ' →')}`;
}

function zoneFacts(zone: ZoneFinding, { clock, findings }: Context): Html {
  return factList([
    ['Rank', `${zone.rank} of ${findings.zones.length}`],
    ['Machine', machineBeside(zone) === '' ? zone.machine : null],
    ['Sensor', sensorText(zone)],
    ['Input card', zone.card ?? 'not told'],
    ['Set point', zone.setpointDegC === null ? 'not told' : temperatureHtml(level(zone.setpointDegC))],
    ['Cold room', zone.roomDegC === null ? 'not told' : temperatureHtml(level(zone.roomDegC))],
    ['Since', zone.onset ? clock.dateTime(zone.onset) : null],
    ['Fixed', zone.fixed ? clock.dateTime(zone.fixed) : null],
    ['Trend', zone.trend && !zone.fixed ? trendMark(zone) : null],
    ['Production lost', zone.downtimeMinutes > 0 ? minutesText(zone.downtimeMinutes) : null],
    ['Reads off by', readingError(zone)],
    ['As ohms too many', zone.seriesOhm === null ? null : ohmText(zone.seriesOhm)],
    ['As leak across', zone.shuntOhm === null ? null : ohmText(zone.shuntOhm)],
    ['Leaves tolerance', zone.leavesTolerance ? leavesText(zone.leavesTolerance, findings.window.end, clock) : null],
  ]);
}

/** Why this size and no other, one line below the facts. */
function basisLine(zone: ZoneFinding): Html | null {
  const basis = errorBasis(zone);
  return basis.length === 0 ? null : html`<p class="note">Reading error: ${phraseHtml(basis)}</p>`;
}

function readingError(zone: ZoneFinding): Content {
  if (zone.offsetDegC === null) return 'not told';
  return phraseHtml(errorSize(zone));
}

/** A date in the future is a forecast; one that has passed says only that the band is left. */
function leavesText(time: string, windowEnd: string, clock: Context['clock']): string {
  return Date.parse(time) <= Date.parse(windowEnd) ? 'has left it' : clock.dateWithYear(time);
}

function sensorText({ sensor, wires }: ZoneFinding): string {
  if (!sensor) return 'type not told';
  return `${sensorName(sensor)}${wires ? `, ${wires} wires` : ''}`;
}

function repairList(zone: ZoneFinding, { clock }: Context): Html {
  return html`<section class="repairs" aria-label="History of repairs">
    <h3>History of repairs</h3>
    ${
      zone.repairs.length === 0
        ? html`<p>None in the maintenance list, and none to be told from the log.</p>`
        : html`<ul>
            ${zone.repairs.map(
              ({ time, from, done, found }) =>
                html`<li>
                  <span class="when">${clock.dateTime(time)}</span>
                  ${listText([done, found].filter((text) => text !== ''))}
                  <span class="faint">from the ${from}</span>
                </li>`,
            )}
          </ul>`
    }
  </section>`;
}
