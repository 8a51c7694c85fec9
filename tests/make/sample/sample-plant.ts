import type { FaultPlan } from '../faults/fault.js';
import type { LogFormat } from '../log/log-format.js';
import { makePlant } from '../make-plant.js';
import type { Plant } from '../made-plant.js';
import type { LookAlike, PlantParameters } from '../plant-parameters.js';
import { Random } from '../random.js';
import { blisterFormer, traySealer1, traySealer2 } from './sample-formats.js';
import { sampleMachine, sampleZone, type SampleZone } from './sample-zones.js';

const hourS = 3600;
const dayS = 86400;
/** Monday 7 September 2026, midnight in Europe/Oslo (UTC+2). */
const startMs = Date.UTC(2026, 8, 6, 22);
const days = 14;

/** Seconds from the start of the log to a clock time of a day in September 2026. */
function at(dayOfMonth: number, hour: number): number {
  return (dayOfMonth - 7) * dayS + hour * hourS;
}

interface SampleMachine {
  readonly name: string;
  readonly seed: number;
  readonly everyS: number;
  readonly wires: 3 | 4;
  readonly format: LogFormat;
  readonly zones: readonly SampleZone[];
  readonly faults: readonly FaultPlan[];
  readonly lookAlikes: readonly LookAlike[];
}

const fault = (
  plan: Partial<FaultPlan> & Pick<FaultPlan, 'kind' | 'zone' | 'onsetS' | 'shape' | 'numbers'>,
): FaultPlan => ({ fixedS: null, bypassAfterS: 2 * hourS, repairStopS: 0, ...plan });

const flexCable = fault({
  kind: 'wire_flex_open',
  zone: 1,
  onsetS: at(11, 8),
  shape: 'opens',
  numbers: {
    perRunningHour: 0.5,
    stoppedShare: 0,
    meanOpenS: 3,
    burstMean: 2.5,
    growthPerDay: 0.17,
    strandShare: 0.3,
    breaksAfterS: Infinity,
  },
});
const wetTerminals = fault({
  kind: 'wire_wet',
  zone: 4,
  onsetS: at(11, 0),
  shape: 'wash-down',
  numbers: { shuntOhm: 4500, dryS: 4 * hourS, spanS: dayS },
});
const drift = fault({
  kind: 'sensor_drift',
  zone: 3,
  onsetS: at(10, 14),
  shape: 'linear',
  numbers: { finalDegC: -5.5, spanS: 10 * dayS },
});
const lostHeater = fault({
  kind: 'heater_half',
  zone: 2,
  onsetS: at(15, 11),
  shape: 'gone',
  numbers: { shareLeft: 0.55, spanS: 0, flipS: 1 },
});
const openElement = fault({
  kind: 'sensor_open',
  zone: 2,
  onsetS: at(16, 10.65),
  fixedS: at(16, 13.4),
  bypassAfterS: null,
  repairStopS: 1500,
  shape: 'clean',
  numbers: { warningS: 0, warningPerHour: 1, meanOpenS: 5 },
});

const machines: readonly SampleMachine[] = [
  {
    name: 'TS1',
    seed: 2101,
    everyS: 10,
    wires: 3,
    format: traySealer1,
    zones: [
      { name: 'TS1 Top seal left', card: '1A', massKg: 3.1, powerW: 1000, duty: 0.28, setpointDegC: 152 },
      { name: 'TS1 Top seal right', card: '1A', massKg: 3.1, powerW: 1000, duty: 0.29, setpointDegC: 152 },
      { name: 'TS1 Bottom seal left', card: '1A', massKg: 3.4, powerW: 1000, duty: 0.31, setpointDegC: 148 },
      { name: 'TS1 Bottom seal right', card: '1A', massKg: 3.4, powerW: 1000, duty: 0.3, setpointDegC: 148 },
      { name: 'TS1 Preheat', card: '1B', massKg: 5.5, powerW: 1500, duty: 0.24, setpointDegC: 120 },
      { name: 'TS1 Cut bar', card: '1B', massKg: 1.4, powerW: 500, duty: 0.33, setpointDegC: 135 },
    ],
    faults: [flexCable, wetTerminals],
    lookAlikes: [{ kind: 'thick-product', machine: 0, zone: -1, startS: at(9, 9), endS: at(9, 20), size: 1.6 }],
  },
  {
    name: 'TS2',
    seed: 2102,
    everyS: 30,
    wires: 3,
    format: traySealer2,
    zones: [
      { name: 'TS2 Top seal left', card: '2A', massKg: 2.9, powerW: 900, duty: 0.27, setpointDegC: 150 },
      { name: 'TS2 Top seal right', card: '2A', massKg: 2.9, powerW: 900, duty: 0.28, setpointDegC: 150 },
      { name: 'TS2 Bottom seal', card: '2A', massKg: 4.2, powerW: 1400, duty: 0.29, setpointDegC: 146 },
      { name: 'TS2 Preheat', card: '2A', massKg: 5.1, powerW: 1500, duty: 0.22, setpointDegC: 118 },
      { name: 'TS2 Coding plate', card: '2B', massKg: 1.1, powerW: 400, duty: 0.3, setpointDegC: 128 },
    ],
    faults: [lostHeater, drift],
    lookAlikes: [{ kind: 'draught', machine: 0, zone: -1, startS: at(17, 12), endS: at(17, 16), size: 1.3 }],
  },
  {
    name: 'BF1',
    seed: 2103,
    everyS: 60,
    wires: 4,
    format: blisterFormer,
    zones: [
      { name: 'BF1 Forming plate upper', card: '3A', massKg: 8, powerW: 2200, duty: 0.26, setpointDegC: 128 },
      { name: 'BF1 Forming plate lower', card: '3A', massKg: 8, powerW: 2200, duty: 0.27, setpointDegC: 128 },
      { name: 'BF1 Sealing plate left', card: '3A', massKg: 6.2, powerW: 1800, duty: 0.3, setpointDegC: 172 },
      { name: 'BF1 Sealing plate right', card: '3B', massKg: 6.2, powerW: 1800, duty: 0.31, setpointDegC: 172 },
      { name: 'BF1 Preheat roll', card: '3B', massKg: 9.5, powerW: 2400, duty: 0.23, setpointDegC: 96 },
    ],
    faults: [openElement],
    lookAlikes: [{ kind: 'restart', machine: 0, zone: -1, startS: at(14, 9.2), endS: at(14, 9.3), size: 0 }],
  },
];

function parametersOf(machine: SampleMachine): PlantParameters {
  const random = new Random(machine.seed);
  return {
    seed: machine.seed,
    name: machine.name,
    startMs,
    days,
    pattern: '2shift',
    air: { meanDegC: 21, daySwingK: 1.4, weekendDropK: 1.5, wanderK: 0.4, trendKPerDay: -0.05, enclosureShare: 0.02 },
    machines: [sampleMachine(machine.name)],
    zones: machine.zones.map((zone) => sampleZone(random, zone, machine.wires)),
    faults: machine.faults,
    lookAlikes: machine.lookAlikes,
    recorder: { everyS: machine.everyS, gaps: [], freezes: [], logsMean: false, zeroRows: 2, jitterS: 0 },
    format: machine.format,
  };
}

/** The invented packer of sterile trays: two tray sealers and a blister former, each with a log of its own. */
export function samplePlants(): Plant[] {
  return machines.map((machine) => makePlant(parametersOf(machine)));
}

/** What the site's plant.yaml says beside the zones. */
export const sampleSite = {
  timezone: 'Europe/Oslo',
  costPerHour: { TS1: 900, TS2: 900, BF1: 1400 },
  currency: 'EUR',
} as const;
