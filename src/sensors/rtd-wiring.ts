import type { Answer } from './answer.js';
import { rtdDegC, rtdOhm } from './rtd.js';
import type { RtdSpec } from './sensor-types.js';

export type Wires = 2 | 3 | 4;

/** Two terminals exchanged. Numbers are those of `RtdWiring`; 4-wire: 1 current, 2 sense, 3 sense, 4 current. */
export type Swap = '1-2' | '1-3' | '2-3';

/**
 * What lies between an RTD element and its input, in ohm. Element ends are P and Q.
 *
 * - 2 wires: lead 1 on P, lead 2 on Q.
 * - 3 wires: lead 1 alone on P; leads 2 and 3 on Q. Lead 2 carries the current back and is the compensating one,
 *   lead 3 only senses.
 * - 4 wires: leads 1 and 2 on P, 3 and 4 on Q; current in 1 and 4, sense on 2 and 3.
 */
export interface RtdWiring {
  readonly wires: Wires;
  readonly lead1Ohm?: number;
  readonly lead2Ohm?: number;
  readonly lead3Ohm?: number;
  readonly lead4Ohm?: number;
  /** Path in parallel; left out = none. */
  readonly leakOhm?: number;
  /** Where the leak lies: across the element (wet head, failed sheath) or across the input's terminals. */
  readonly leakAt?: 'element' | 'terminals';
  /** Terminals exchanged at the input. */
  readonly swapped?: Swap;
}

export interface WiredReading {
  /** Resistance the input takes for the element's; negative when swapped leads turn the sign. */
  readonly seenOhm: number;
  readonly readingDegC: number;
  readonly offsetDegC: number;
}

/** Two resistances side by side; a leak of Infinity changes nothing, 0 is a short. */
export function parallelOhm(elementOhm: number, leakOhm: number): number {
  if (!Number.isFinite(leakOhm)) return elementOhm;
  const sumOhm = elementOhm + leakOhm;
  return sumOhm === 0 ? 0 : (elementOhm * leakOhm) / sumOhm;
}

/**
 * The resistance an input computes from an element and its wiring: exact circuit arithmetic, no linearising.
 *
 * The input takes 2 wires as they are; with 3 it takes the drop between terminals 2 and 3 off twice, so it sees
 * element + lead 1 − lead 2 (an input with two matched currents sees the same); with 4 it sees the element.
 *
 * @returns ohm; NaN in, NaN out. Never throws. Source: circuit arithmetic; which lead compensates is common practice.
 */
export function seenOhm(elementOhm: number, wiring: RtdWiring): number {
  const { wires, leakOhm = Infinity, leakAt = 'element', swapped } = wiring;
  const atElement = leakAt === 'element' ? parallelOhm(elementOhm, leakOhm) : elementOhm;
  const acrossOhm = leakAt === 'terminals' ? leakOhm : Infinity;
  if (wires === 2) return twoWireOhm(atElement, wiring, acrossOhm);
  if (wires === 3) return threeWireOhm(atElement, wiring, acrossOhm);
  return fourWireOhm(atElement, acrossOhm, swapped);
}

/**
 * What an input shows for a sensor at a true temperature behind this wiring.
 *
 * @param card Type and curve set on the input; the sensor's own unless given (Pt100 read as Pt1000, α mixed up).
 * @returns reading and offset (reading minus truth) in °C, or why the input shows a value off its scale.
 */
export function readThroughWiring(
  sensor: RtdSpec,
  trueDegC: number,
  wiring: RtdWiring,
  card: RtdSpec = sensor,
): Answer<WiredReading> {
  const element = rtdOhm(sensor, trueDegC);
  if (!element.ok) return element;
  const ohm = seenOhm(element.ohm, wiring);
  const reading = rtdDegC(card, ohm);
  if (!reading.ok) return reading;
  return { ok: true, seenOhm: ohm, readingDegC: reading.degC, offsetDegC: reading.degC - trueDegC };
}

function twoWireOhm(elementOhm: number, { lead1Ohm = 0, lead2Ohm = 0 }: RtdWiring, acrossOhm: number): number {
  // Exchanging the two wires changes nothing: resistance has no sign.
  return parallelOhm(lead1Ohm + elementOhm + lead2Ohm, acrossOhm);
}

function threeWireOhm(elementOhm: number, wiring: RtdWiring, acrossOhm: number): number {
  const { lead1Ohm = 0, lead2Ohm = 0, lead3Ohm = 0, swapped } = wiring;
  if (swapped === '1-2') return throughLeak(lead1Ohm + elementOhm + lead2Ohm, lead1Ohm + elementOhm, acrossOhm);
  // Terminal 1 now leads to Q: the current goes out by lead 3 and back by lead 2, past the element.
  if (swapped === '1-3') return throughLeak(lead3Ohm + lead2Ohm, lead2Ohm, acrossOhm);
  const backOhm = swapped === '2-3' ? lead3Ohm : lead2Ohm;
  return throughLeak(lead1Ohm + elementOhm + backOhm, backOhm, acrossOhm);
}

/** Loop less twice its return lead; a leak across terminals 1 and 2 takes its share of the current. */
function throughLeak(loopOhm: number, backOhm: number, acrossOhm: number): number {
  const plainOhm = loopOhm - 2 * backOhm;
  if (!Number.isFinite(acrossOhm)) return plainOhm;
  return acrossOhm === 0 ? 0 : (plainOhm * acrossOhm) / (acrossOhm + loopOhm);
}

function fourWireOhm(elementOhm: number, acrossOhm: number, swapped: Swap | undefined): number {
  if (swapped === '1-2') return parallelOhm(elementOhm, acrossOhm);
  // Exchanging the two sense wires turns the sign; current wire 1 on the far end sends no current through the element.
  if (swapped === '2-3') return -parallelOhm(elementOhm, acrossOhm);
  return swapped === '1-3' ? 0 : parallelOhm(elementOhm, acrossOhm);
}
