import { refused, say, type Answer } from './answer.js';
import { platinum3851, platinum3916 } from './rtd-curves.js';
import type { RtdSpec, SensorSpec, ThermocoupleSpec } from './sensor-types.js';
import type { ThermocoupleLetter } from './thermocouple-tables.js';

export type RtdClass = 'AA' | 'A' | 'B' | 'C' | 'astm-a' | 'astm-b';
export type ThermocoupleClass = 'standard' | 'special';
export type ToleranceClass = RtdClass | ThermocoupleClass;

/** ±(base + share·|t|) °C, within the range in which the class holds. */
interface RtdTolerance {
  readonly label: string;
  readonly baseDegC: number;
  readonly shareOfDegC: number;
  readonly lowDegC: number;
  readonly highDegC: number;
}

/**
 * Platinum. AA to C: IEC 60751:2008 5.1; ranges are those of wire-wound elements (film elements have narrower ones,
 * on which editions differ). ASTM grades: E1137; the formulas from a trade table, grade names and range from memory.
 */
const rtdTolerances: Readonly<Record<RtdClass, RtdTolerance>> = {
  AA: { label: 'class AA', baseDegC: 0.1, shareOfDegC: 0.0017, lowDegC: -50, highDegC: 250 },
  A: { label: 'class A', baseDegC: 0.15, shareOfDegC: 0.002, lowDegC: -100, highDegC: 450 },
  B: { label: 'class B', baseDegC: 0.3, shareOfDegC: 0.005, lowDegC: -196, highDegC: 600 },
  C: { label: 'class C', baseDegC: 0.6, shareOfDegC: 0.01, lowDegC: -196, highDegC: 600 },
  'astm-a': { label: 'ASTM grade A', baseDegC: 0.13, shareOfDegC: 0.0017, lowDegC: -200, highDegC: 650 },
  'astm-b': { label: 'ASTM grade B', baseDegC: 0.25, shareOfDegC: 0.0042, lowDegC: -200, highDegC: 650 },
};

/** The greater of ± a fixed part and ± a share of the temperature, from 0 °C up. */
interface ThermocoupleTolerance {
  readonly fixedDegC: number;
  readonly shareOfDegC: number;
}

/** ANSI MC96.1 / ASTM E230, by trade reprints. */
const thermocoupleTolerances: Readonly<
  Record<ThermocoupleLetter, Readonly<Record<ThermocoupleClass, ThermocoupleTolerance>>>
> = {
  J: { standard: { fixedDegC: 2.2, shareOfDegC: 0.0075 }, special: { fixedDegC: 1.1, shareOfDegC: 0.004 } },
  K: { standard: { fixedDegC: 2.2, shareOfDegC: 0.0075 }, special: { fixedDegC: 1.1, shareOfDegC: 0.004 } },
  T: { standard: { fixedDegC: 1.0, shareOfDegC: 0.0075 }, special: { fixedDegC: 0.5, shareOfDegC: 0.004 } },
  E: { standard: { fixedDegC: 1.7, shareOfDegC: 0.005 }, special: { fixedDegC: 1.0, shareOfDegC: 0.004 } },
};

/** Upper end of the tolerances above, ASTM E230, from memory. */
const thermocoupleHighDegC: Readonly<Record<ThermocoupleLetter, number>> = { J: 760, K: 1260, T: 370, E: 870 };

/** The class to assume where nobody states one: the plain one sold (common practice). */
export function usualClass(sensor: SensorSpec): ToleranceClass | undefined {
  if (sensor.kind === 'thermocouple') return 'standard';
  return sensor.kind === 'rtd' && isPlatinum(sensor) ? 'B' : undefined;
}

/**
 * Tolerance of a sensor at a temperature, in °C either way.
 *
 * @returns A refusal when the class is none of this kind of sensor, or the temperature lies outside the class.
 */
export function toleranceDegC(
  sensor: SensorSpec,
  toleranceClass: ToleranceClass,
  degC: number,
): Answer<{ readonly toleranceDegC: number }> {
  if (!Number.isFinite(degC)) return refused('not-a-number', `The temperature for ${sensor.label} is not a number.`);
  if (sensor.kind === 'rtd' && isPlatinum(sensor) && isRtdClass(toleranceClass)) return ofRtd(toleranceClass, degC);
  if (sensor.kind === 'thermocouple' && isThermocoupleClass(toleranceClass)) {
    return ofThermocouple(sensor, toleranceClass, degC);
  }
  return refused('no-class', `No table of tolerances named ${toleranceClass} is held for ${sensor.label}.`);
}

/** "W0.3" (wire) and "F0.3" (film) name a class by its tolerance at 0 °C, IEC 60751:2008. */
const classByZeroTolerance = new Map<string, RtdClass>([
  ['0.1', 'AA'],
  ['0.15', 'A'],
  ['0.3', 'B'],
  ['0.6', 'C'],
]);
const classByLetter = new Map<string, RtdClass>([
  ['aa', 'AA'],
  ['a', 'A'],
  ['b', 'B'],
  ['c', 'C'],
]);

/** Finds a class in what a person wrote: "B", "class a", "W0.3", "F0.15", "1/3 B" is none, "special", "ASTM grade A". */
export function parseToleranceClass(text: string): ToleranceClass | undefined {
  const plain = text
    .toLowerCase()
    .replace(/[^a-z0-9.]+/g, '')
    .replace(/^class/, '');
  const zeroTolerance = /^[wf](0\.\d+)$/.exec(plain);
  if (zeroTolerance) return classByZeroTolerance.get(zeroTolerance[1] ?? '');
  const astm = /^(?:astm|grade|astmgrade)([ab])$/.exec(plain);
  if (astm) return astm[1] === 'a' ? 'astm-a' : 'astm-b';
  if (plain === 'standard' || plain === 'special') return plain;
  return classByLetter.get(plain);
}

/** How a class is called in a sentence. */
export function className(toleranceClass: ToleranceClass): string {
  return isRtdClass(toleranceClass) ? rtdTolerances[toleranceClass].label : `${toleranceClass} tolerance`;
}

function ofRtd(toleranceClass: RtdClass, degC: number): Answer<{ readonly toleranceDegC: number }> {
  const { label, baseDegC, shareOfDegC, lowDegC, highDegC } = rtdTolerances[toleranceClass];
  if (degC >= lowDegC && degC <= highDegC) return { ok: true, toleranceDegC: baseDegC + shareOfDegC * Math.abs(degC) };
  return refused('outside-class', `${upperFirst(label)} holds only from ${say(lowDegC)} to ${say(highDegC)} °C.`);
}

function ofThermocouple(
  { letter, label }: ThermocoupleSpec,
  toleranceClass: ThermocoupleClass,
  degC: number,
): Answer<{ readonly toleranceDegC: number }> {
  const { fixedDegC, shareOfDegC } = thermocoupleTolerances[letter][toleranceClass];
  const highDegC = thermocoupleHighDegC[letter];
  if (degC >= 0 && degC <= highDegC) return { ok: true, toleranceDegC: Math.max(fixedDegC, shareOfDegC * degC) };
  return refused('outside-class', `The tolerances held for ${label} run only from 0 to ${highDegC} °C.`);
}

function isPlatinum({ curve }: RtdSpec): boolean {
  return curve === platinum3851 || curve === platinum3916;
}

function isRtdClass(toleranceClass: ToleranceClass): toleranceClass is RtdClass {
  return Object.hasOwn(rtdTolerances, toleranceClass);
}

function isThermocoupleClass(toleranceClass: ToleranceClass): toleranceClass is ThermocoupleClass {
  return toleranceClass === 'standard' || toleranceClass === 'special';
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
