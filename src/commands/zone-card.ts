import { causes, type Cause } from '../model/cause.js';
import type { Check } from '../model/check.js';
import type { Findings, TermNote, ZoneFinding } from '../model/findings.js';
import { cautions } from '../report/sentences/cautions.js';
import { conditionText, expectedText } from '../report/sentences/expected.js';
import { firstStep, sensorName, whatToBring } from '../report/sentences/next-step.js';
import { kindText, lengthText } from '../report/sentences/kinds.js';
import { numberedFaults, otherSigns } from '../report/sentences/numbered.js';
import { standingOf, standingWords } from '../report/sentences/standing.js';
import { recordShareHeads, recordShareRows, recordShareSays } from '../report/sentences/record-shares.js';
import { sentence } from '../report/sentences/symptom.js';
import { rankedCauses, verdict, whyUntold, withoutZone } from '../report/sentences/verdict.js';
import { clockOf, type Clock } from '../report/text/clock.js';
import { zoneOnMachine } from '../report/text/names.js';
import { minutesText, numberText, percentText } from '../report/text/numbers.js';
import {
  level,
  phraseText,
  signed,
  temperatureText,
  type Phrase,
  type TemperatureUnit,
} from '../report/text/phrase.js';
import { causeWords, idWords, placeWords, trendWords } from '../report/text/words.js';
import { coloursFor, type Colours, type Terminal } from './terminal/colour.js';
import { largestPerPlace, markLine, sparkline } from './terminal/sparkline.js';
import { tableLines } from './terminal/table.js';
import { safeText, wrapText } from './terminal/text-width.js';

export interface CardOptions {
  /** Start of what is to be shown, UTC ms. */
  readonly fromMs: number;
  readonly unit: TemperatureUnit;
  readonly isWhyWanted: boolean;
  readonly terminal: Terminal;
}

interface Card extends CardOptions {
  readonly zone: ZoneFinding;
  readonly findings: Findings;
  readonly clock: Clock;
  readonly colours: Colours;
  readonly width: number;
}

/** The verdict on one line: "Top seal right on TS1: Needs a fitter; wiring 88 %, sensor 11 %". */
export function zoneLine(zone: ZoneFinding): string {
  const shares = rankedCauses(zone)
    .filter(([, share]) => share >= spokenShare)
    .map(([cause, share]) => `${causeWords[cause]} ${percentText(share)}`);
  const odds = shares.length > 0 ? `; ${shares.join(', ')}` : '';
  return `${safeText(zoneOnMachine(zone))}: ${standingWords[standingOf(zone)]}${odds}\n`;
}

/** Lines longer than this are hard to read, however wide the terminal. */
const widestLine = 100;

/** One zone on one screen: verdict, timeline, last faults, what to bring, what to measure. Pure: text out. */
export function zoneCard(zone: ZoneFinding, findings: Findings, options: CardOptions): string {
  const width = Math.max(30, Math.min(widestLine, options.terminal.columns));
  const card: Card = {
    ...options,
    zone,
    findings,
    clock: clockOf(findings.timezone),
    colours: coloursFor(options.terminal),
    width,
  };
  const lines = [
    ...headLines(card),
    ...causeLines(card),
    ...timeLines(card),
    ...faultLines(card),
    ...measureLines(card),
    ...(options.isWhyWanted ? [...whyLines(card), ...recordLines(card)] : []),
    '',
    ...wrapText(`Caution. ${cautions.danger} ${cautions.doubt}`, width).map(card.colours.warn),
  ];
  return `${lines.join('\n')}\n`;
}

function headLines({ zone, colours, clock, unit, width }: Card): readonly string[] {
  const standing = standingOf(zone);
  const paint = {
    faulty: colours.bad,
    watch: colours.warn,
    fixed: colours.good,
    healthy: colours.good,
    'insufficient-data': colours.faint,
  }[standing];
  const facts = [
    zone.sensor ? sensorName(zone.sensor) : 'sensor type not told',
    ...(zone.wires ? [`${zone.wires} wires`] : []),
    ...(zone.card ? [`card ${zone.card}`] : []),
    ...(zone.setpointDegC === null ? [] : [`set point ${temperatureText(level(zone.setpointDegC), unit)}`]),
    ...(zone.offsetDegC === null ? [] : [`reads off by ${temperatureText(signed(zone.offsetDegC), unit)}`]),
  ];
  const since = [
    ...(zone.onset ? [`since ${clock.dateTime(zone.onset)}`] : []),
    ...(zone.fixed ? [`fixed ${clock.dateTime(zone.fixed)}`] : []),
    ...(zone.trend ? [trendWords[zone.trend]] : []),
    ...(zone.downtimeMinutes > 0 ? [`${minutesText(zone.downtimeMinutes)} of production lost`] : []),
  ];
  const untold = zone.status === 'insufficient-data' ? wrapText(whyUntold(zone), width) : [];
  return [
    ...wrapText(safeText(zoneOnMachine(zone)), width).map(colours.bold),
    paint(standingWords[standing]),
    ...wrapText(since.join(', '), width),
    ...wrapText(text(verdict(zone), unit), width),
    ...untold,
    ...wrapText(safeText(facts.join(', ')), width).map(colours.faint),
  ];
}

/** Shares below this are left out. */
const spokenShare = 0.03;

function causeLines({ zone, width, colours }: Card): readonly string[] {
  if (zone.status === 'insufficient-data') return [];
  const barWidth = Math.max(10, Math.min(30, width - 26));
  const all: (readonly [Cause, number])[] = [...rankedCauses(zone), ['none', zone.probabilities.none]];
  const rows = all
    .filter(([, share]) => share >= spokenShare)
    .sort((a, b) => b[1] - a[1])
    .map(([cause, share]) => {
      const filled = Math.round(share * barWidth);
      return `  ${causeWords[cause].padEnd(11)} ${'█'.repeat(filled)}${colours.faint('░'.repeat(barWidth - filled))} ${percentText(share)}`;
    });
  return ['', ...rows];
}

function timeLines({ zone, findings, clock, fromMs, width, colours }: Card): readonly string[] {
  const { trace } = zone;
  if (!trace || trace.timeMs.length === 0) return [];
  const shown = trace.timeMs.map((timeMs) => timeMs >= fromMs);
  const pick = <T>(values: readonly T[]): T[] => values.filter((_, i) => shown[i]);
  const times = pick(trace.timeMs);
  if (times.length === 0) return ['', 'The trace holds nothing in that time.'];
  const places = Math.min(width - 10, times.length);
  const faults = [...(zone.faultMarks ?? zone.symptoms)].map(
    ({ start, end }) => [Date.parse(start), Date.parse(end)] as const,
  );
  const perPlace = largestPerPlace(times, places).map((time) => time!);
  const isFaulty = perPlace.map((until, i) => {
    const from = i === 0 ? times[0]! : perPlace[i - 1]!;
    return faults.some(([start, end]) => start <= until && end >= from);
  });
  const end = Date.parse(findings.window.end);
  return [
    '',
    `Reading   ${sparkline(pick(trace.maxDegC), places)}`,
    ...(trace.outputPercent.some((value) => value !== null)
      ? [`Output    ${sparkline(pick(trace.outputPercent), places)}`]
      : []),
    `Faults    ${markLine(isFaulty, '×')}`,
    ...wrapText(`${clock.dateTime(times[0]!)} to ${clock.dateTime(end)}`, width - 10).map((line) =>
      colours.faint(`          ${line}`),
    ),
  ];
}

const shownFaults = 6;

function faultLines({ zone, clock, fromMs, unit, width, colours }: Card): readonly string[] {
  const isRecent = ({ end }: { readonly end: string }): boolean => Date.parse(end) >= fromMs;
  const seen = [...numberedFaults(zone), ...otherSigns(zone)].filter(({ symptom }) => isRecent(symptom));
  // What the verdict has said already is not said again.
  const said = text(verdict(zone), unit);
  const signs = seen
    .map(({ text: { says } }) => text(sentence(says), unit))
    .filter((says) => !said.includes(says))
    .flatMap((says) => bullet(says, width));
  const marks = (zone.faultMarks ?? []).filter(isRecent).slice(-shownFaults).reverse();
  const last = marks.map(({ start, end, kind }) => {
    const seconds = (Date.parse(end) - Date.parse(start)) / 1000;
    return `  ${clock.dateTime(start)}  ${kindText(kind)}${lengthText(kind, seconds)}`;
  });
  if (seen.length + last.length === 0) return ['', 'No fault seen in this time.'];
  return [
    '',
    ...(signs.length > 0 ? [colours.bold('Seen as well'), ...signs] : []),
    ...(last.length > 0 ? [colours.bold('Last faults'), ...last] : []),
  ];
}

function measureLines({ zone, unit, width, colours }: Card): readonly string[] {
  // One screen: the steps with a value to expect; the report has them all, and what each outcome means.
  const measure = zone.checks.filter(({ kind, expected }) => kind === 'measure' && expected.length > 0);
  return [
    '',
    ...(zone.status === 'healthy' ? [] : wrapText(`First: ${text(firstStep(zone), unit)}`, width)),
    ...wrapText(`Bring: ${whatToBring(zone).join('; ')}.`, width),
    ...(measure.length > 0 ? wrapText('Measure, locked out unless it says power on', width).map(colours.bold) : []),
    ...measure.flatMap((check, index) => checkLines(check, index, unit, width)),
  ];
}

function checkLines(
  { where, between, expected, power }: Check,
  index: number,
  unit: TemperatureUnit,
  width: number,
): readonly string[] {
  const pairs = between.length > 0 ? `, between ${between.join('; ')}` : '';
  const live = power === 'live' ? ' (power on: authorised people only)' : '';
  const values = expected.map((value) =>
    `${text(expectedText(value), unit)} ${text(conditionText(value), unit)}`.trim(),
  );
  return bullet(`${placeWords[where]}${pairs}${live}: ${values.join('; ')}`, width, `${index + 1}.`);
}

/** The sum: what each sign adds to the log-odds of each cause, a sign and its numbers below one another. */
function whyLines({ zone, width, colours }: Card): readonly string[] {
  const added = (adds: TermNote['adds']): string =>
    causes
      .flatMap((cause) => {
        const value = adds[cause];
        if (value === undefined || Math.abs(value) < smallestAdd) return [];
        return [`${causeWords[cause]} ${value > 0 ? '+' : ''}${numberText(value, 1)}`];
      })
      .join(', ');
  const lines = (says: string, numbers: string): readonly string[] => [
    ...bullet(safeText(says), width),
    ...wrapText(numbers, width - 6).map((line) => colours.faint(`      ${line}`)),
  ];
  const shares = causes.map((cause) => `${causeWords[cause]} ${percentText(zone.probabilities[cause])}`);
  const unable = zone.unable.flatMap(({ detector, why }) =>
    bullet(safeText(`${idWords(detector)}: ${withoutZone(why, zone.zone)}`), width),
  );
  return [
    '',
    ...wrapText('Why (log-odds that each sign adds: +0.7 doubles the odds of a cause)', width).map(colours.bold),
    ...lines('Before any evidence', added(zone.prior)),
    ...zone.terms.flatMap(({ says, adds }) => lines(`${says.charAt(0).toUpperCase()}${says.slice(1)}`, added(adds))),
    ...lines('Sum, as probability', shares.join(', ')),
    ...(unable.length > 0 ? [colours.bold('What the log cannot tell here'), ...unable] : []),
  ];
}

/** What the plant's own record made of the shares before any evidence, where one is kept. */
function recordLines({ findings: { recordShares }, width, colours }: Card): readonly string[] {
  if (!recordShares) return [];
  const [cause, ...numbers] = recordShareHeads;
  const columns = [{ head: cause }, ...numbers.map((head) => ({ head, align: 'right' as const }))];
  return [
    '',
    ...wrapText('What was found at this plant (shares among faults)', width).map(colours.bold),
    ...tableLines(columns, recordShareRows(recordShares), width - 2).map((line) => `  ${line}`),
    ...recordShareSays(recordShares).flatMap((says) => bullet(says, width)),
  ];
}

/** Smaller ones would be written as 0.0. */
const smallestAdd = 0.05;

function bullet(says: string, width: number, sign = '-'): readonly string[] {
  const indent = sign.length + 3;
  return wrapText(says, width - indent).map((line, i) => `${i === 0 ? `  ${sign} ` : ' '.repeat(indent)}${line}`);
}

function text(parts: Phrase, unit: TemperatureUnit): string {
  return safeText(phraseText(parts, unit));
}
