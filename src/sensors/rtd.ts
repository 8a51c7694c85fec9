import { outsideDegC, refused, say, type Answer, type Refused } from './answer.js';
import type { PlatinumCurve, RtdCurve, TableCurve } from './rtd-curves.js';
import type { RtdSpec } from './sensor-types.js';

/** A printed table rounds to 0.01 ohm on a 100 ohm element: so far beyond an end still counts as that end. */
const roundingOfZeroOhm = 0.005 / 100;

/**
 * Resistance of an element at a temperature.
 *
 * @returns ohm, or a refusal outside the curve's range. Source: the curve's own (`sensor.curve.source`).
 */
export function rtdOhm(sensor: RtdSpec, degC: number): Answer<{ readonly ohm: number }> {
  const { curve } = sensor;
  const outside = outsideDegC(sensor.label, degC, curve.lowDegC, curve.highDegC);
  return outside ?? { ok: true, ohm: sensor.zeroOhm * ratioAt(curve, degC) };
}

/**
 * Temperature at which an element has this resistance: the exact inverse of `rtdOhm` (above 0 °C the root of the
 * quadratic, below by Newton's iteration, in a table by its straight pieces).
 *
 * @returns degC, or a refusal outside the curve's range; for platinum below the range the refusal carries
 *   `shortMarkerDegC`.
 */
export function rtdDegC(sensor: RtdSpec, ohm: number): Answer<{ readonly degC: number }> {
  if (!Number.isFinite(ohm)) return refused('not-a-number', `The resistance for ${sensor.label} is not a number.`);
  const { curve, zeroOhm } = sensor;
  const lowOhm = zeroOhm * ratioAt(curve, curve.lowDegC);
  const highOhm = zeroOhm * ratioAt(curve, curve.highDegC);
  const roundingOhm = zeroOhm * roundingOfZeroOhm;
  if (ohm < lowOhm - roundingOhm) return belowTable(sensor, ohm, lowOhm);
  if (ohm > highOhm + roundingOhm) {
    const ends = `${say(highOhm, 2)} Ω (${say(curve.highDegC)} °C)`;
    return refused('above-range', `${say(ohm, 2)} Ω is above ${ends}, where the table for ${sensor.label} ends.`);
  }
  if (ohm <= lowOhm) return { ok: true, degC: curve.lowDegC };
  if (ohm >= highOhm) return { ok: true, degC: curve.highDegC };
  return { ok: true, degC: degCAtRatio(curve, ohm / zeroOhm) };
}

/** Slope dR/dt in ohm per °C at a temperature; refused outside the curve's range. In a table: of the piece there. */
export function rtdOhmPerDegC(sensor: RtdSpec, degC: number): Answer<{ readonly ohmPerDegC: number }> {
  const { curve } = sensor;
  const outside = outsideDegC(sensor.label, degC, curve.lowDegC, curve.highDegC);
  return outside ?? { ok: true, ohmPerDegC: sensor.zeroOhm * slopeAt(curve, degC) };
}

function belowTable(sensor: RtdSpec, ohm: number, lowOhm: number): Refused {
  const begins = `${say(lowOhm, 2)} Ω (${say(sensor.curve.lowDegC)} °C)`;
  const below = refused(
    'below-range',
    `${say(ohm, 2)} Ω is below ${begins}, where the table for ${sensor.label} begins.`,
  );
  const { curve } = sensor;
  // Carried on, the 3.851e-3 equation meets 0 ohm at −242.02 °C; a card that does so shows that for a short.
  if (curve.kind !== 'callendar-van-dusen' || curve.cPerDegC4 === 0 || ohm < 0) return below;
  return { ...below, shortMarkerDegC: belowZeroDegC(curve, ohm / sensor.zeroOhm) };
}

function ratioAt(curve: RtdCurve, degC: number): number {
  return curve.kind === 'table' ? tableRatio(curve, degC) : platinumRatio(curve, degC);
}

function slopeAt(curve: RtdCurve, degC: number): number {
  if (curve.kind === 'callendar-van-dusen') return platinumSlope(curve, degC);
  const [from, to] = pieceOf(curve, (row) => row[0] > degC);
  return (to[1] - from[1]) / (to[0] - from[0]);
}

function degCAtRatio(curve: RtdCurve, ratio: number): number {
  if (curve.kind === 'table') return tableDegC(curve, ratio);
  return ratio >= 1 ? aboveZeroDegC(curve, ratio) : belowZeroDegC(curve, ratio);
}

function platinumRatio({ aPerDegC, bPerDegC2, cPerDegC4 }: PlatinumCurve, degC: number): number {
  const c = degC < 0 ? cPerDegC4 : 0;
  return 1 + degC * (aPerDegC + degC * (bPerDegC2 + degC * c * (degC - 100)));
}

function platinumSlope({ aPerDegC, bPerDegC2, cPerDegC4 }: PlatinumCurve, degC: number): number {
  const c = degC < 0 ? cPerDegC4 : 0;
  return aPerDegC + degC * (2 * bPerDegC2 + degC * c * (4 * degC - 300));
}

/** Root of B·t² + A·t = ratio − 1, written so that nothing cancels near 0 °C. */
function aboveZeroDegC({ aPerDegC, bPerDegC2 }: PlatinumCurve, ratio: number): number {
  const rise = ratio - 1;
  return (2 * rise) / (aPerDegC + Math.sqrt(aPerDegC * aPerDegC + 4 * bPerDegC2 * rise));
}

/** The quadratic alone is 2.4 °C out at −200 °C, so it only starts the iteration. */
function belowZeroDegC(curve: PlatinumCurve, ratio: number): number {
  let degC = aboveZeroDegC(curve, ratio);
  for (let step = 0; step < 20; step++) {
    const moveDegC = (platinumRatio(curve, degC) - ratio) / platinumSlope(curve, degC);
    degC -= moveDegC;
    if (Math.abs(moveDegC) < 1e-11) break;
  }
  return degC;
}

type Row = readonly [degC: number, ratio: number];

/** The two neighbouring rows, the upper of which is the first that `isAbove`; the last two when none is. */
function pieceOf({ rows }: TableCurve, isAbove: (row: Row) => boolean): readonly [Row, Row] {
  const found = rows.findIndex(isAbove);
  const upper = found < 0 ? rows.length - 1 : Math.max(1, found);
  return [rows[upper - 1]!, rows[upper]!];
}

function tableRatio(curve: TableCurve, degC: number): number {
  const [from, to] = pieceOf(curve, (row) => row[0] > degC);
  return from[1] + ((to[1] - from[1]) * (degC - from[0])) / (to[0] - from[0]);
}

function tableDegC(curve: TableCurve, ratio: number): number {
  const [from, to] = pieceOf(curve, (row) => row[1] > ratio);
  return from[0] + ((to[0] - from[0]) * (ratio - from[1])) / (to[1] - from[1]);
}
