import type { Findings } from '../../model/findings.js';
import { html, type Html } from '../text/html.js';
import { nameHtml, shortName, zoneOnMachine } from '../text/names.js';
import { counted, listText, minutesText, numberText, percentText, shortNumber, withUnit } from '../text/numbers.js';
import { levelChangeSays } from '../sentences/level-changes.js';
import { weekText } from '../text/weeks.js';
import { lossWords } from '../text/words.js';
import { lossKindOf, lossNames } from '../sentences/losses.js';
import type { LossRow, LossTables } from '../tables.js';
import type { Context } from './context.js';
import { alarmPart } from './alarm-part.js';
import { factList } from './fact-list.js';
import { dataTable, figure, wide } from './figure.js';

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
  const restart = downtime.restartMinutes ?? 0;
  const more = restart > 0 ? `The restarts after them took ${minutesText(restart)} more.` : '';
  return [time, more, savedText(downtime), removableText(alarms)].filter((text) => text !== '').join(' ');
}

/** Fitters go to a few zones a week; what the first three cost is what going there is worth. */
const first = 3;

/** Less than this is not worth a sentence. */
const worthSavingMinutes = 10;

/** "Without the faults of TS2 Bottom seal and TS1 Top seal right, 2 h 24 min fewer would have been lost." */
function savedText({ pareto }: Findings['downtime']): string {
  const rows = pareto.filter(({ bucket }) => bucket === 'zone-fault').slice(0, first);
  const minutes = rows.reduce((sum, row) => sum + row.minutes, 0);
  if (minutes < worthSavingMinutes) return '';
  return `Without the faults of ${listText(rows.map(({ name, machine }) => shortName(zoneOnMachine({ zone: name, machine: machine ?? name }))))}, ${minutesText(minutes)} fewer would have been lost.`;
}

/** "Without those of Front jaw, Upper plate 3 and Right edge there would have been 55 % fewer alarms." */
function removableText({ removable }: Findings['alarms']): string {
  const zones = removable.slice(0, first);
  const last = zones.at(-1);
  if (!last || last.cumulativeShare <= 0) return '';
  const names = listText(
    zones.map(({ zone, machine }) => shortName(zoneOnMachine({ zone, machine: machine ?? zone }))),
  );
  return `Without those of ${names} there would have been ${percentText(last.cumulativeShare)} fewer alarms.`;
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
    ${factList(totals(findings))} ${downtime.pareto.length > 0 && paretoFigure(findings)}
    ${weekFigure(findings, tables)} ${weeksKept(findings)}
    ${lossTable('By machine', 'Machine', tables.byMachine, downtime)} ${zoneTable(downtime)}
    ${reliabilityTable(findings)} ${downtime.notes.map((note) => html`<p class="note">${note}</p>`)}
    <p class="note">
      Told from ${listText(downtime.from.map((from) => (from === 'running' ? 'the running state' : `the ${from}`)))}.
      Every stopped minute is counted once.
    </p>`;
}

function totals({ downtime }: Findings): readonly (readonly [string, string])[] {
  const restart = downtime.restartMinutes ?? 0;
  const zoneCost = downtime.pareto.reduce(
    (sum, { bucket, cost }) => sum + (bucket === 'zone-fault' ? (cost ?? 0) : 0),
    0,
  );
  return [
    ['Faults of heater zones', minutesText(downtime.zoneFaultMinutes)],
    ...(restart > 0 ? [['Restarts after them', minutesText(restart)] as const] : []),
    ['Other known causes', minutesText(downtime.otherMinutes - restart)],
    ['Cause not known', minutesText(downtime.unknownMinutes)],
    ['Planned, not counted as lost', minutesText(downtime.plannedMinutes)],
    ...(downtime.cost === null
      ? []
      : [
          ['Cost of all lost time', costText(downtime.cost, downtime.currency)] as const,
          ['Cost of zone faults', costText(zoneCost, downtime.currency)] as const,
        ]),
  ];
}

function paretoFigure({ downtime }: Findings): Html {
  return figure({
    chart: 'pareto',
    title: 'Largest losses first',
    says: `Lost minutes by cause; ${counted(downtime.pareto.length, 'cause')}. The numbers are in the table below.`,
    note: 'Behind each bar: time lost, and the share of all lost time that it and the bars above make together. Hollow bars: cause not known.',
    numbers: {
      head: ['Cause', 'Kind', 'Lost', 'Stops', 'Longest', ...costHead(downtime.cost)],
      rows: lossNames(downtime.pareto).map(({ name, row }) => [
        nameHtml(name),
        lossWords[lossKindOf(row) ?? 'unknown'],
        minutesText(row.minutes),
        numberText(row.stops),
        minutesText(row.longestMinutes),
        ...costCells(downtime.cost, [row.cost], downtime.currency),
      ]),
    },
  });
}

/** Cost columns are there only where a rate is known. */
function costHead(cost: number | null, ...more: readonly string[]): readonly string[] {
  return cost === null ? [] : ['Cost', ...more];
}

function costCells(
  known: number | null,
  costs: readonly (number | null)[],
  currency: string | null,
): readonly string[] {
  return known === null ? [] : costs.map((cost) => costText(cost, currency));
}

function weekFigure({ downtime, history }: Findings, { byWeek }: LossTables): Html | null {
  if (byWeek.length === 0) return null;
  return figure({
    chart: 'weeks',
    title: 'Week by week',
    says: 'Lost minutes by week and kind of cause. The numbers are in the table below.',
    note: history
      ? 'Weeks before this log come from the findings kept in the history folder.'
      : 'With "looselead report --history FOLDER" the weeks before stand here too.',
    numbers: lossNumbers('Week', byWeek, downtime),
  });
}

/** Is it getting better? All weeks of the history, this log counted. */
function weeksKept({ history }: Findings): Html | null {
  if (!history || history.weeks.length < 2) return null;
  const rows = [...history.weeks]
    .reverse()
    .map(({ week, coveredDays = 7, zoneFaultMinutes, otherMinutes, unknownMinutes = 0, alarms, zonesFaulty }) => [
      coveredDays > 6.5 ? weekText(week) : `${weekText(week)} (${withUnit(coveredDays, 'd', 1)} of it)`,
      minutesText(zoneFaultMinutes),
      minutesText(otherMinutes),
      minutesText(unknownMinutes),
      numberText(alarms),
      zonesFaulty === null ? '–' : numberText(zonesFaulty),
    ]);
  const head = ['Week', 'Heater zones', 'Other causes', 'Not known', 'Alarms', 'Zones faulty'];
  return html`<h4>All weeks kept</h4>
    ${levelChangeSays(history).map((says) => html`<p>${says}</p>`)} ${wide('All weeks kept', dataTable(head, rows))}`;
}

function lossNumbers(head: string, rows: readonly LossRow[], { cost: known, currency }: Findings['downtime']) {
  return {
    head: [
      head,
      'Heater zones',
      'Other causes',
      'Not known',
      'Together',
      'Stops',
      'Longest',
      ...costHead(known, 'of zone faults'),
    ],
    rows: rows.map((row) => [
      nameHtml(weekText(row.name)),
      minutesText(row.zoneFaultMinutes),
      minutesText(row.otherMinutes),
      minutesText(row.unknownMinutes),
      minutesText(row.lostMinutes),
      numberText(row.stops),
      minutesText(row.longestMinutes),
      ...costCells(known, [row.cost, row.zoneFaultCost], currency),
    ]),
  };
}

function lossTable(title: string, head: string, rows: readonly LossRow[], downtime: Findings['downtime']): Html | null {
  if (rows.length === 0) return null;
  const numbers = lossNumbers(head, rows, downtime);
  return html`<h4>${title}</h4>
    ${wide(title, dataTable(numbers.head, numbers.rows))}`;
}

/** What each zone's faults cost its machine. */
function zoneTable({ byZone, reliability, cost: known, currency }: Findings['downtime']): Html | null {
  if (byZone.length === 0) return null;
  const rows = byZone.map(({ name, machine, minutes, stops, longestMinutes, cost }) => [
    nameHtml(zoneOnMachine({ zone: name, machine: machine ?? name })),
    minutesText(minutes),
    numberText(stops),
    minutesText(minutes / stops),
    minutesText(longestMinutes),
    availabilityText(reliability.find((row) => row.name === machine)?.operatingHours, minutes),
    ...costCells(known, [cost], currency),
  ]);
  const head = ['Zone', 'Lost', 'Stops', 'Mean', 'Longest', 'Availability', ...costHead(known)];
  return html`<h4>By zone</h4>
    ${wide('By zone', dataTable(head, rows))}
    <p class="note">Availability: the share of its time that the machine would run if only this zone stopped it.</p>`;
}

function availabilityText(upHours: number | undefined, lostMinutes: number): string {
  return upHours === undefined || upHours <= 0 ? '–' : percentText(upHours / (upHours + lostMinutes / 60));
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
    'Mean time between failures',
    'Limits',
    'Mean time to repair',
    'Availability',
  ];
  return html`<h4>How often, how long</h4>
    ${wide('How often, how long', dataTable(head, rows))}
    <p class="note">Limits by the chi-square distribution, as in the NIST/SEMATECH e-Handbook, 8.4.5.1.</p>`;
}
