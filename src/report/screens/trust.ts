import type { Findings } from '../../model/findings.js';
import { html, type Html } from '../text/html.js';
import { nameHtml, zoneOnMachine } from '../text/names.js';
import { counted, numberText, percentText, secondsText } from '../text/numbers.js';
import { causeWords, changeWords } from '../text/words.js';
import { causeList } from './cause-list.js';
import { cautionBox } from './caution-box.js';
import type { Context } from './context.js';
import { dataRead } from './data-read.js';
import { dataTable } from './figure.js';
import { cannotTell, gaps, missingColumns, problems } from './limits.js';
import { recordSharesPart } from './record-shares.js';

/** How far to trust the report: what was read, what was left out, what was assumed, and by which methods. */
export function trustScreen(context: Context): Html {
  const { findings, clock } = context;
  return html`<section id="trust" class="view" aria-labelledby="trust-title">
    <h2 id="trust-title" tabindex="-1">How far to trust this</h2>
    <p class="lead">${readLead(findings)}</p>
    ${cautionBox()}
    <h3>Data read</h3>
    ${dataRead(findings)}
    <p class="note">Times are in the clock of ${clock.timezone}.</p>
    ${problems(findings)} ${gaps(findings)} ${shift(findings)} ${assumptions(findings.assumptions)}
    ${missingColumns(findings)} ${cannotTell(findings)} ${since(context)} ${record(findings)}
    ${recordSharesPart(findings)} ${methods()} ${causeList(findings)}
  </section>`;
}

function readLead({ sources, zones }: Findings): string {
  const read = sources.reduce((sum, { rowsRead }) => sum + rowsRead, 0);
  const rejected = sources.reduce((sum, { rowsRejected }) => sum + rowsRejected, 0);
  const left = rejected === 0 ? 'none was left out' : `${counted(rejected, 'row')} left out, each counted below`;
  return `${counted(read, 'row')} read from ${counted(sources.length, 'file')}, ${left}. ${counted(zones.length, 'zone')} found.`;
}

function shift({ alarms }: Findings): Html | null {
  if (!alarms.hasLog) return null;
  const seconds = alarms.clockShiftSeconds;
  if (seconds === null)
    return html`<h3>Clocks</h3>
      <p>Whether the alarm clock agrees with the temperature log could not be told.</p>
      ${ownClocks(alarms)}`;
  const others = (alarms.clockShiftsByMachine ?? []).length > 0 ? ', but for the machines named here' : '';
  const text =
    seconds === 0 ? `The alarm clock agrees with the temperature log${others}.` : moved('the alarm times', seconds);
  return html`<h3>Clocks</h3>
    <p>${text}</p>
    ${ownClocks(alarms)}`;
}

function moved(what: string, seconds: number): string {
  return `${secondsText(Math.abs(seconds))} were ${seconds > 0 ? 'added to' : 'taken off'} ${what} to match the temperature log.${isSummerHour(seconds) ? ' An hour is what summer time makes: one of the two clocks does not follow it.' : ''}`;
}

/** An hour, but for the little that clocks differ besides (own choice). */
function isSummerHour(seconds: number): boolean {
  return Math.abs(Math.abs(seconds) - 3600) <= 120;
}

/** Machines with an alarm recorder of their own, whose clock is off. */
function ownClocks({ clockShiftsByMachine = [] }: Findings['alarms']): Html | null {
  if (clockShiftsByMachine.length === 0) return null;
  return html`<ul>
    ${clockShiftsByMachine.map(({ machine, shiftSeconds }) => html`<li>${nameHtml(machine)}: ${moved('its alarm times', shiftSeconds)}</li>`)}
  </ul>`;
}

function assumptions(items: readonly string[]): Html {
  return html`<h3>Assumptions</h3>
    ${
      items.length === 0
        ? html`<p>None beyond how each file was understood, as told above.</p>`
        : html`<ul>
            ${items.map((item) => html`<li>${item}</li>`)}
          </ul>`
    }`;
}

function since({ findings, clock }: Context): Html | null {
  const { history } = findings;
  if (!history) return null;
  return html`<h3>Since the last report</h3>
    <p>
      ${counted(history.runs - 1, 'earlier report')}${history.previousEnd && html`, the last up to ${clock.dateTime(history.previousEnd)}`}.
    </p>
    <ul>
      ${history.changes.map(({ zone, machine, change, says }) => html`<li>${nameHtml(zoneOnMachine({ zone, machine: machine ?? zone }))}: <strong>${changeWords[change]}</strong>. ${says}</li>`)}
    </ul>`;
}

function record({ trackRecord }: Findings): Html | null {
  if (!trackRecord || trackRecord.confirmed === 0) {
    return html`<h3>How often earlier verdicts were right</h3>
      <p>Not known yet: no verdict has been compared with what maintenance found.</p>`;
  }
  const rows = trackRecord.byCause.map(({ cause, said, right, low, high }) => [
    (causeWords as Readonly<Record<string, string>>)[cause] ?? cause,
    numberText(said),
    numberText(right),
    `${percentText(low)} to ${percentText(high)}`,
  ]);
  return html`<h3>How often earlier verdicts were right</h3>
    <p>${trackRecord.right} of ${trackRecord.confirmed} confirmed by what maintenance found.</p>
    <div class="wide" tabindex="0" role="region" aria-label="Earlier verdicts">
      ${dataTable(['Cause', 'Said', 'Right', 'True share, 95 % limits'], rows)}
    </div>`;
}

function methods(): Html {
  return html`<h3>How it is reckoned</h3>
    <ul>
      <li>
        The controller holds the reading at the set point, so a drifting sensor looks perfect. Drift is looked for where
        the loop is not in charge: in cold soaks against the neighbours, and in the output that the zone needs.
      </li>
      <li>
        Ohms and millivolts to expect: IEC 60751 for platinum sensors, ITS-90 reference functions (NIST Monograph 175)
        for thermocouples.
      </li>
      <li>
        Probabilities are a sum of named terms in log-odds, fitted on simulated plants with known faults; each zone’s
        page shows its sum. All causes together make 100 %.
      </li>
      <li>
        A permanent clean open without history may be the element or the wire: the log cannot tell. Measuring at both
        ends of the cable settles it.
      </li>
      <li>
        Alarm measures: ISA-18.2, IEC 62682, EEMUA 191. Limits of times between failures: NIST/SEMATECH e-Handbook of
        Statistical Methods, 8.4.5.1.
      </li>
      <li>Charts show the lowest and the highest reading of every bucket, so thinning hides no extreme.</li>
    </ul>`;
}
