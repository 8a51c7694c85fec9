import type { FaultKind, FaultPlan } from './faults/fault.js';
import type { LogFormat } from './log/log-format.js';
import { makePlant } from './make-plant.js';
import type { Plant } from './made-plant.js';
import type {
  LookAlike,
  MachineParameters,
  PlantParameters,
  SensorKind,
  ShiftPattern,
  ZoneParameters,
} from './plant-parameters.js';
import { Random } from './random.js';
import { traySealer1 } from './sample/sample-formats.js';
import { sampleMachine, sampleZone } from './sample/sample-zones.js';

const hourS = 3600;
const dayS = 86400;

/** What a test wants of its plant; the rest is plain and the same each time. */
export interface SmallPlantWish {
  readonly seed?: number;
  readonly zones?: number;
  readonly days?: number;
  readonly everyS?: number;
  readonly pattern?: ShiftPattern;
  readonly sensor?: SensorKind;
  readonly wires?: 2 | 3 | 4;
  readonly faults?: readonly FaultPlan[];
  readonly lookAlikes?: readonly LookAlike[];
  readonly machine?: Partial<MachineParameters>;
  readonly zone?: Partial<ZoneParameters>;
  readonly format?: Partial<LogFormat>;
}

/** Parameters of one machine of like zones (two to a card) that work one or two shifts from Monday 7 September 2026, UTC. */
export function smallPlantParameters(wish: SmallPlantWish = {}): PlantParameters {
  const { seed = 1, zones = 4, days = 4, everyS = 30, pattern = '2shift', sensor = 'pt100', wires = 3 } = wish;
  const random = new Random(seed);
  return {
    seed,
    name: 'small plant',
    startMs: Date.UTC(2026, 8, 7),
    days,
    pattern,
    air: { meanDegC: 21, daySwingK: 1, weekendDropK: 1, wanderK: 0.3, trendKPerDay: 0, enclosureShare: 0.02 },
    machines: [{ ...sampleMachine('M1'), changeoversPerDay: 0, nudgesPerDay: 0, ...wish.machine }],
    zones: Array.from({ length: zones }, (_, i) => {
      const zone = sampleZone(
        random,
        {
          name: `Zone ${i + 1}`,
          card: `1${String.fromCharCode(65 + Math.floor(i / 2))}`,
          massKg: 3,
          powerW: 1000,
          duty: 0.3,
          setpointDegC: 150,
        },
        wires === 4 ? 4 : 3,
      );
      return { ...zone, sensor: { ...zone.sensor, kind: sensor, wires }, ...wish.zone };
    }),
    faults: wish.faults ?? [],
    lookAlikes: wish.lookAlikes ?? [],
    recorder: { everyS, gaps: [], freezes: [], logsMean: false, zeroRows: 2, jitterS: 0 },
    format: {
      ...traySealer1,
      timezone: null,
      fileName: 'temperatures.csv',
      isGzipped: false,
      runName: 'Running',
      alarms: { ...traySealer1.alarms, fileName: 'alarms.csv', machineWord: 'Machine' },
      ...wish.format,
    },
  };
}

export function smallPlant(wish: SmallPlantWish = {}): Plant {
  return makePlant(smallPlantParameters(wish));
}

/** Middle-of-the-road sizes, so that a test names only what it is about. */
const plainNumbers: Readonly<Record<FaultKind, Readonly<Record<string, number>>>> = {
  sensor_open: { warningS: 0, warningPerHour: 3, meanOpenS: 10 },
  sensor_hot_open: { belowWorkK: 4, perHotHour: 3, closesAfterK: 6, meanOpenS: 300, growthPerDay: 0 },
  sensor_drift: { finalDegC: 6, spanS: 2 * dayS },
  sensor_noise: { noiseDegC: 3, spanS: dayS, flipsPerHour: 20 },
  wire_flex_open: {
    perRunningHour: 4,
    stoppedShare: 0,
    meanOpenS: 5,
    burstMean: 2,
    growthPerDay: 0.1,
    strandShare: 0,
    breaksAfterS: Infinity,
  },
  wire_broken: {
    perRunningHour: 4,
    stoppedShare: 0,
    meanOpenS: 5,
    burstMean: 2,
    growthPerDay: 0.1,
    strandShare: 0,
    breaksAfterS: dayS,
    warningS: dayS,
  },
  wire_contact: { contactOhm: 4, perHour: 1.5, meanOnS: 600, stoppedShare: 0.5, growthPerDay: 0, belowWorkK: 20 },
  wire_wet: { shuntOhm: 5000, dryS: 3 * hourS, spanS: dayS },
  wire_short: { warningS: 0, warningPerHour: 1 },
  card_blips: { perHour: 0.5, meanOpenS: 20, burstMean: 1, cardSeed: 5, zoneShare: 1 },
  card_reference: { finalDegC: 5, spanS: hourS },
  leads_swapped: {},
  channel_frozen: { meanFrozenS: 3600, meanAliveS: 7200 },
  heater_dead: { shareLeft: 0, spanS: 0, flipS: hourS },
  heater_half: { shareLeft: 0.55, spanS: 0, flipS: hourS },
  heater_ageing: { shareLeft: 0.6, spanS: 2 * dayS, flipS: hourS },
  relay_stuck: { flipS: hourS },
  tag_frozen: {},
  tag_missing: {},
};

const plainShapes: Partial<Record<FaultKind, string>> = {
  sensor_drift: 'linear',
  wire_wet: 'wash-down',
  card_reference: 'step',
  heater_half: 'gone',
  heater_dead: 'gone',
  wire_broken: 'opens',
};

/** One fault with plain sizes; `numbers` and `plan` change what the test is about. */
export function plainFault(
  kind: FaultKind,
  zone: number,
  onsetDays: number,
  numbers: Readonly<Record<string, number>> = {},
  plan: Partial<FaultPlan> = {},
): FaultPlan {
  return {
    kind,
    zone,
    onsetS: onsetDays * dayS,
    fixedS: null,
    shape: plainShapes[kind] ?? 'plain',
    numbers: { ...plainNumbers[kind], ...numbers },
    bypassAfterS: 2 * hourS,
    repairStopS: 0,
    ...plan,
  };
}
