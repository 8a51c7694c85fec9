import type { AlarmCount } from '../../model/alarm-findings.js';
import type { Findings } from '../../model/findings.js';
import { html, type Content, type Html } from '../text/html.js';
import { nameHtml, shortName } from '../text/names.js';
import { counted, listText, minutesText, numberText, percentText, secondsText, shortNumber } from '../text/numbers.js';
import { bucketWords } from '../text/words.js';
import type { LossRow, LossTables } from '../tables.js';
import type { Context } from './context.js';
import { dataTable, figure } from './figure.js';

/** What sensor and wiring faults cost, against everything else; and what the alarms say. */
export function lostScreen(context: Context, tables: LossTables): Html {
  const { findings } = context;
  return html`<section id="lost" class="view" aria-labelledby="lost-title">
    <h2 id="lost-title" tabindex="-1">Lost time and alarms</h2>
    <p class="lead">${lostLead(findings)}</p>
    ${lostTime(findings, tables)} ${alarmPart(context)}
  </section>`;
}

function lostLead({ downtime, alarms }: Findings): string {
  const lost = downtime.zoneFaultMinutes + downtime.otherMinutes + downtime.unknownMinutes;
  const time =
    downtime.from.length === 0
      ? 'Nothing in these logs tells when production stood still.'
      : `${minutesText(lost)} of production lost, ${minutesText(downtime.zoneFaultMinutes)} of it (${percentText(lost > 0 ? downtime.zoneFaultMinutes / lost : 0)}) to faults of heater zones.`;
  return [time, removableText(alarms)].filter((text) => text !== '').join(' ');
}

/** "Putting right Front jaw, Upper plate 3 and Right edge would remove 55 % of the alarms." */
function removableText({ removable }: Findings['alarms']): string {
  const first = removable.slice(0, 3);
  const last = first.at(-1);
  if (!last || last.cumulativeShare <= 0) return '';
  const names = listText(first.map(({ zone }) => shortName(zone)));
  return `Putting right ${names} would remove ${percentText(last.cumulativeShare)} of the alarms.`;
}

function costText(cost: number | null, currency: string | null): string {
  return cost === null ? '–' : `${numberText(cost)}${currency ? `\u00A0${currency}` : ''}`;
}

function lostTime(findings: Findings, tables: LossTables): Html {
  const { downtime } = findings;
  if (downtime.from.length === 0) {
    return html`<p>
      Add a running column, a stop list or alarms that say “stop”, and this screen shows minutes, stops and cost by
      zone, machine and week.
    </p>`;
  }
  return html`<h3>Where the time went</h3>
    <dl class="facts">
      ${totals(findings).map(
        ([name, value]) =>
          html`<div>
            <dt>${name}</dt>
            <dd>${value}</dd>
          </div>`,
      )}
    </dl>
    ${downtime.pareto.length > 0 && paretoFigure(findings)} ${weekFigure(findings, tables)}
    ${lossTable('By machine', 'Machine', tables.byMachine, downtime.currency)} ${reliabilityTable(findings)}
    ${downtime.notes.map((note) => html`<p class="note">${note}</p>`)}
    <p class="note">Told from: ${listText(downtime.from)}. Every stopped minute is counted once.</p>`;
}

function totals({ downtime }: Findings): readonly (readonly [string, string])[] {
  return [
    ['Faults of heater zones', minutesText(downtime.zoneFaultMinutes)],
    ['Other known causes', minutesText(downtime.otherMinutes)],
    ['Cause not known', minutesText(downtime.unknownMinutes)],
    ['Planned, not counted as lost', minutesText(downtime.plannedMinutes)],
    ...(downtime.cost === null ? [] : [['Cost', costText(downtime.cost, downtime.currency)] as const]),
  ];
}

function paretoFigure({ downtime }: Findings): Html {
  return figure({
    chart: 'pareto',
    title: 'Largest losses first',
    says: `Lost minutes by cause; ${counted(downtime.pareto.length, 'cause')}. The numbers are in the table below.`,
    note: 'Behind each bar: minutes, and the share of all lost time that it and the bars above make together. Hollow bars: cause not known.',
    numbers: {
      head: ['Cause', 'Kind', 'Lost', 'Stops', 'Longest', 'Cost'],
      rows: downtime.pareto.map((row) => [
        nameHtml(row.name),
        bucketWords[row.bucket],
        minutesText(row.minutes),
        numberText(row.stops),
        minutesText(row.longestMinutes),
        costText(row.cost, downtime.currency),
      ]),
    },
  });
}

function weekFigure({ downtime }: Findings, { byWeek }: LossTables): Html | null {
  if (byWeek.length === 0) return null;
  return figure({
    chart: 'weeks',
    title: 'Week by week',
    says: 'Lost minutes by week and kind of cause. The numbers are in the table below.',
    note: 'Weeks before this log come from the findings kept in the history folder.',
    numbers: lossNumbers('Week', byWeek, downtime.currency),
  });
}

function lossNumbers(first: string, rows: readonly LossRow[], currency: string | null) {
  return {
    head: [first, 'Heater zones', 'Other causes', 'Not known', 'Together', 'Stops', 'Longest', 'Cost'],
    rows: rows.map((row) => [
      nameHtml(row.name),
      minutesText(row.zoneFaultMinutes),
      minutesText(row.otherMinutes),
      minutesText(row.unknownMinutes),
      minutesText(row.lostMinutes),
      numberText(row.stops),
      minutesText(row.longestMinutes),
      costText(row.cost, currency),
    ]),
  };
}

function lossTable(title: string, first: string, rows: readonly LossRow[], currency: string | null): Html | null {
  if (rows.length === 0) return null;
  const { head, rows: cells } = lossNumbers(first, rows, currency);
  return html`<h4>${title}</h4>
    ${wide(title, dataTable(head, cells))}`;
}

function reliabilityTable({ downtime }: Findings): Html | null {
  if (downtime.reliability.length === 0) return null;
  const rows = downtime.reliability.map((row) => [
    nameHtml(row.name),
    numberText(row.operatingHours),
    numberText(row.failures),
    row.mtbfHours === null ? 'no failure' : `${shortNumber(row.mtbfHours)} h`,
    row.mtbfLowHours === null
      ? '–'
      : `${shortNumber(row.mtbfLowHours)} to ${row.mtbfHighHours === null ? '–' : shortNumber(row.mtbfHighHours)} h`,
    row.mttrMinutes === null ? '–' : minutesText(row.mttrMinutes),
    row.availability === null ? '–' : percentText(row.availability),
  ]);
  const head = [
    'Machine',
    'Hours run',
    'Failures',
    'Mean time between',
    'Limits',
    'Mean time to repair',
    'Availability',
  ];
  return html`<h4>How often, how long</h4>
    ${wide('How often, how long', dataTable(head, rows))}
    <p class="note">Limits by the chi-square distribution, as in the NIST/SEMATECH e-Handbook, 8.4.5.1.</p>`;
}

function wide(name: string, content: Content): Html {
  return html`<div class="wide" tabindex="0" role="region" aria-label="${name}">${content}</div>`;
}

function alarmPart({ findings, clock }: Context): Html {
  const { alarms } = findings;
  if (!alarms.hasLog)
    return html`<h3>Alarms</h3>
      <p>No alarm log was given, so nothing is said of alarms.</p>`;
  return html`<h3>Alarms</h3>
    <dl class="facts">
      ${alarmRates(findings).map(
        ([name, value]) =>
          html`<div>
            <dt>${name}</dt>
            <dd>${value}</dd>
          </div>`,
      )}
    </dl>
    ${
      alarms.byDay.length > 0 &&
      figure({
        chart: 'alarms',
        title: 'Alarms per day',
        says: 'Alarms per day. The numbers are in the table below.',
        note: html`${
          alarms.floods.length === 0
            ? 'No flood of alarms.'
            : html`${counted(alarms.floods.length, 'flood')} of alarms; the largest of
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
          ${alarms.stale.map(({ name, since, hours }) => html`<li>${nameHtml(name)}: since ${clock.dateTime(since)}, ${minutesText(hours * 60)}</li>`)}
        </ul>`
    }
    ${removableTable(findings)}
    ${
      alarms.contradictions.length > 0 &&
      html`<h4>Alarms and readings that contradict each other</h4>
        <ul>
          ${alarms.contradictions.map(({ zone, says }) => html`<li>${nameHtml(zone)}: ${says}</li>`)}
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
    .map(({ zone, count, cumulativeShare }) => [nameHtml(zone), numberText(count), percentText(cumulativeShare)]);
  return html`<h4>What putting zones right would remove</h4>
    ${wide('What putting zones right would remove', dataTable(['Zone', 'Alarms', 'With those above'], rows))}`;
}
