import { say } from '../../sensors/answer.js';
import { currentDegC, currentState } from '../../sensors/current-loop.js';
import { explainOffset, sizeText } from '../../sensors/explain-offset.js';
import type { Explanation } from '../../sensors/explanation.js';
import { usualPlusMinusDegC } from '../../sensors/measure-plan.js';
import { rtdDegC, rtdOhm } from '../../sensors/rtd.js';
import {
  sensorIds,
  sensorTypes,
  type RtdSpec,
  type SensorSpec,
  type ThermocoupleSpec,
} from '../../sensors/sensor-types.js';
import { terminalMv, tipDegC } from '../../sensors/thermocouple.js';
import { toleranceDegC, usualClass, type ToleranceClass } from '../../sensors/tolerance.js';
import { bad, type OhmsRequest } from './ohms-input.js';

export type MeterVerdict = 'open' | 'short' | 'off-table' | 'temperature' | 'fits' | 'high' | 'low' | 'failure-signal';

/** What a measured value says. */
export interface MeasuredAnswer {
  readonly verdict: MeterVerdict;
  readonly signal: 'ohm' | 'mV' | 'mA';
  /** As the meter showed it; null for OL. */
  readonly measured: number | null;
  /** Ohm of cable taken off before reading the table. */
  readonly cableOhm: number;
  readonly readingDegC: number | null;
  readonly expectedDegC: number | null;
  readonly differenceDegC: number | null;
  /** In the unit of `signal`: measured less expected. */
  readonly difference: number | null;
  /** One sentence: the result. */
  readonly says: string;
  readonly explanations: readonly Explanation[];
}

/** Below this share of its 0 °C value an RTD is a short with some wire in series. Common practice. */
const shortShareOfZero = 0.1;
/** A meter shows OL beyond its range; a megohm across a sensor is as good as open. Common practice. */
const openOhm = 1e6;
/** The 2-wire sentence as it stands for a meter. */
const onlyAdd = 'Ohms in series only add: they cannot make a meter read low.';
/** How near another type must come to the expected temperature to be named. Common practice. */
const otherTypeDegC = 5;

/**
 * Reads a measured value backwards.
 *
 * @param pairOhm Two leads of cable between the meter and the sensor, 0 when not known.
 * @throws LogProblem where the unit is not this sensor's.
 */
export function reckonMeasured(
  request: OhmsRequest,
  toleranceClass: ToleranceClass | undefined,
  referenceDegC: number | null,
  pairOhm: number,
): MeasuredAnswer {
  const { sensor, measured } = request;
  const signal = signalOf(sensor);
  const value = measured === 'open' || measured === undefined ? undefined : measured.value;
  if (
    measured !== 'open' &&
    measured?.unit !== undefined &&
    measured.unit !== signal &&
    !isContinuity(sensor, measured)
  ) {
    throw bad(
      `${sensor.label} gives ${unitText(signal)}, not ${unitText(measured.unit)}.`,
      'Correct --measured or --sensor.',
    );
  }
  const expectedDegC = request.atDegC[0] ?? request.roomDegC ?? null;
  const base = { ...blank, signal, measured: value ?? null, expectedDegC };
  if (value === undefined || (signal !== 'mA' && value >= openOhm))
    return { ...base, verdict: 'open', says: openText(sensor) };
  if (sensor.kind === 'rtd') return ofRtd(request, sensor, toleranceClass, value, pairOhm, base);
  if (sensor.kind === 'thermocouple')
    return ofThermocouple(request, sensor, toleranceClass, referenceDegC ?? 25, base, value);
  return ofCurrent(request, base, value);
}

const blank: MeasuredAnswer = {
  verdict: 'temperature',
  signal: 'ohm',
  measured: null,
  cableOhm: 0,
  readingDegC: null,
  expectedDegC: null,
  differenceDegC: null,
  difference: null,
  says: '',
  explanations: [],
};

function ofRtd(
  request: OhmsRequest,
  sensor: RtdSpec,
  toleranceClass: ToleranceClass | undefined,
  measuredOhm: number,
  cableOhm: number,
  base: MeasuredAnswer,
): MeasuredAnswer {
  if (measuredOhm < 0) throw bad('A resistance cannot be below 0 Ω.', 'Correct --measured.');
  const ohm = measuredOhm - cableOhm;
  const answer = { ...base, cableOhm };
  if (ohm < shortShareOfZero * sensor.zeroOhm) {
    const says = `Short: ${sizeText(measuredOhm)} is next to nothing for ${sensor.label}. Measure again at the sensor’s own connector.`;
    return { ...answer, verdict: 'short', says };
  }
  const others = otherTypes(sensor, ohm, base.expectedDegC);
  const reading = rtdDegC(sensor, ohm);
  if (!reading.ok)
    return {
      ...answer,
      verdict: 'off-table',
      says: reading.says,
      explanations: [...others, ...offTable(reading.code)],
    };
  if (base.expectedDegC === null) return temperatureOnly(answer, reading.degC);
  const expected = rtdOhm(sensor, base.expectedDegC);
  const difference = expected.ok ? ohm - expected.ohm : null;
  const compared = compare(request, toleranceClass, answer, reading.degC, difference);
  return compared.verdict === 'fits' ? compared : { ...compared, explanations: [...others, ...compared.explanations] };
}

function ofThermocouple(
  request: OhmsRequest,
  sensor: ThermocoupleSpec,
  toleranceClass: ToleranceClass | undefined,
  referenceDegC: number,
  base: MeasuredAnswer,
  mV: number,
): MeasuredAnswer {
  const reading = tipDegC(sensor.letter, mV, referenceDegC);
  if (!reading.ok) return { ...base, verdict: 'off-table', says: reading.says };
  if (base.expectedDegC === null) return temperatureOnly(base, reading.degC);
  const expected = terminalMv(sensor.letter, base.expectedDegC, referenceDegC);
  const difference = expected.ok ? mV - expected.mV : null;
  return compare({ ...request, referenceDegC }, toleranceClass, base, reading.degC, difference);
}

function ofCurrent(request: OhmsRequest, base: MeasuredAnswer, mA: number): MeasuredAnswer {
  const state = currentState(mA);
  if (state === 'failure-low' || state === 'failure-high') {
    const side = state === 'failure-low' ? '3.6 mA or less' : '21 mA or more';
    const says =
      mA === 0
        ? 'No current: the loop is open or has no supply.'
        : `${say(mA, 2)} mA is a failure signal (${side}, NAMUR NE 43): the transmitter takes its sensor for failed.`;
    return { ...base, verdict: mA === 0 ? 'open' : 'failure-signal', says };
  }
  if (!request.span) {
    return { ...base, says: `${say(mA, 2)} mA is ${say(((mA - 4) / 16) * 100, 1)} % of the span; give --span for °C.` };
  }
  const reading = currentDegC(mA, request.span);
  if (!reading.ok) return { ...base, verdict: 'off-table', says: reading.says };
  return base.expectedDegC === null
    ? temperatureOnly(base, reading.degC)
    : compare(request, undefined, base, reading.degC, null);
}

function temperatureOnly(base: MeasuredAnswer, degC: number): MeasuredAnswer {
  return { ...base, readingDegC: degC, says: `That is ${say(degC, 1)} °C (${say((degC * 9) / 5 + 32, 1)} °F).` };
}

/** Against the temperature that the tip is believed to have. */
function compare(
  request: OhmsRequest,
  toleranceClass: ToleranceClass | undefined,
  base: MeasuredAnswer,
  readingDegC: number,
  difference: number | null,
): MeasuredAnswer {
  const expectedDegC = base.expectedDegC ?? NaN;
  const differenceDegC = readingDegC - expectedDegC;
  const answer = { ...base, readingDegC, differenceDegC, difference };
  const held = toleranceClass ? toleranceDegC(request.sensor, toleranceClass, expectedDegC) : undefined;
  const ownDegC = held?.ok ? held.toleranceDegC : 0;
  const kind = request.atDegC.length > 0 ? 'tip' : 'room';
  const place = `a ${kind} at ${say(expectedDegC, 1)} °C`;
  if (Math.abs(differenceDegC) <= ownDegC + usualPlusMinusDegC) {
    const own = held?.ok ? `±${say(ownDegC, 2)} °C for the sensor, ` : '';
    const says = `Fits ${place}: ${say(differenceDegC, 1)} °C off (${own}±${usualPlusMinusDegC} °C for how well that is known).`;
    return { ...answer, verdict: 'fits', says };
  }
  const side = differenceDegC > 0 ? 'high' : 'low';
  const amount =
    difference === null ? '' : `: ${amountText(base.signal, difference)} too ${difference > 0 ? 'much' : 'little'}`;
  return {
    ...answer,
    verdict: side,
    says: `Reads ${say(Math.abs(differenceDegC), 1)} °C ${side} for ${place}${amount}.`,
    explanations: explanations(request, expectedDegC, readingDegC),
  };
}

/**
 * A meter on two leads sees them as a 2-wire input would, whatever the card has. Other types are named from the
 * measured value itself, see `otherTypes`.
 */
function explanations(request: OhmsRequest, trueDegC: number, readingDegC: number): readonly Explanation[] {
  const { sensor, referenceDegC } = request;
  return explainOffset({
    sensor,
    trueDegC,
    readingDegC,
    wires: 2,
    toleranceClass: request.toleranceClass ?? usualClass(sensor),
    terminalDegC: referenceDegC,
  })
    .explanations.filter((one) => sensor.kind !== 'rtd' || one.reason !== 'other-type-fitted')
    .map((one) => (one.reason === 'series-cannot-read-low' ? { ...one, says: onlyAdd } : one));
}

function otherTypes(sensor: RtdSpec, ohm: number, expectedDegC: number | null): Explanation[] {
  if (expectedDegC === null) return [];
  return sensorIds
    .map((id) => sensorTypes[id])
    .filter((other): other is RtdSpec => other.kind === 'rtd' && other.id !== sensor.id)
    .map((other) => ({ other, found: rtdDegC(other, ohm) }))
    .flatMap(({ other, found }) =>
      found.ok && Math.abs(found.degC - expectedDegC) <= otherTypeDegC ? [{ other, degC: found.degC }] : [],
    )
    .sort((a, b) => Math.abs(a.degC - expectedDegC) - Math.abs(b.degC - expectedDegC))
    .map(({ other, degC }) => ({
      reason: 'other-type-fitted' as const,
      sensible: true,
      points: 'input' as const,
      says: `That is what ${other.label} gives at ${say(degC, 1)} °C: check the type fitted and the type set.`,
      ohm: null,
    }));
}

function offTable(code: string): Explanation[] {
  const says =
    code === 'above-range'
      ? 'Far too many ohms: a wire or the element is about to open, or it is another sensor.'
      : 'Far too few ohms: partly shorted, or it is another sensor.';
  return [{ reason: 'off-the-table', sensible: true, points: null, says, ohm: null }];
}

/** Ohms are also measured on a thermocouple, but only to see whether it is open. */
function isContinuity(sensor: SensorSpec, measured: { readonly value: number; readonly unit: unknown }): boolean {
  return sensor.kind === 'thermocouple' && measured.unit === 'ohm' && measured.value >= openOhm;
}

function openText(sensor: SensorSpec): string {
  if (sensor.kind === 'current') return 'Open: no current. The loop is broken or has no supply.';
  return `Open: the ${sensor.kind === 'rtd' ? 'element' : 'thermocouple'} or a wire is broken. Measure again at the sensor’s own connector.`;
}

function signalOf({ kind }: SensorSpec): 'ohm' | 'mV' | 'mA' {
  return kind === 'rtd' ? 'ohm' : kind === 'thermocouple' ? 'mV' : 'mA';
}

function unitText(signal: 'ohm' | 'mV' | 'mA'): string {
  return signal === 'ohm' ? 'ohms' : signal;
}

function amountText(signal: 'ohm' | 'mV' | 'mA', amount: number): string {
  return signal === 'ohm' ? `${say(Math.abs(amount), 1)} Ω` : `${say(Math.abs(amount), 3)} ${signal}`;
}
