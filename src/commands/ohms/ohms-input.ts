import { LogProblem } from '../../model/problem.js';
import { parseWire, type Wire } from '../../sensors/copper-lead.js';
import type { CurrentSpan } from '../../sensors/current-loop.js';
import type { Wires } from '../../sensors/rtd-wiring.js';
import { parseSensorType, sensorIds, sensorTypes, type SensorSpec } from '../../sensors/sensor-types.js';
import { parseToleranceClass, type ToleranceClass } from '../../sensors/tolerance.js';

/** What was typed, as commander hands it over. */
export interface OhmsOptions {
  readonly sensor?: string | undefined;
  readonly at?: string | undefined;
  readonly step?: string | undefined;
  readonly class?: string | undefined;
  readonly wires?: string | undefined;
  readonly gauge?: string | undefined;
  readonly mm2?: string | undefined;
  readonly length?: string | undefined;
  readonly leadTemperature?: string | undefined;
  readonly reference?: string | undefined;
  readonly measured?: string | undefined;
  readonly room?: string | undefined;
  readonly span?: string | undefined;
}

/** What a meter showed, in ohm, mV or mA; open for OL. `unit` is undefined when none was typed. */
export type Measured = 'open' | { readonly value: number; readonly unit: 'ohm' | 'mV' | 'mA' | undefined };

/** The same, understood. Temperatures in °C, lengths in m. */
export interface OhmsRequest {
  readonly sensor: SensorSpec;
  readonly atDegC: readonly number[];
  /** True when `atDegC` was asked for as a range or list. */
  readonly isTable: boolean;
  readonly toleranceClass: ToleranceClass | undefined;
  readonly wires: Wires;
  readonly lead: { readonly wire: Wire; readonly lengthM: number; readonly leadDegC: number } | undefined;
  readonly referenceDegC: number | undefined;
  readonly measured: Measured | undefined;
  readonly roomDegC: number | undefined;
  readonly span: CurrentSpan | undefined;
}

/** More rows than this is no card any more. */
const mostRows = 200;
/** With heading, caution and source a table of so many steps fits a screen of 24 lines. */
const stepsOnScreen = 13;
/** Catalogue temperature of copper resistance, IEC 60028. */
const catalogueDegC = 20;

/** Understands what was typed. @throws LogProblem `bad-argument` with a sentence for what it cannot. */
export function readRequest(options: OhmsOptions): OhmsRequest {
  const at = options.at === undefined ? [] : readTemperatures(options.at, options.step);
  if (options.step !== undefined && at.length < 2) {
    throw bad('--step needs a range.', 'Give one, for example --at 20C..200C --step 20C.');
  }
  return {
    sensor: readSensor(options.sensor),
    atDegC: at,
    isTable: at.length > 1,
    toleranceClass: options.class === undefined ? undefined : readClass(options.class),
    wires: readWires(options.wires),
    lead: readLead(options),
    referenceDegC: readOptional('--reference', options.reference),
    measured: options.measured === undefined ? undefined : readMeasured(options.measured),
    roomDegC: readOptional('--room', options.room),
    span: options.span === undefined ? undefined : readSpan(options.span),
  };
}

/** A problem with an argument: what is wrong, what to do. */
export function bad(what: string, todo: string): LogProblem {
  return new LogProblem('bad-argument', undefined, what, todo);
}

function readSensor(text: string | undefined): SensorSpec {
  const known = `Known are ${sensorIds.join(', ')}.`;
  if (text === undefined) throw bad('No sensor type is given.', `Add --sensor, for example --sensor pt100. ${known}`);
  const id = parseSensorType(text);
  if (!id) throw bad(`"${shown(text)}" is no sensor type known here.`, known);
  return sensorTypes[id];
}

function readClass(text: string): ToleranceClass {
  const found = parseToleranceClass(text);
  if (found) return found;
  throw bad(
    `"${shown(text)}" is no tolerance class known here.`,
    'Use AA, A, B or C, "ASTM A" or "ASTM B" for platinum, standard or special for thermocouples.',
  );
}

function readWires(text: string | undefined): Wires {
  if (text === undefined) return 3;
  if (text === '2' || text === '3' || text === '4') return Number(text) as Wires;
  throw bad(`"${shown(text)}" is no number of wires.`, 'Use --wires 2, 3 or 4.');
}

function readLead(options: OhmsOptions): OhmsRequest['lead'] {
  const { gauge, mm2, length, leadTemperature } = options;
  if (gauge !== undefined && mm2 !== undefined) throw bad('Both --gauge and --mm2 are given.', 'Give one of them.');
  const thickness = mm2 === undefined ? gauge : `${mm2.replace(/\s*mm(?:2|²|\^2)\s*$/i, '')} mm2`;
  if (thickness === undefined && length === undefined) return undefined;
  if (thickness === undefined || length === undefined) {
    throw bad('A lead needs its thickness and its length.', 'Give --gauge 20 or --mm2 0.5 together with --length 10m.');
  }
  const wire = parseWire(thickness);
  if (!wire) {
    throw bad(`"${shown(mm2 ?? gauge ?? '')}" is no wire known here.`, 'Give --gauge 20 (AWG) or --mm2 0.5.');
  }
  const leadDegC = readOptional('--lead-temperature', leadTemperature) ?? catalogueDegC;
  return { wire, lengthM: readLength(length), leadDegC };
}

function readLength(text: string): number {
  const found = /^(\d+(?:\.\d+)?)\s*(m|metres?|meters?|ft|feet|foot|')?$/i.exec(text.trim());
  if (!found) throw bad(`"${shown(text)}" is no length.`, 'Write it as 10m or 30ft, one way.');
  const isFeet = /^(?:f|')/i.test(found[2] ?? '');
  return Number(found[1]) * (isFeet ? 0.3048 : 1);
}

/** "21C", "70 °F", "294K", "20C..200C", "20C, 100C". A number without a unit takes that of its neighbour, or °C. */
function readTemperatures(text: string, step: string | undefined): readonly number[] {
  const ends = text.split(/\.\.+|…/);
  if (ends.length === 2) return readRange(ends[0] ?? '', ends[1] ?? '', step);
  const items = text.split(/;|,\s+|(?<=[cfk])\s*,/i).map((item) => item.trim());
  if (ends.length > 2 || items.length > mostRows) throw notTemperature('--at', text);
  return items.map((item) => readTemperature('--at', item));
}

function readRange(from: string, to: string, step: string | undefined): readonly number[] {
  const unit = unitOf(to) ?? unitOf(from) ?? '';
  const fromDegC = readTemperature('--at', unitOf(from) ? from : from + unit);
  const toDegC = readTemperature('--at', unitOf(to) ? to : to + unit);
  if (toDegC <= fromDegC) throw bad('The range does not rise.', 'Write the lower temperature first: --at 20C..200C.');
  // Fahrenheit in, round Fahrenheit out: the default step is round in the unit that was typed.
  const perUnit = unit.toLowerCase() === 'f' ? 5 / 9 : 1;
  const stepDegC = step === undefined ? roundStep((toDegC - fromDegC) / perUnit) * perUnit : readStep(step, perUnit);
  const rows = Math.floor((toDegC - fromDegC) / stepDegC + 1e-9) + 1;
  if (rows > mostRows) throw bad(`That would be ${rows} rows.`, `Take a larger --step: ${mostRows} rows are the most.`);
  const list = Array.from({ length: rows }, (_, row) => fromDegC + row * stepDegC);
  return toDegC - (list.at(-1) ?? toDegC) > 1e-9 ? [...list, toDegC] : list;
}

/** The smallest of 1, 2, 5 × 10ⁿ with which the span fits one screen. */
function roundStep(span: number): number {
  const least = span / stepsOnScreen;
  const decade = 10 ** Math.floor(Math.log10(least));
  return decade * ([1, 2, 5, 10].find((factor) => factor * decade >= least) ?? 10);
}

function readStep(text: string, perUnit: number): number {
  const found = /^(\d+(?:\.\d+)?)\s*(?:°|deg)?\s*([cfk])?$/i.exec(text.trim());
  const scale = found?.[2] === undefined ? perUnit : found[2].toLowerCase() === 'f' ? 5 / 9 : 1;
  const stepDegC = Number(found?.[1]) * scale;
  if (stepDegC > 0) return stepDegC;
  throw bad(`"${shown(text)}" is no step.`, 'Write it as 10C or 20F.');
}

function unitOf(text: string): string | undefined {
  return /([cfk])\s*$/i.exec(text)?.[1];
}

function readOptional(option: string, text: string | undefined): number | undefined {
  return text === undefined ? undefined : readTemperature(option, text);
}

function readTemperature(option: string, text: string): number {
  const found = /^([+\-−–]?)(\d+(?:\.\d+)?)\s*(?:°|deg)?\s*([cfk])?$/i.exec(text.trim());
  if (!found) throw notTemperature(option, text);
  const value = Number(found[2]) * (/[-−–]/.test(found[1] ?? '') ? -1 : 1);
  const unit = (found[3] ?? 'c').toLowerCase();
  const degC = unit === 'f' ? ((value - 32) * 5) / 9 : unit === 'k' ? value - 273.15 : value;
  if (degC < -273.15 - 1e-9) throw bad(`${option} ${shown(text)} is below absolute zero.`, 'Correct it.');
  return degC;
}

function notTemperature(option: string, text: string): LogProblem {
  const comma = /\d,\d/.test(text)
    ? ' A comma between digits could mean two things: use a point, or "; " in a list.'
    : '';
  const todo =
    option === '--at' ? 'Write 21C, 70F or 294K, a range 20C..200C or a list "20C; 100C".' : 'Write 21C, 70F or 294K.';
  return bad(`${option} "${shown(text)}" is no temperature.`, todo + comma);
}

function readSpan(text: string): CurrentSpan {
  const ends = text.split(/\.\.+|…/);
  const unit = unitOf(ends[1] ?? '') ?? '';
  if (ends.length !== 2) throw bad(`"${shown(text)}" is no span.`, 'Write the temperatures at 4 and 20 mA: 0C..200C.');
  const [low = '', high = ''] = ends;
  const lowDegC = readTemperature('--span', unitOf(low) ? low : low + unit);
  const highDegC = readTemperature('--span', high);
  if (lowDegC === highDegC) throw bad('Both ends of --span are the same.', 'Give two different temperatures.');
  return { lowDegC, highDegC };
}

/** Units of a meter, lower case but for M (mega) against m (milli). */
const unitScales = new Map<string, readonly ['ohm' | 'mV' | 'mA', number]>([
  ['ohm', ['ohm', 1]],
  ['r', ['ohm', 1]],
  ['k', ['ohm', 1e3]],
  ['kohm', ['ohm', 1e3]],
  ['Mohm', ['ohm', 1e6]],
  ['M', ['ohm', 1e6]],
  ['mohm', ['ohm', 1e-3]],
  ['mv', ['mV', 1]],
  ['uv', ['mV', 1e-3]],
  ['v', ['mV', 1e3]],
  ['ma', ['mA', 1]],
  ['a', ['mA', 1e3]],
]);

function readMeasured(text: string): Measured {
  const plain = text.trim();
  if (/^(?:ol|o\.l\.?|0l|open|overload|inf(?:inity)?|∞)$/i.test(plain)) return 'open';
  if (/^short$/i.test(plain)) return { value: 0, unit: undefined };
  const found = /^([+\-−–]?)(\d+(?:\.\d+)?)\s*(\S*)$/.exec(plain);
  const unitText = found?.[3] ?? '';
  const scale = unitText === '' ? ([undefined, 1] as const) : unitScales.get(plainUnit(unitText));
  if (!found || !scale) {
    const comma = /\d,\d/.test(plain) ? ' Use a point for decimals.' : '';
    throw bad(`--measured "${shown(text)}" is no measurement.`, `Write 112.3, 1.1k, -0.5mV, 12mA or OL.${comma}`);
  }
  const value = Number(found[2]) * (/[-−–]/.test(found[1] ?? '') ? -1 : 1);
  return { value: value * scale[1], unit: scale[0] };
}

/** Ω in its three guises and µ in both become letters; only M keeps its case. */
function plainUnit(text: string): string {
  const letters = text.replace(/[Ω\u2126ω]|ohms/gi, 'ohm').replace(/[µμ]/g, 'u');
  return letters.startsWith('M') && /^M(?:ohm)?$/i.test(letters)
    ? `M${letters.slice(1).toLowerCase()}`
    : letters.toLowerCase();
}

/** What was typed, cut short so that a sentence stays one. */
function shown(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
