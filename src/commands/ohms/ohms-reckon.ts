import type { Refused } from '../../sensors/answer.js';
import { copperOhm, wireMm2 } from '../../sensors/copper-lead.js';
import { currentMa } from '../../sensors/current-loop.js';
import { rtdOhm, rtdOhmPerDegC } from '../../sensors/rtd.js';
import { readThroughWiring, type Wires } from '../../sensors/rtd-wiring.js';
import type { RtdSpec, SensorSpec, ThermocoupleSpec } from '../../sensors/sensor-types.js';
import { emfMvPerDegC, terminalMv } from '../../sensors/thermocouple.js';
import { className, toleranceDegC, usualClass, type ToleranceClass } from '../../sensors/tolerance.js';
import { bad, type OhmsRequest } from './ohms-input.js';
import { reckonMeasured, type MeasuredAnswer, type MeterVerdict } from './ohms-measured.js';

/** Signal to expect at one temperature, in ohm, mV or mA as `signal` says. */
export interface ExpectedRow {
  readonly atDegC: number;
  readonly atDegF: number;
  readonly signal: 'ohm' | 'mV' | 'mA';
  readonly expected: number;
  /** Band of the tolerance class; null where none is held. */
  readonly low: number | null;
  readonly high: number | null;
  readonly perDegC: number;
  readonly toleranceDegC: number | null;
}

export interface LeadAnswer {
  readonly mm2: number;
  readonly awg: number | null;
  readonly lengthM: number;
  readonly leadDegC: number;
  readonly leadOhm: number;
  readonly pairOhm: number;
  /** Error that the leads leave on this sensor's reading with this wiring, at the first temperature; null = no RTD. */
  readonly readingOffsetDegC: number | null;
}

export interface OhmsAnswer {
  readonly schemaVersion: 1;
  readonly sensor: { readonly id: string; readonly label: string; readonly kind: SensorSpec['kind'] };
  readonly toleranceClass: string | null;
  readonly toleranceLabel: string | null;
  readonly wires: Wires | null;
  readonly referenceDegC: number | null;
  readonly expected: readonly ExpectedRow[];
  readonly lead: LeadAnswer | null;
  readonly measured: MeasuredAnswer | null;
  /** What was assumed or could not be said. */
  readonly notes: readonly string[];
  readonly source: string;
}

/** An ordinary workshop, where nothing is said. Common practice. */
const assumedDegC = 21;
/** Terminals of an input, where nothing is said. Common practice. */
const assumedReferenceDegC = 25;

/** Works the whole card out. @throws LogProblem `bad-argument` where the question has no answer. */
export function reckon(request: OhmsRequest): OhmsAnswer {
  const notes: string[] = [];
  const sensor = request.sensor;
  const toleranceClass = classFor(request);
  const atDegC = temperatures(request, notes);
  const referenceDegC = sensor.kind === 'thermocouple' ? reference(request, notes) : null;
  const expected = atDegC.map((at) => expectedRow(request, toleranceClass, referenceDegC ?? 0, at, notes));
  const lead = reckonLead(request, atDegC[0] ?? assumedDegC, notes);
  const pairOhm = lead?.pairOhm ?? 0;
  const measured =
    request.measured === undefined ? null : reckonMeasured(request, toleranceClass, referenceDegC, pairOhm);
  if (sensor.kind === 'rtd' && measured) notes.push(...inputNote(request.wires, measured.verdict));
  return {
    schemaVersion: 1,
    sensor: { id: sensor.id, label: sensor.label, kind: sensor.kind },
    toleranceClass: toleranceClass ?? null,
    toleranceLabel: toleranceClass ? className(toleranceClass) : null,
    wires: sensor.kind === 'rtd' ? request.wires : null,
    referenceDegC,
    expected,
    lead,
    measured,
    notes: [...new Set(notes)],
    source: sourceOf(sensor),
  };
}

/** A meter on two leads sees other things than an input that takes its leads off. */
function inputNote(wires: Wires, verdict: MeterVerdict): string[] {
  if (wires === 2 || (verdict !== 'high' && verdict !== 'low')) return [];
  if (wires === 4) return verdict === 'high' ? ['Ohms in the leads do not show on a 4-wire input.'] : [];
  return verdict === 'high'
    ? ['Of ohms in the leads a 3-wire input shows only lead 1 less lead 2.']
    : ['A 3-wire input also reads low when lead 2 has more ohms than lead 1; compare 1 and 2 with 1 and 3.'];
}

function classFor({ sensor, toleranceClass }: OhmsRequest): ToleranceClass | undefined {
  if (toleranceClass === undefined) return usualClass(sensor);
  const held = toleranceDegC(sensor, toleranceClass, 100);
  if (held.ok || held.code !== 'no-class') return toleranceClass;
  throw bad(held.says, sensor.kind === 'thermocouple' ? 'Use --class standard or special.' : 'Leave --class out.');
}

/** Asked for, or else the room, so that even the bare question gives a card. */
function temperatures({ sensor, atDegC, roomDegC, span, measured }: OhmsRequest, notes: string[]): readonly number[] {
  if (measured !== undefined && atDegC.length > 1) {
    throw bad('--measured goes with one temperature.', 'Give one --at, or --room.');
  }
  if (sensor.kind === 'current' && !span) {
    if (measured !== undefined) return [];
    throw bad('A transmitter needs its span.', 'Add --span with the temperatures at 4 and 20 mA: --span 0C..200C.');
  }
  if (atDegC.length > 0) return atDegC;
  if (roomDegC !== undefined) return [roomDegC];
  if (measured !== undefined) return [];
  notes.push(`No temperature is given: a room of ${assumedDegC} °C is assumed.`);
  return [assumedDegC];
}

function reference({ referenceDegC, roomDegC }: OhmsRequest, notes: string[]): number {
  if (referenceDegC !== undefined) return referenceDegC;
  if (roomDegC !== undefined) return roomDegC;
  notes.push(`Terminals at ${assumedReferenceDegC} °C assumed: give --reference.`);
  return assumedReferenceDegC;
}

function expectedRow(
  request: OhmsRequest,
  toleranceClass: ToleranceClass | undefined,
  referenceDegC: number,
  atDegC: number,
  notes: string[],
): ExpectedRow {
  const { signal, expected, perDegC } = signalAt(request, referenceDegC, atDegC);
  const tolerance = toleranceClass ? toleranceDegC(request.sensor, toleranceClass, atDegC) : undefined;
  if (tolerance && !tolerance.ok) notes.push(tolerance.says);
  if (!toleranceClass && request.sensor.kind === 'rtd') {
    notes.push(`No table of tolerances is held for ${request.sensor.label}.`);
  }
  const side = tolerance?.ok ? tolerance.toleranceDegC * Math.abs(perDegC) : null;
  return {
    atDegC,
    atDegF: (atDegC * 9) / 5 + 32,
    signal,
    expected,
    low: side === null ? null : expected - side,
    high: side === null ? null : expected + side,
    perDegC,
    toleranceDegC: tolerance?.ok ? tolerance.toleranceDegC : null,
  };
}

type Signal = Pick<ExpectedRow, 'signal' | 'expected' | 'perDegC'>;

function signalAt({ sensor, span }: OhmsRequest, referenceDegC: number, atDegC: number): Signal {
  if (sensor.kind === 'rtd') return rtdSignal(sensor, atDegC);
  if (sensor.kind === 'thermocouple') return thermocoupleSignal(sensor, atDegC, referenceDegC);
  const asked = span ?? { lowDegC: NaN, highDegC: NaN };
  const current = currentMa(atDegC, asked);
  if (!current.ok) throw offTable(current);
  return { signal: 'mA', expected: current.currentMa, perDegC: 16 / (asked.highDegC - asked.lowDegC) };
}

function rtdSignal(sensor: RtdSpec, atDegC: number): Signal {
  const ohm = rtdOhm(sensor, atDegC);
  if (!ohm.ok) throw offTable(ohm);
  const slope = rtdOhmPerDegC(sensor, atDegC);
  if (!slope.ok) throw offTable(slope);
  return { signal: 'ohm', expected: ohm.ohm, perDegC: slope.ohmPerDegC };
}

function thermocoupleSignal({ letter }: ThermocoupleSpec, atDegC: number, referenceDegC: number): Signal {
  const voltage = terminalMv(letter, atDegC, referenceDegC);
  if (!voltage.ok) throw offTable(voltage);
  const slope = emfMvPerDegC(letter, atDegC);
  if (!slope.ok) throw offTable(slope);
  return { signal: 'mV', expected: voltage.mV, perDegC: slope.mvPerDegC };
}

/** Outside a table there is a sentence and no number. */
export function offTable({ says }: Refused): Error {
  return bad(says, 'Ask inside the table, or check the sensor type.');
}

function reckonLead({ lead, sensor, wires }: OhmsRequest, atDegC: number, notes: string[]): LeadAnswer | null {
  if (!lead) return null;
  const ohm = copperOhm(lead.wire, lead.lengthM, lead.leadDegC);
  const area = wireMm2(lead.wire);
  if (!ohm.ok) throw bad(ohm.says, 'Correct the lead.');
  if (!area.ok) throw bad(area.says, 'Correct the lead.');
  if (sensor.kind === 'thermocouple') {
    notes.push('Extension wire is not copper: the ohms of the lead hold for copper only, and hardly matter here.');
  }
  const pairOhm = 2 * ohm.leadOhm;
  return {
    mm2: area.mm2,
    awg: 'awg' in lead.wire ? lead.wire.awg : null,
    lengthM: lead.lengthM,
    leadDegC: lead.leadDegC,
    leadOhm: ohm.leadOhm,
    pairOhm,
    readingOffsetDegC: sensor.kind === 'rtd' ? leadOffset(sensor, wires, ohm.leadOhm, atDegC) : null,
  };
}

function leadOffset(sensor: RtdSpec, wires: Wires, leadOhm: number, atDegC: number): number | null {
  const leads = { lead1Ohm: leadOhm, lead2Ohm: leadOhm, lead3Ohm: leadOhm, lead4Ohm: leadOhm };
  const reading = readThroughWiring(sensor, atDegC, { wires, ...leads });
  return reading.ok ? reading.offsetDegC : null;
}

function sourceOf(sensor: SensorSpec): string {
  if (sensor.kind === 'rtd') return sensor.curve.source;
  return sensor.kind === 'thermocouple' ? 'NIST Monograph 175 / SRD 60, ITS-90' : 'NAMUR NE 43';
}
