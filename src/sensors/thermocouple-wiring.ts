import { refused, type Answer } from './answer.js';
import type { ThermocoupleSpec } from './sensor-types.js';
import { terminalMv, tipDegC } from './thermocouple.js';
import type { ThermocoupleLetter } from './thermocouple-tables.js';

export interface ThermocoupleReading {
  /** Voltage at the input's terminals. */
  readonly terminalMv: number;
  readonly readingDegC: number;
  readonly offsetDegC: number;
}

/** Resistance of a usual thermocouple input; common practice: 1 MΩ and more. */
export const usualInputOhm = 1e6;

/** The two leads exchanged at the input: the voltage turns its sign, the reading falls as the zone heats. */
export function reversedAtInput(
  { letter }: ThermocoupleSpec,
  trueDegC: number,
  terminalDegC: number,
): Answer<ThermocoupleReading> {
  const right = terminalMv(letter, trueDegC, terminalDegC);
  return right.ok ? readingFrom(letter, -right.mV, trueDegC, terminalDegC) : right;
}

/**
 * Extension wire exchanged at both ends: the tip counts right, the stretch from head to input counts backwards, so
 * the error is about −2·(head − input).
 */
export function extensionSwapped(
  { letter }: ThermocoupleSpec,
  trueDegC: number,
  headDegC: number,
  terminalDegC: number,
): Answer<ThermocoupleReading> {
  return headAndRun(letter, trueDegC, headDegC, terminalDegC, -1);
}

/** Plain copper in place of extension wire: the stretch from head to input counts for nothing. */
export function copperExtension(
  { letter }: ThermocoupleSpec,
  trueDegC: number,
  headDegC: number,
  terminalDegC: number,
): Answer<ThermocoupleReading> {
  return headAndRun(letter, trueDegC, headDegC, terminalDegC, 0);
}

/** Wires touching in the cable: a new junction there, so the input reads that place and not the tip. */
export function shortedInCable(
  { letter }: ThermocoupleSpec,
  trueDegC: number,
  shortDegC: number,
  terminalDegC: number,
): Answer<ThermocoupleReading> {
  const short = terminalMv(letter, shortDegC, terminalDegC);
  return short.ok ? readingFrom(letter, short.mV, trueDegC, terminalDegC) : short;
}

/** One type of thermocouple on an input set for another, all terminals at one temperature. */
export function thermocoupleReadAs(
  { letter }: ThermocoupleSpec,
  card: ThermocoupleSpec,
  trueDegC: number,
  terminalDegC: number,
): Answer<ThermocoupleReading> {
  const own = terminalMv(letter, trueDegC, terminalDegC);
  return own.ok ? readingFrom(card.letter, own.mV, trueDegC, terminalDegC) : own;
}

/**
 * Series resistance in a thermocouple loop: it divides the voltage with the input's own resistance, and an open-wire
 * test current, where the input sends one, drops over it. Mostly hundredths of a degree.
 *
 * @param testCurrentUa Open-wire test current in µA; 0 = none.
 */
export function thermocoupleThroughSeries(
  { letter }: ThermocoupleSpec,
  trueDegC: number,
  terminalDegC: number,
  seriesOhm: number,
  { inputOhm = usualInputOhm, testCurrentUa = 0 } = {},
): Answer<ThermocoupleReading> {
  if (!(seriesOhm >= 0)) return refused('not-a-number', 'A series resistance must be 0 Ω or more.');
  const right = terminalMv(letter, trueDegC, terminalDegC);
  if (!right.ok) return right;
  const dropMv = testCurrentUa * seriesOhm * 1e-3;
  return readingFrom(letter, (right.mV * inputOhm) / (inputOhm + seriesOhm) + dropMv, trueDegC, terminalDegC);
}

/** @param runSign 1 for extension wire as it should be, −1 exchanged at both ends, 0 for copper. */
function headAndRun(
  letter: ThermocoupleLetter,
  trueDegC: number,
  headDegC: number,
  terminalDegC: number,
  runSign: number,
): Answer<ThermocoupleReading> {
  const tip = terminalMv(letter, trueDegC, headDegC);
  if (!tip.ok) return tip;
  const run = terminalMv(letter, headDegC, terminalDegC);
  return run.ok ? readingFrom(letter, tip.mV + runSign * run.mV, trueDegC, terminalDegC) : run;
}

function readingFrom(
  letter: ThermocoupleLetter,
  mV: number,
  trueDegC: number,
  terminalDegC: number,
): Answer<ThermocoupleReading> {
  const reading = tipDegC(letter, mV, terminalDegC);
  if (!reading.ok) return reading;
  return { ok: true, terminalMv: mV, readingDegC: reading.degC, offsetDegC: reading.degC - trueDegC };
}
