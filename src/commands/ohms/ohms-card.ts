import { say } from '../../sensors/answer.js';
import { shortCaution } from '../../sensors/checks-caution.js';
import { unevenLeadOhm } from '../../sensors/check-parts.js';
import type { ExpectedRow, LeadAnswer, OhmsAnswer } from './ohms-reckon.js';

/** The widest a card gets; also the width where the output is no terminal. */
const widestColumns = 80;
const narrowestColumns = 40;

/** The card as plain text, no line wider than `columns` (40 to 80), ending with a line break. */
export function ohmsCardText(answer: OhmsAnswer, columns = widestColumns): string {
  const width = Math.min(Math.max(Math.floor(columns), narrowestColumns), widestColumns);
  const blocks = [
    [heading(answer), shortCaution],
    answer.measured ? measuredLines(answer) : [],
    answer.expected.length > 1 ? tableLines(answer.expected, width) : pointLines(answer),
    leadLines(answer),
    answer.expected.length > 1 ? [] : pointers(answer),
    [...answer.notes.map((note) => `Note: ${note}`), `Source: ${answer.source}.`],
  ];
  const lines = blocks.filter((block) => block.length > 0).map((block) => block.flatMap((line) => wrap(line, width)));
  return `${lines.map((block) => block.join('\n')).join('\n\n')}\n`;
}

/** What was measured and what it says, else the values to expect, one on a line; ends with a line break. */
export function cardLine(answer: OhmsAnswer): string {
  const lines = answer.measured
    ? [measuredLines(answer).slice(0, 2).join('. ')]
    : answer.expected.map((row) => value(row.expected, row.signal));
  return lines.map((line) => `${line}\n`).join('');
}

function heading({ sensor, wires, toleranceLabel, referenceDegC }: OhmsAnswer): string {
  const parts = [
    sensor.label,
    wires === null ? undefined : `${wires}-wire`,
    toleranceLabel ?? undefined,
    referenceDegC === null ? undefined : `terminals at ${temperature(referenceDegC)}`,
  ];
  return parts.filter((part) => part !== undefined).join(', ');
}

function measuredLines({ measured }: OhmsAnswer): string[] {
  if (!measured) return [];
  const shown = measured.measured === null ? 'OL' : value(measured.measured, measured.signal);
  const cable = measured.cableOhm > 0 ? `, ${say(measured.cableOhm, 2)} Ω of it cable` : '';
  const isSaidBelow = measured.readingDegC === null || measured.verdict === 'temperature';
  const reading = isSaidBelow ? '' : ` → ${temperature(measured.readingDegC ?? NaN)}`;
  return [
    `Measured ${shown}${cable}${reading}`,
    measured.says,
    ...measured.explanations.map((one) => `  ${one.sensible ? '-' : '- no:'} ${one.says}`),
  ];
}

function pointLines({ expected, sensor, lead, wires, toleranceLabel, measured }: OhmsAnswer): string[] {
  const row = expected[0];
  if (!row) return [];
  const band =
    row.low === null || row.high === null
      ? []
      : [
          pair(
            toleranceLabel ?? 'band',
            `${value(row.low, row.signal)} to ${value(row.high, row.signal)} (±${say(row.toleranceDegC ?? NaN, 2)} °C)`,
          ),
        ];
  const cabinet =
    lead && sensor.kind === 'rtd'
      ? [pair('at the cabinet', `${value(row.expected + lead.pairOhm, row.signal)}, cable included`)]
      : [];
  const signal = pair(sensor.kind === 'rtd' ? 'element' : 'signal', value(row.expected, row.signal));
  const expect = [
    `Expect at ${temperature(row.atDegC)}, ${sensor.kind === 'current' ? 'in the loop' : 'leads off the input'}:`,
    signal,
    ...band,
    ...cabinet,
  ];
  // Beside a measured value there is room for no more on one screen.
  if (measured) return expect;
  const sheath = [pair('lead to sheath', sheathText(sensor.kind)), pair('broken', 'OL')];
  return [
    ...expect,
    pair('each °C more', slopeText(row)),
    ...(wires !== null && wires > 2 ? [pair('same-end pair', sameEnd(lead))] : []),
    ...(sensor.kind === 'current' ? [] : sheath),
  ];
}

function sameEnd(lead: LeadAnswer | null): string {
  return lead
    ? `${say(lead.pairOhm, 2)} Ω at the cabinet, next to 0 at the sensor`
    : 'the ohms of two leads, next to 0 at the sensor';
}

function sheathText(kind: string): string {
  return kind === 'rtd' ? 'OL, more than 100 MΩ' : 'OL, more than 100 MΩ (not on a grounded junction)';
}

function slopeText({ perDegC, signal }: ExpectedRow): string {
  if (signal === 'ohm') return `${say(perDegC, 3)} Ω (1 Ω is ${say(1 / perDegC, 2)} °C)`;
  return signal === 'mV' ? `${say(perDegC, 4)} mV` : `${say(perDegC, 4)} mA`;
}

function tableLines(rows: readonly ExpectedRow[], width: number): string[] {
  const hasBand = rows.some((row) => row.low !== null);
  const unit = rows[0]?.signal === 'ohm' ? 'Ω' : (rows[0]?.signal ?? '');
  const digits = rows[0]?.signal === 'ohm' ? 2 : 3;
  const number = (one: number | null) => (one === null ? '–' : say(one, digits));
  // A narrow screen keeps what a meter is held against: °C and the value, then the band, then °F and the slope.
  const columns: [string, (row: ExpectedRow) => string, boolean][] = [
    ['°C', (row) => say(row.atDegC, 1), true],
    ['°F', (row) => say(row.atDegF, 1), width >= 56],
    [unit, (row) => number(row.expected), true],
    ['low', (row) => number(row.low), hasBand],
    ['high', (row) => number(row.high), hasBand],
    [`${unit} per °C`, (row) => say(row.perDegC, digits + 1), width >= 64],
  ];
  const kept = columns.filter(([, , isKept]) => isKept);
  const cells = [kept.map(([name]) => name), ...rows.map((row) => kept.map(([, cell]) => cell(row)))];
  return cells.map((line) =>
    line
      .map((cell) => cell.padStart(9))
      .join(' ')
      .replace(/^ {2}/, ''),
  );
}

function leadLines({ lead, wires }: OhmsAnswer): string[] {
  if (!lead) return [];
  const gauge = lead.awg === null ? '' : `AWG ${awgText(lead.awg)}, `;
  const first = `Copper lead ${gauge}${say(lead.mm2, 3)} mm², ${say(lead.lengthM, 1)} m, ${say(lead.leadDegC)} °C: ${say(lead.leadOhm, 3)} Ω, the pair ${say(lead.pairOhm, 3)} Ω`;
  if (wires === null || lead.readingOffsetDegC === null) return [first];
  const effects = {
    2: `With 2 wires it reads ${say(lead.readingOffsetDegC, 2)} °C high unless the controller takes it off.`,
    3: `With 3 wires equal leads cancel; only a difference between leads 1 and 2 shows (look for more than ${unevenLeadOhm} Ω).`,
    4: 'With 4 wires the leads do not count.',
  };
  return [first, effects[wires]];
}

function pointers({ sensor }: OhmsAnswer): string[] {
  if (sensor.kind === 'current') return ['Right current here and a wrong reading: the input or its span.'];
  return [
    'Bad at the sensor’s own connector: the sensor. Good there and bad at the cabinet: the wiring. Good at both: the input.',
  ];
}

/** American gauges above 0 are written 00, 000, 0000. */
function awgText(awg: number): string {
  return awg <= 0 ? '0'.repeat(1 - awg) : String(awg);
}

function value(amount: number, signal: ExpectedRow['signal']): string {
  if (signal === 'ohm') return `${say(amount, 2)} Ω`;
  return `${say(amount, signal === 'mV' ? 3 : 2)} ${signal}`;
}

function temperature(degC: number): string {
  return `${say(degC, 1)} °C (${say((degC * 9) / 5 + 32, 1)} °F)`;
}

function pair(name: string, text: string): string {
  return `  ${name.padEnd(18)} ${text}`;
}

/** Breaks at blanks; what follows is indented like the first line, and two more. */
function wrap(line: string, width: number): string[] {
  if (line.length <= width) return [line];
  const indent = ' '.repeat((/^ */.exec(line)?.[0].length ?? 0) + 2);
  const at = line.lastIndexOf(' ', width);
  if (at <= indent.length) return [line.slice(0, width), ...wrap(indent + line.slice(width), width)];
  return [line.slice(0, at), ...wrap(indent + line.slice(at + 1).trimStart(), width)];
}
