import type { ZoneFinding } from '../../model/findings.js';
import { html, type Html } from '../text/html.js';
import { machineLine, nameHtml } from '../text/names.js';
import { minutesText, percentText } from '../text/numbers.js';
import { rankedCauses } from '../sentences/verdict.js';
import { causeWords } from '../text/words.js';
import { zoneAddress, type Context } from './context.js';
import { statusMark } from './marks.js';
import { smallTrace } from './small-trace.js';

/** Every zone in one table, with its whole window as a small curve, and a box to find one by its name. */
export function zoneListScreen({ zones, findings, clock }: Context): Html {
  return html`<section id="zones" class="view" aria-labelledby="zones-title">
    <h2 id="zones-title" tabindex="-1">Zones</h2>
    ${
      zones.length === 0
        ? html`<p>No zone was found in these logs.</p>`
        : html`<p class="find">
              <label for="find-zone">Find a zone or machine</label>
              <input id="find-zone" type="search" autocomplete="off" />
              <span id="found" role="status"></span>
            </p>
            <div class="wide" tabindex="0" role="region" aria-label="All zones">
              <table class="plain zone-table">
                <thead>
                  <tr>
                    <th scope="col" class="number">Rank</th>
                    <th scope="col">Zone</th>
                    <th scope="col">Verdict</th>
                    <th scope="col">Likeliest</th>
                    <th scope="col">Since</th>
                    <th scope="col">Lost</th>
                    <th scope="col">Readings, faults above</th>
                  </tr>
                </thead>
                <tbody id="zone-rows">
                  ${zones.map((zone, index) => {
                    return html`<tr>
                      <td class="number">${zone.rank}</td>
                      <th scope="row">
                        <a href="#${zoneAddress(index)}">${nameHtml(zone.zone)}</a> ${machineLine(zone)}
                      </th>
                      <td>${statusMark(zone)}</td>
                      <td>${likeliest(zone)}</td>
                      <td>${zone.onset ? clock.dateTime(zone.onset) : '–'}</td>
                      <td>${zone.downtimeMinutes > 0 ? minutesText(zone.downtimeMinutes) : '–'}</td>
                      <td>${smallTrace(zone, findings)}</td>
                    </tr>`;
                  })}
                </tbody>
              </table>
            </div>`
    }
  </section>`;
}

/** "sensor 95 %"; of a healthy zone how sure that is, of one that cannot be judged nothing. */
function likeliest(zone: ZoneFinding): string {
  if (zone.status === 'insufficient-data') return '–';
  const [cause, share] =
    zone.status === 'healthy' ? (['none', zone.probabilities.none] as const) : rankedCauses(zone)[0]!;
  return `${causeWords[cause]} ${percentText(share)}`;
}
