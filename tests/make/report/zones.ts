import type { Cause, Probabilities } from '../../../src/model/cause.js';
import { causes } from '../../../src/model/cause.js';
import type { AlarmMark, SymptomNote, TermNote, ZoneFinding } from '../../../src/model/findings.js';
import { expectedMeasurements } from '../../../src/sensors/expected-measurements.js';
import type { SensorId } from '../../../src/sensors/sensor-types.js';
import { Random } from '../random.js';
import { bucketMs, dayMs, isRunning, makeTrace, type MadeSpan } from './traces.js';

export const startMs = Date.UTC(2026, 1, 2);
export const days = 14;
export const endMs = startMs + days * dayMs;

export const iso = (ms: number): string => new Date(ms).toISOString();

export function share(parts: Partial<Record<Cause, number>>): Probabilities {
  return Object.fromEntries(causes.map((cause) => [cause, parts[cause] ?? 0])) as Probabilities;
}

const healthyShare = share({ sensor: 0.012, wiring: 0.008, input: 0.003, heater: 0.005, recording: 0.002, none: 0.97 });
const setpoints = [182, 182, 176, 176, 165, 165, 190, 150] as const;

/** A healthy zone with everything a log can hold; faults are laid over it. */
export function healthyZone(index: number, zone: string, machine: string, sensor: SensorId = 'pt100'): ZoneFinding {
  const setpointDegC = setpoints[index % setpoints.length]!;
  const random = new Random(1000 + index);
  const soakDays = [0, 6, 7, 13];
  return {
    zone,
    machine,
    rank: index + 1,
    status: 'healthy',
    probabilities: healthyShare,
    onset: null,
    fixed: null,
    offsetDegC: 0.1,
    seriesOhm: null,
    shuntOhm: null,
    downtimeMinutes: 0,
    symptoms: [],
    unable: [],
    checks: expectedMeasurements(sensor, { wires: 3, roomDegC: 19.4, roomFrom: 'soak', setpointDegC }),
    terms: [
      term('steady-soaks', 'its cold reading agrees with its neighbours', 1, { none: 1.4, sensor: -1.1 }),
      term('no-opens', 'no open circuit in the log or the alarms', 1, { none: 0.9, wiring: -0.8, sensor: -0.4 }),
    ],
    prior: { sensor: -2.4, wiring: -2.6, input: -4, heater: -3.2, recording: -4, none: 0 },
    sensor,
    wires: 3,
    card: `${1 + (index >> 2)}A`,
    setpointDegC,
    roomDegC: 19.4,
    leavesTolerance: null,
    trend: null,
    nextCheck: null,
    repairs: [],
    soaks: soakDays.map((day) => soak(day, random.gauss() * 0.12)),
    duty: Array.from({ length: days }, (_, day) => duty(day, random.gauss() * 0.6)),
    opensByDay: Array.from({ length: days }, (_, day) => ({ day: dayText(day), running: 0, stopped: 0 })),
    trace: makeTrace(traceRecipe(index, setpointDegC)),
    alarmMarks: [],
  };
}

function traceRecipe(seed: number, setpointDegC: number) {
  const still = { hasOutput: true, opens: [], dutyShift: () => 0, noiseDegC: 0.5 };
  return { seed, startMs, days, setpointDegC, roomDegC: 19.4, ...still };
}

export function term(
  name: string,
  says: string,
  value: number,
  adds: Readonly<Partial<Record<Cause, number>>>,
): TermNote {
  return { term: name, says, value, adds };
}

export const dayText = (day: number): string => iso(startMs + day * dayMs).slice(0, 10);

export function soak(day: number, offsetDegC: number) {
  return { time: iso(startMs + day * dayMs + 4 * 3_600_000), offsetDegC, uncertaintyDegC: 0.25 };
}

export function duty(day: number, residualDegC: number) {
  return { time: iso(startMs + day * dayMs + 9 * 3_600_000), residualDegC, residualPercent: residualDegC * 0.3 };
}

export function symptom(
  detector: string,
  fromMs: number,
  toMs: number,
  count: number,
  facts: Readonly<Record<string, number>>,
): SymptomNote {
  return { detector, start: iso(fromMs), end: iso(toMs), count, facts };
}

/** Opens of a flexing cable: more each day, nearly all while the machine moves. */
export function flexingOpens(seed: number, fromDay: number): readonly MadeSpan[] {
  const random = new Random(seed);
  const spans: MadeSpan[] = [];
  for (let day = fromDay; day < days; day++) {
    for (let n = 0; n < (day - fromDay + 1) * 2; n++) {
      const at = startMs + day * dayMs + random.uniform(6, 22) * 3_600_000;
      if (isRunning(at)) spans.push({ startMs: at, endMs: at + random.logUniform(1, 90) * 1000 });
    }
  }
  return spans.sort((a, b) => a.startMs - b.startMs);
}

/** The zone with a loose lead. */
export function looseLeadZone(index: number, zone: string, machine: string): ZoneFinding {
  const base = healthyZone(index, zone, machine);
  const opens = flexingOpens(77, 8);
  const marks: readonly AlarmMark[] = opens.map((span) => ({
    start: iso(span.startMs + 1000),
    end: iso(span.endMs + 2000),
    message: `${zone} sensor open`,
  }));
  const runningOf = (day: string): number => opens.filter((span) => iso(span.startMs).startsWith(day)).length;
  const first = opens[0]!.startMs;
  const last = opens.at(-1)!.endMs;
  return {
    ...base,
    status: 'faulty',
    probabilities: share({ sensor: 0.13, wiring: 0.81, input: 0.02, heater: 0.005, recording: 0.005, none: 0.03 }),
    onset: iso(first),
    downtimeMinutes: 212,
    trend: 'worse',
    nextCheckId: 'move-the-cable',
    nextCheck: 'Locked out, meter on the cabinet end: move cable, plug and terminals. Does the value jump?',
    symptoms: [
      symptom('sensor-opens', first, last, opens.length, {
        openCount: opens.length,
        longestOpenMinutes: 88 / 60,
        opensPerDay: opens.length / 6,
        alarmedShare: 0.92,
        standingMinutes: 0,
      }),
      symptom('opens-by-running', first, last, opens.length, {
        runningCount: opens.length - 1,
        runningHours: 61.5,
        stoppedCount: 1,
        stoppedHours: 24.2,
        runningShare: 0.97,
        rateRatio: 28,
        runningHigherPValue: 0.00003,
      }),
      symptom('opens-growth', first, last, opens.length, {
        firstCount: 9,
        firstHours: 48,
        lastCount: opens.length - 9,
        lastHours: 47,
        rateRatio: 3.1,
      }),
      symptom('spikes', first, first + 4 * bucketMs, 12, { largestSizeDegC: 41.5, medianSizeDegC: 9, spikesPerDay: 2 }),
    ],
    faultMarks: opens.map((span) => ({ start: iso(span.startMs), end: iso(span.endMs), kind: 'open' })),
    terms: [
      term('opens-move', 'opens come while the machine moves, hardly ever while it stands', 1, {
        wiring: 2.6,
        sensor: 0.3,
        none: -2,
      }),
      term('opens-short', 'opens last seconds and heal by themselves', 0.9, { wiring: 1.2, sensor: 0.2, none: -1.1 }),
      term('opens-grow', 'more opens each day', 0.8, { wiring: 0.7, sensor: 0.5, none: -0.6 }),
      term('soak-agrees', 'its cold reading agrees with its neighbours', 1, { sensor: -0.9, none: 0.4 }),
    ],
    unable: [{ detector: 'wet-recovery', why: 'No wash-down can be told from this log: no running state at night.' }],
    opensByDay: base.opensByDay.map(({ day }) => ({
      day,
      running: runningOf(day),
      stopped: day.endsWith('14') ? 1 : 0,
    })),
    repairs: [
      { time: iso(startMs + 3 * dayMs), from: 'maintenance list', done: 'seal bar cleaned', found: 'no fault found' },
    ],
    trace: makeTrace({ ...traceRecipe(index, base.setpointDegC!), opens }),
    alarmMarks: marks,
  };
}

/** The zone whose element drifts while the trace looks perfect. */
export function driftingZone(index: number, zone: string, machine: string): ZoneFinding {
  const base = healthyZone(index, zone, machine);
  const driftDegC = (day: number): number => Math.max(0, day - 3) * 0.42;
  return {
    ...base,
    status: 'faulty',
    probabilities: share({ sensor: 0.72, wiring: 0.17, input: 0.03, heater: 0.02, recording: 0, none: 0.06 }),
    onset: iso(startMs + 3.5 * dayMs),
    offsetDegC: driftDegC(13),
    seriesOhm: 1.6,
    trend: 'worse',
    leavesTolerance: iso(startMs + 5 * dayMs),
    nextCheck:
      'Cold machine: hold a checked thermometer beside the sensor. Does the reading differ by more than its tolerance?',
    symptoms: [
      symptom('slow-drift', startMs + 3 * dayMs, endMs, 1, {
        offsetDegC: driftDegC(13),
        slopeDegCPerDay: 0.42,
        toleranceRatio: 4.2,
      }),
      symptom('cold-soak-offset', startMs + 13 * dayMs, startMs + 13.2 * dayMs, 2, {
        offsetDegC: driftDegC(13),
        uncertaintyDegC: 0.25,
        changeDegC: driftDegC(13),
      }),
      symptom('duty-shift', startMs + 9 * dayMs, endMs, 5, { residualDegC: 3.6, residualPercent: -4.1 }),
    ],
    terms: [
      term('soak-drift', 'its cold reading walks away from its neighbours', 1, {
        sensor: 2.1,
        wiring: 0.9,
        none: -2.4,
      }),
      term('duty-agrees', 'it needs less heat for the same reading, by as much', 0.9, {
        sensor: 0.8,
        heater: -1,
        none: -0.9,
      }),
      term('no-opens', 'no open circuit in the log or the alarms', 1, { wiring: -0.8, sensor: -0.2 }),
    ],
    soaks: [0, 6, 7, 13].map((day) => soak(day, driftDegC(day))),
    duty: base.duty.map((point, day) => ({ ...point, residualDegC: point.residualDegC + driftDegC(day) })),
    trace: makeTrace({
      ...traceRecipe(index, base.setpointDegC!),
      dutyShift: (timeMs) => -driftDegC((timeMs - startMs) / dayMs) * 0.9,
    }),
  };
}

/** A zone worth a look: noisy, cause open. */
export function noisyZone(index: number, zone: string, machine: string): ZoneFinding {
  const base = healthyZone(index, zone, machine, 'tc-k');
  return {
    ...base,
    wires: null,
    status: 'watch',
    probabilities: share({ sensor: 0.31, wiring: 0.27, input: 0.06, heater: 0.01, recording: 0, none: 0.35 }),
    onset: iso(startMs + 10 * dayMs),
    trend: 'steady',
    symptoms: [
      symptom('scatter-growth', startMs + 10 * dayMs, endMs, 4, {
        firstNoiseDegC: 0.6,
        lastNoiseDegC: 2.4,
        growthRatio: 4,
      }),
    ],
    terms: [term('scatter', 'its reading scatters more than it used to', 0.7, { sensor: 0.9, wiring: 0.8, none: -1 })],
    trace: makeTrace({ ...traceRecipe(index, base.setpointDegC!), noiseDegC: 2.2 }),
  };
}

/** A zone of which the log says too little. */
export function untoldZone(index: number, zone: string, machine: string): ZoneFinding {
  const base = healthyZone(index, zone, machine);
  return {
    ...base,
    status: 'insufficient-data',
    probabilities: share({ sensor: 0.09, wiring: 0.08, input: 0.02, heater: 0.03, recording: 0.02, none: 0.76 }),
    offsetDegC: null,
    terms: [],
    soaks: [],
    duty: [],
    unable: [
      { detector: 'cold-soak-offset', why: 'No cold soak: the zone was never off long enough in this window.' },
      { detector: 'duty-shift', why: 'The log has no output column for this zone.' },
    ],
    trace: makeTrace({ ...traceRecipe(index, base.setpointDegC!), hasOutput: false }),
  };
}
