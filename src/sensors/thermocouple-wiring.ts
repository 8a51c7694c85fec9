import type { Answer } from './answer.js';
import type { ThermocoupleSpec } from './sensor-types.js';
import { terminalMv, tipDegC } from './thermocouple.js';
import type { ThermocoupleLetter } from './thermocouple-tables.js';

export interface ThermocoupleReading {
  /** Voltage at the input's terminals. */
  readonly terminalMv: number;
  readonly readingDegC: number;
  readonly offsetDegC: number;
}

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
