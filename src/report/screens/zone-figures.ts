import type { ZoneFinding } from '../../model/findings.js';
import { MINUTE_MS } from '../../model/time-units.js';
import { html, type Html } from '../text/html.js';
import { isSameZone } from '../text/names.js';
import { counted, numberText, withUnit } from '../text/numbers.js';
import { difference, phrase, phraseHtml } from '../text/phrase.js';
import { toleranceAtRoom } from '../embed/chart-data.js';
import type { Context } from './context.js';
import { figure } from './figure.js';

const traceTools = html`<div class="tools off-sheet" role="group" aria-label="Move along the trace">
  <button type="button" data-zoom="all">Whole window</button>
  <button type="button" data-zoom="earlier">← Earlier</button>
  <button type="button" data-zoom="later">Later →</button>
  <button type="button" data-zoom="closer">Closer</button>
  <button type="button" data-zoom="wider">Wider</button>
  <span class="shown" role="status"></span>
</div>`;

export function traceFigure(zone: ZoneFinding): Html {
  if (!zone.trace || zone.trace.timeMs.length === 0) return html`<p>These findings hold no trace of this zone.</p>`;
  const minutes = ((zone.trace.timeMs[1] ?? 0) - zone.trace.timeMs[0]!) / MINUTE_MS;
  const every = minutes > 0 ? withUnit(Math.round(minutes), 'min') : 'one sample';
  const hasSetpoint = zone.trace.setpointDegC.some((value) => value !== null);
  const hasRunning = zone.trace.runningShare.some((value) => value !== null);
  return figure({
    chart: 'trace',
    title: 'Trace',
    says: `Trace of the reading with set point, output, running times and alarms; ${counted(zone.symptoms.length, 'fault')} marked. The list below says the same in words.`,
    note: html`The band runs from the lowest to the highest reading of every ${every}, so no extreme is lost.
      ${hasSetpoint && 'Dashes: set point. '}${hasRunning && 'Grey behind: machine running. '}
      ${zone.symptoms.length > 0 && 'Numbers: faults, as listed below. '}${zone.repairs.length > 0 && 'Diamonds: repairs. '}
      <span class="off-sheet off-print"
        >Drag across the chart to look closer, or use the buttons; point at it for its numbers.</span
      >`,
    tools: traceTools,
  });
}

export function zoneChartFigures(zone: ZoneFinding, context: Context): Html {
  return html`${soakFigure(zone, context)} ${dutyFigure(zone)} ${opensFigure(zone, context)}`;
}

function soakFigure(zone: ZoneFinding, { findings }: Context): Html {
  const curve = findings.history?.offsets.find((entry) => isSameZone(entry, zone));
  const soakCount = Math.max(zone.soaks.length, curve?.points.length ?? 0);
  if (soakCount === 0) {
    return html`<div class="figure">
      <h3>Cold offset from soak to soak</h3>
      <p>No cold soak in this log, so a slow drift cannot be told this way.</p>
    </div>`;
  }
  const toleranceDegC = toleranceAtRoom(zone);
  const tolerance =
    toleranceDegC === null
      ? html`No tolerance is known for this sensor.`
      : phraseHtml(phrase`The band is the sensor’s own tolerance there, ± ${difference(toleranceDegC, 2)}.`);
  return figure({
    chart: 'soaks',
    title: 'Cold offset from soak to soak',
    says: `Offset against the neighbours in ${counted(soakCount, 'cold soak')}; the numbers are in the table below.`,
    note: html`Heaters off long enough, every zone comes to the same air: what is left is the zone’s own error.
    ${tolerance}
    ${soakCount > zone.soaks.length && html`${counted(soakCount - zone.soaks.length, 'soak')} of them from the weeks before, kept in the history folder.`}
    ${repairNote(zone)}`,
    numbers: 'made in the page',
  });
}

/** Before and after a repair are two lives. */
function repairNote({ repairs }: ZoneFinding): string {
  return repairs.length > 0 ? 'Dotted, with a diamond: repairs; before and after one are judged apart.' : '';
}

function dutyFigure(zone: ZoneFinding): Html {
  if (zone.duty.length === 0) {
    return html`<div class="figure">
      <h3>Output beyond what past and neighbours explain</h3>
      <p>This log has no settled stretch with an output to compare.</p>
    </div>`;
  }
  return figure({
    chart: 'duty',
    title: 'Output beyond what past and neighbours explain',
    says: `Output at rest beyond what the zone’s past and its neighbours explain, in ${counted(zone.duty.length, 'settled stretch', 'settled stretches')}; the numbers are in the table below.`,
    note: html`Above 0 the zone needs more heat than before: its sensor reads low, or part of the heater is gone. Below
    0 it needs less: its sensor reads high. Load moves all zones of a machine and is taken off. Squares: settled
    stretches; line: the middle of each day. ${repairNote(zone)}`,
    numbers: 'made in the page',
  });
}

function opensFigure(zone: ZoneFinding, { clock }: Context): Html {
  const total = zone.opensByDay.reduce((sum, { running, stopped }) => sum + running + stopped, 0);
  if (total === 0)
    return html`<div class="figure">
      <h3>Opens per day</h3>
      <p>No open circuit in this window.</p>
    </div>`;
  return figure({
    chart: 'opens',
    title: 'Opens per day',
    says: `${counted(total, 'open circuit')} by day; the numbers are in the table below.`,
    note: 'Opens that come only while the machine moves point to a cable or terminal; opens that do not care point to the element.',
    numbers: {
      head: ['Day', 'Running', 'Stopped'],
      rows: zone.opensByDay.map(({ day, running, stopped }) => [
        clock.date(day),
        numberText(running),
        numberText(stopped),
      ]),
    },
  });
}
