import type { Cause } from '../../model/cause.js';
import type { Findings, ZoneFinding } from '../../model/findings.js';
import { cautions } from '../../report/sentences/cautions.js';
import { kindText, lengthText } from '../../report/sentences/kinds.js';
import { sensorName } from '../../report/sentences/next-step.js';
import { numberedFaults, otherSigns } from '../../report/sentences/numbered.js';
import { errorSize } from '../../report/sentences/reading-error.js';
import { standingOf, standingWords } from '../../report/sentences/standing.js';
import { sentence } from '../../report/sentences/symptom.js';
import { whyUntold } from '../../report/sentences/untold.js';
import { rankedCauses, verdict } from '../../report/sentences/verdict.js';
import { clockOf } from '../../report/text/clock.js';
import { zoneOnMachine } from '../../report/text/names.js';
import { minutesText, percentText } from '../../report/text/numbers.js';
import { level, temperatureText } from '../../report/text/phrase.js';
import { causeWords, trendWords } from '../../report/text/words.js';
import { shortCaution } from '../../sensors/checks-caution.js';
import { coloursFor } from '../terminal/colour.js';
import { safeText, wrapText } from '../terminal/text-width.js';
import { measureLines } from './zone-card-measure.js';
import { timeLines } from './zone-card-time.js';
import { bullet, cardText, type Card, type CardOptions } from './zone-card-parts.js';
import { whyLines } from './zone-card-why.js';

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
  const clock = clockOf(findings.timezone);
  const card: Card = { ...options, zone, findings, clock, colours: coloursFor(options.terminal), width };
  const caution = options.isWhyWanted ? cautions.danger : shortCaution;
  const lines = [
    ...headLines(card),
    ...causeLines(card),
    ...timeLines(card),
    ...faultLines(card),
    ...measureLines(card),
    ...(options.isWhyWanted ? whyLines(card) : []),
    '',
    ...wrapText(`Caution. ${caution} ${cautions.doubt}`, width).map(card.colours.warn),
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
  const since = [
    standingWords[standing],
    ...(zone.onset ? [`since ${clock.dateTime(zone.onset)}`] : []),
    ...(zone.fixed ? [`fixed ${clock.dateTime(zone.fixed)}`] : []),
    ...(zone.trend && !zone.fixed ? [trendWords[zone.trend]] : []),
    ...(zone.downtimeMinutes > 0 ? [`${minutesText(zone.downtimeMinutes)} of production lost`] : []),
  ];
  const facts = [
    zone.sensor ? sensorName(zone.sensor) : 'sensor type not told',
    ...(zone.wires ? [`${zone.wires} wires`] : []),
    ...(zone.card ? [`card ${zone.card}`] : []),
    ...(zone.setpointDegC === null ? [] : [`set point ${temperatureText(level(zone.setpointDegC), unit)}`]),
    ...(zone.offsetDegC === null ? [] : [`reads off by ${cardText(errorSize(zone), unit)}`]),
  ];
  const untold = zone.status === 'insufficient-data' ? wrapText(cardText(whyUntold(zone), unit), width) : [];
  return [
    ...wrapText(safeText(zoneOnMachine(zone)), width).map(colours.bold),
    ...wrapText(since.join(', '), width).map(paint),
    ...wrapText(cardText(verdict(zone), unit), width),
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

/** What fits one screen; --why tells the rest. */
const few = { signs: 2, faults: 3 } as const;
const many = { signs: Infinity, faults: 12 } as const;

function faultLines({ zone, clock, fromMs, unit, width, colours, isWhyWanted }: Card): readonly string[] {
  const most = isWhyWanted ? many : few;
  const isRecent = ({ end }: { readonly end: string }): boolean => Date.parse(end) >= fromMs;
  const seen = [...numberedFaults(zone), ...otherSigns(zone)].filter(({ symptom }) => isRecent(symptom));
  // What the verdict has said already is not said again.
  const said = cardText(verdict(zone), unit).toLowerCase();
  const signs = [...seen]
    .sort((a, b) => b.text.weight - a.text.weight)
    .map(({ text: { says } }) => cardText(sentence(says), unit))
    .filter((says) => !said.includes(says.toLowerCase()));
  const marks = (zone.faultMarks ?? []).filter(isRecent);
  const last = marks.slice(-most.faults).reverse();
  if (seen.length + last.length === 0) return ['', 'No fault seen in this time.'];
  const lastLines = last.map(({ start, end, kind }) => {
    const seconds = (Date.parse(end) - Date.parse(start)) / 1000;
    return `  ${clock.dateTime(start)}  ${kindText(kind)}${lengthText(kind, seconds)}`;
  });
  const shownSigns = signs.slice(0, most.signs).flatMap((says) => bullet(says, width));
  if (shownSigns.length + lastLines.length === 0) return [];
  const ofAll = marks.length > last.length ? ` (${last.length} of ${marks.length})` : '';
  return [
    '',
    ...(shownSigns.length > 0 ? [colours.bold('Seen as well'), ...shownSigns] : []),
    ...(lastLines.length > 0 ? [colours.bold(`Last faults${ofAll}`), ...lastLines] : []),
  ];
}

export type { CardOptions };
