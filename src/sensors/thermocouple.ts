import { outsideDegC, refused, say, type Answer, type Refused } from './answer.js';
import {
  thermocoupleTables,
  type ForwardPiece,
  type InversePiece,
  type ThermocoupleLetter,
} from './thermocouple-tables.js';

/** NIST prints the ends of its voltage ranges to 0.001 mV: so far beyond an end still counts as that end. */
const roundingMv = 0.0005;

/**
 * Voltage with the reference junction at 0 °C.
 *
 * @returns mV, or a refusal outside the range. Source: NIST Monograph 175 / SRD 60, ITS-90.
 */
export function emfMv(letter: ThermocoupleLetter, degC: number): Answer<{ readonly mV: number }> {
  const pieces = thermocoupleTables[letter].forward;
  const outside = outsideDegC(`thermocouple type ${letter}`, degC, pieces[0]!.lowDegC, pieces.at(-1)!.highDegC);
  return outside ?? { ok: true, mV: forwardMv(pieces, degC) };
}

/** Slope in mV per °C (the Seebeck coefficient); refused outside the range. Source as `emfMv`. */
export function emfMvPerDegC(letter: ThermocoupleLetter, degC: number): Answer<{ readonly mvPerDegC: number }> {
  const pieces = thermocoupleTables[letter].forward;
  const outside = outsideDegC(`thermocouple type ${letter}`, degC, pieces[0]!.lowDegC, pieces.at(-1)!.highDegC);
  return outside ?? { ok: true, mvPerDegC: slopeMv(pieceAt(pieces, degC), degC) };
}

/**
 * Temperature from a voltage referred to 0 °C, by the inverse polynomials as published, with their stated error of a
 * few hundredths of a degree. For a log's readings use `emfDegC`; this one starts its iteration.
 *
 * @returns degC, or a refusal outside the published voltage ranges (from −200 °C; J from −210 °C).
 */
export function publishedInverseDegC(letter: ThermocoupleLetter, mV: number): Answer<{ readonly degC: number }> {
  const piece = inversePieceAt(letter, mV);
  return 'ok' in piece ? piece : { ok: true, degC: polynomial(piece.d, mV) };
}

/**
 * Temperature from a voltage referred to 0 °C: the published inverse, refined by Newton's iteration until the
 * reference function itself gives this voltage, so inverse and forward agree to better than 1e-6 °C.
 *
 * @returns degC, or a refusal outside the published voltage ranges (from −200 °C; J from −210 °C).
 */
export function emfDegC(letter: ThermocoupleLetter, mV: number): Answer<{ readonly degC: number }> {
  const start = publishedInverseDegC(letter, mV);
  if (!start.ok) return start;
  const pieces = thermocoupleTables[letter].forward;
  let degC = clamp(start.degC, letter);
  for (let step = 0; step < 12; step++) {
    const moveDegC = (forwardMv(pieces, degC) - mV) / slopeMv(pieceAt(pieces, degC), degC);
    const nextDegC = clamp(degC - moveDegC, letter);
    const movedDegC = Math.abs(nextDegC - degC);
    degC = nextDegC;
    if (movedDegC < 1e-10) break;
  }
  return { ok: true, degC };
}

/**
 * Voltage at the terminals with the tip at one temperature and the terminals (reference junction) at another:
 * E(tip) − E(reference). What a meter shows, if all wire up to there is of the thermocouple's own alloys.
 */
export function terminalMv(
  letter: ThermocoupleLetter,
  tipDegC: number,
  referenceDegC: number,
): Answer<{ readonly mV: number }> {
  const tip = emfMv(letter, tipDegC);
  if (!tip.ok) return tip;
  const reference = emfMv(letter, referenceDegC);
  return reference.ok ? { ok: true, mV: tip.mV - reference.mV } : reference;
}

/** Temperature of the tip from the voltage at the terminals and their temperature: cold-junction compensation. */
export function tipDegC(
  letter: ThermocoupleLetter,
  mV: number,
  referenceDegC: number,
): Answer<{ readonly degC: number }> {
  const reference = emfMv(letter, referenceDegC);
  return reference.ok ? emfDegC(letter, mV + reference.mV) : reference;
}

function forwardMv(pieces: readonly ForwardPiece[], degC: number): number {
  const piece = pieceAt(pieces, degC);
  const { exponential } = piece;
  const bumpMv = exponential ? exponential.a0 * Math.exp(exponential.a1 * (degC - exponential.a2) ** 2) : 0;
  return polynomial(piece.c, degC) + bumpMv;
}

function slopeMv({ c, exponential }: ForwardPiece, degC: number): number {
  const straight = c.reduceRight((sum, value, power) => (power === 0 ? sum : sum * degC + power * value), 0);
  if (!exponential) return straight;
  const { a0, a1, a2 } = exponential;
  return straight + a0 * Math.exp(a1 * (degC - a2) ** 2) * 2 * a1 * (degC - a2);
}

/** The upper piece owns the temperature where two meet: for K the piece from 0 °C is 2e-9 mV there, not exactly 0. */
function pieceAt(pieces: readonly ForwardPiece[], degC: number): ForwardPiece {
  return pieces.findLast((piece) => degC >= piece.lowDegC) ?? pieces[0]!;
}

function inversePieceAt(letter: ThermocoupleLetter, mV: number): InversePiece | Refused {
  const what = `thermocouple type ${letter}`;
  const pieces = thermocoupleTables[letter].inverse;
  const lowest = pieces[0]!;
  const highest = pieces.at(-1)!;
  if (!Number.isFinite(mV)) return refused('not-a-number', `The voltage for ${what} is not a number.`);
  if (mV < lowest.lowMv - roundingMv) {
    const begins = `${say(lowest.lowMv, 3)} mV (${say(lowest.lowDegC)} °C)`;
    return refused('below-range', `${say(mV, 3)} mV is below ${begins}, where the table for ${what} begins.`);
  }
  if (mV > highest.highMv + roundingMv) {
    const ends = `${say(highest.highMv, 3)} mV (${say(highest.highDegC)} °C)`;
    return refused('above-range', `${say(mV, 3)} mV is above ${ends}, where the table for ${what} ends.`);
  }
  return pieces.findLast((piece) => mV >= piece.lowMv) ?? lowest;
}

/** Keeps the iteration inside the table of the whole type; the joints between pieces are no walls. */
function clamp(degC: number, letter: ThermocoupleLetter): number {
  const pieces = thermocoupleTables[letter].inverse;
  return Math.min(Math.max(degC, pieces[0]!.lowDegC), pieces.at(-1)!.highDegC);
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, value) => sum * x + value, 0);
}
