import type { AlarmCount } from '../../model/alarm-findings.js';
import type { Findings } from '../../model/findings.js';
import { html, type Html } from '../text/html.js';
import { nameHtml, zoneOnMachine } from '../text/names.js';
import { counted, minutesText, numberText, percentText, secondsText, shortNumber } from '../text/numbers.js';
import type { Context } from './context.js';
import { factList } from './fact-list.js';
import { dataTable, figure, wide } from './figure.js';

/** What the alarms say: how many, which, and what putting zones right would remove. */
export function alarmPart({ findings, clock }: Context): Html {
  const { alarms } = findings;
  if (!alarms.hasLog)
    return html`<h3>Alarms</h3>
      <p>No alarm log was given, so nothing is said of alarms.</p>`;
  return html`<h3>Alarms</h3>
    ${factList(alarmRates(findings))}
    ${
      alarms.byDay.length > 0 &&
      figure({
        chart: 'alarms',
        title: 'Alarms per day',
        says: 'Alarms per day. The numbers are in the table below.',
        note: html`${
          alarms.floods.length === 0
            ? 'No flood of alarms.'
            : html`${counted(alarms.floods.length, 'flood')} of alarms, ${alarms.floods.length > 1 && 'the largest '}of
              ${Math.max(...alarms.floods.map(({ count }) => count))} alarms.`
        }`,
        numbers: {
          head: ['Day', 'Alarms'],
          rows: alarms.byDay.map(({ day, count }) => [clock.date(day), numberText(count)]),
        },
      })
    }
    <div class="tables">
      ${countTable('Most frequent', 'Alarm', alarms.mostFrequent)}
      ${countTable('Chattering: on and off again and again', 'Alarm', alarms.chattering)}
      ${countTable('Fleeting: gone before anyone can act', 'Alarm', alarms.fleeting)}
      ${countTable('Alarms by machine', 'Machine', alarms.byMachine)}
      ${countTable('Alarms by shift', 'Shift', alarms.byShift)}
      ${countTable('Alarms by priority', 'Priority', alarms.byPriority)}
    </div>
    ${
      alarms.stale.length > 0 &&
      html`<h4>Standing for a day or more</h4>
        <ul>
          ${alarms.stale.map(({ name, since, hours, isActive }) => html`<li>${nameHtml(name)}: since ${clock.dateTime(since)}, ${minutesText(hours * 60)}${isActive && ', still active at the end of the log'}</li>`)}
        </ul>`
    }
    ${removableTable(findings)}
    ${
      alarms.contradictions.length > 0 &&
      html`<h4>Alarms and readings that contradict each other</h4>
        <ul>
          ${alarms.contradictions.map(({ zone, says }) => html`<li>${says.includes(zone) ? says : html`${nameHtml(zone)}: ${says}`}</li>`)}
        </ul>`
    }
    <p class="note">Alarm measures as in ISA-18.2, IEC 62682 and EEMUA 191.</p>`;
}

function alarmRates({ alarms }: Findings): readonly (readonly [string, string])[] {
  const seconds = (value: number | null): string => (value === null ? 'not told' : secondsText(value));
  return [
    ['Alarms', numberText(alarms.activations)],
    ['A day', shortNumber(alarms.perDayMean)],
    ['An hour', shortNumber(alarms.perHourMean)],
    ['Most in 10 minutes', numberText(alarms.perTenMinutesPeak)],
    ['Time in flood', percentText(alarms.shareOfTimeInFlood)],
    ['Until acknowledged', `${seconds(alarms.medianSecondsToAcknowledge)} (median)`],
    ['Until cleared', `${seconds(alarms.medianSecondsToClear)} (median)`],
  ];
}

function countTable(title: string, first: string, rows: readonly AlarmCount[]): Html | null {
  if (rows.length === 0) return null;
  const cells = rows
    .slice(0, 10)
    .map(({ name, count, share, minutesInAlarm }) => [
      nameHtml(name),
      numberText(count),
      percentText(share),
      minutesText(minutesInAlarm),
    ]);
  return html`<div>
    <h4>${title}</h4>
    ${wide(title, dataTable([first, 'Alarms', 'Share', 'Time in alarm'], cells))}
  </div>`;
}

function removableTable({ alarms }: Findings): Html | null {
  if (alarms.removable.length === 0) return null;
  const rows = alarms.removable
    .slice(0, 10)
    .map(({ zone, machine, count, cumulativeShare }) => [
      nameHtml(zoneOnMachine({ zone, machine: machine ?? zone })),
      numberText(count),
      percentText(cumulativeShare),
    ]);
  return html`<h4>What putting zones right would remove</h4>
    ${wide('What putting zones right would remove', dataTable(['Zone', 'Alarms', 'Share with those above'], rows))}
    <p class="note">
      Counted are input alarms, and others while the fault stands. Not counted are alarms that come together with half
      of the machine’s other zones, as at a start or a wash-down: a good sensor raises those, too.
    </p>`;
}
