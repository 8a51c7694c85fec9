import type { FaultKind, FaultPlan } from '../faults/fault.js';
import { fullScaleDegC, type LogFormat } from '../log/log-format.js';
import type {
  CardParameters,
  PlantParameters,
  RecorderParameters,
  SensorKind,
  ShiftPattern,
  ZoneParameters,
} from '../plant-parameters.js';
import type { Random } from '../random.js';
import type { ControllerParameters } from '../temperature-controller.js';
import { drawFault, faultWeights } from './draw-fault.js';
import { drawFormat } from './draw-format.js';
import { drawLookAlikes, drawMachine } from './draw-machine.js';
import { drawMachineBody, drawZone, type PlantHabits } from './draw-zone.js';
import { machineNames, zoneFamilies } from './words.js';

const dayS = 86400;
const dayMs = 86_400_000;

/** What a caller may hold fixed; the rest is drawn. */
export interface DrawOptions {
  readonly seed?: number;
  readonly has?: LogFormat['has'];
  readonly days?: number;
  readonly everyS?: number;
  readonly pattern?: ShiftPattern;
  readonly unit?: 'C' | 'F';
  readonly hasPlantFile?: boolean;
  /** Share of zones that get a fault; drawn from none to 60 % when absent. */
  readonly faultShare?: number;
  /** Draw faults of these kinds only. */
  readonly kinds?: readonly FaultKind[];
  /** Most cells that the temperature log may hold; fewer zones and days are drawn to keep to it. */
  readonly cellLimit?: number;
}

/** Draws one plant; wide ranges on purpose. */
export function drawPlantParameters(random: Random, options: DrawOptions = {}): PlantParameters {
  const has = options.has ?? random.weighted<LogFormat['has']>({ full: 62, nosp: 22, pvonly: 16 });
  const unit = options.unit ?? (random.chance(0.28) ? 'F' : 'C');
  const drawn = drawFormat(random.fork('format'), has, unit);
  const hasPlantFile = options.hasPlantFile ?? drawn.hasPlantFile;
  // A local clock that nothing explains cannot be compared with the truth, so it goes with a plant file or an offset.
  const timezone = hasPlantFile || drawn.time === 'iso-t-offset' ? drawn.timezone : null;
  const format = { ...drawn, hasPlantFile, timezone };
  const everyS =
    options.everyS ?? Number(random.weighted({ 1: 3, 2: 3, 5: 5, 10: 15, 15: 6, 20: 8, 30: 26, 60: 26, 120: 8 }));
  const sizes = drawSizes(random.fork('sizes'), everyS, has, options);
  const zones = drawZones(random.fork('zones'), sizes.perMachine, format);
  const names = random.pick(machineNames);
  const rest = random.chance(0.75) ? 'off' : 'standby';
  const machines = sizes.perMachine.map((_, index) =>
    drawMachine(random.fork(`machine ${index}`), names[index] ?? `M${index + 1}`, rest),
  );
  const named = nameZones(zones, sizes.perMachine.length > 1 ? machines.map(({ name }) => name) : null, random);
  const washed = machines.map(({ washDownsPerDay }) => washDownsPerDay > 0);
  const faults = drawFaults(random.fork('faults'), named, sizes.days, washed, options);
  const byMachine = machines.map((_, index) =>
    named.flatMap(({ machine }, place) => (machine === index ? [place] : [])),
  );
  return {
    seed: options.seed ?? random.int(1, 2 ** 31),
    name: 'made plant',
    startMs: Date.UTC(2026, 0, 1) + random.int(0, 300) * dayMs - offsetMs(format.timezone),
    days: sizes.days,
    pattern:
      options.pattern ??
      random.weighted<ShiftPattern>({
        '24x7': 10,
        '3shift5': 16,
        '3shift6': 6,
        '2shift': 28,
        '2shift6': 8,
        '1shift': 20,
        '1shift4': 6,
        'long-day': 6,
      }),
    air: {
      meanDegC: random.uniform(16, 27),
      daySwingK: random.uniform(0.3, 4),
      weekendDropK: random.uniform(0, 4),
      wanderK: random.uniform(0.2, 1.2),
      trendKPerDay: random.uniform(-0.15, 0.15),
      enclosureShare: random.uniform(0, 0.06),
    },
    machines,
    zones: named,
    faults,
    lookAlikes: drawLookAlikes(random.fork('look-alikes'), sizes.days, machines.length, byMachine),
    recorder: drawRecorder(random.fork('recorder'), everyS, sizes.days),
    format: {
      ...format,
      clockJump: random.chance(0.06)
        ? { atS: random.uniform(0.2, 0.8) * sizes.days * dayS, byS: random.pick([3600, -3600, -120, 300, 7200]) }
        : null,
    },
  };
}

/** The winter offset is near enough to start at a local midnight; in summer the log starts an hour off. */
function offsetMs(timezone: string | null): number {
  const hours: Record<string, number> = {
    'Europe/Oslo': 1,
    'America/Chicago': -6,
    'Asia/Singapore': 8,
    'Europe/London': 0,
  };
  return (timezone === null ? 0 : (hours[timezone] ?? 0)) * 3_600_000;
}

interface Sizes {
  readonly days: number;
  readonly perMachine: readonly number[];
}

function drawSizes(random: Random, everyS: number, has: LogFormat['has'], options: DrawOptions): Sizes {
  const { days: fixedDays, cellLimit = 1_000_000 } = options;
  const columns = has === 'full' ? 3 : has === 'nosp' ? 2 : 1;
  const perMachine = Array.from({ length: random.pick([1, 1, 1, 2, 2, 3, 4]) }, () => random.int(3, 10));
  const isFast = everyS < 5;
  const wantedDays = fixedDays ?? Math.round(random.logUniform(isFast ? 2 : 6, isFast ? 5 : everyS >= 30 ? 35 : 16));
  const cellsPerZone = (days: number): number => (columns * days * dayS) / everyS;
  const total = (): number => perMachine.reduce((sum, zones) => sum + zones, 0);
  // Fewer days first, down to a week, then fewer machines, then fewer zones: peers are worth more than days.
  const shortest = Math.min(wantedDays, isFast ? 2 : 7);
  const fewestDays = fixedDays ?? shortest;
  while (total() * cellsPerZone(fewestDays) > cellLimit && perMachine.length > 1) perMachine.pop();
  while (total() * cellsPerZone(fewestDays) > cellLimit && total() > 3) perMachine[0] = total() - 1;
  const fitting = Math.floor(cellLimit / (total() * cellsPerZone(1)));
  return { days: fixedDays ?? Math.max(fewestDays, Math.min(wantedDays, fitting)), perMachine };
}

function drawHabits(random: Random, format: LogFormat): PlantHabits {
  const kind = random.weighted<SensorKind>({ pt100: 52, pt1000: 14, 'tc-k': 22, 'tc-j': 12 });
  const isPlatinum = kind.startsWith('pt');
  const controllerKind = random.weighted<ControllerParameters['kind']>({
    pid: 70,
    'time-proportioned': 22,
    'on-off': 8,
  });
  return {
    kind,
    wires: isPlatinum ? random.pick([2, 3, 3, 3, 4] as const) : 2,
    input: drawInput(random, isPlatinum, format),
    alarms: {
      lowK: random.uniform(5, 20),
      highK: random.uniform(5, 20),
      deviationDelayS: random.logUniform(3, 90),
      inputDelayS: random.pick([0, 0, 1, 2, 4]),
      waitsForBand: random.chance(0.75),
    },
    controllerKind,
    onInputFail: random.chance(0.88) ? 'zero' : 'hold-mean',
    noiseDegC: random.logUniform(0.02, 0.4),
    logsRelay: random.chance(0.25),
  };
}

function drawInput(random: Random, isPlatinum: boolean, format: LogFormat): CardParameters {
  const highDegC = fullScaleDegC(format, 'high');
  return {
    filterS: random.pick([0, 0, 1, 2, 5]),
    openRampS: random.chance(0.3) ? random.uniform(1, 6) : 0,
    settlesAfterOpen: random.chance(0.3),
    holdsLastS: random.chance(0.15) ? random.logUniform(1, 20) : 0,
    rangeTopDegC: highDegC < 900 ? highDegC : random.pick([400, 500, 600, 800, 850]),
    opensLow: isPlatinum ? random.chance(0.03) : random.chance(0.15),
    resolutionDegC: random.pick([0.01, 0.05, 0.1, 0.1, 0.5]),
    shortPlace: random.pick([0, 0, 0.1, 0.3]),
  };
}

function drawZones(random: Random, perMachine: readonly number[], format: LogFormat): ZoneParameters[] {
  const habits = drawHabits(random.fork('habits'), format);
  const family = random.pick(zoneFamilies);
  const recipes = random.pick([1, 2, 3, 4]);
  const perCard = random.pick([2, 4, 4, 6, 8]);
  return perMachine.flatMap((count, machine) => {
    const body = drawMachineBody(random, family, recipes);
    return Array.from({ length: Math.min(count, family.names.length) }, (_, i) => {
      const card = `${machine + 1}${String.fromCharCode(65 + Math.floor(i / perCard))}`;
      return drawZone(
        random.fork(`zone ${machine} ${i}`),
        family.names[i] ?? `Zone ${i + 1}`,
        machine,
        card,
        body,
        habits,
      );
    });
  });
}

/** With several machines the machine's name leads the zone's. */
function nameZones(
  zones: readonly ZoneParameters[],
  machines: readonly string[] | null,
  random: Random,
): ZoneParameters[] {
  if (machines === null) return [...zones];
  const joiner = random.pick([' ', ' ', '_', '.', '-']);
  return zones.map((zone) => ({ ...zone, name: `${machines[zone.machine] ?? ''}${joiner}${zone.name}` }));
}

function drawFaults(
  random: Random,
  zones: readonly ZoneParameters[],
  days: number,
  washed: readonly boolean[],
  options: DrawOptions,
): FaultPlan[] {
  const share = options.faultShare ?? (random.chance(0.12) ? 0 : random.uniform(0.08, 0.55));
  const weights = options.kinds
    ? Object.fromEntries(options.kinds.map((kind) => [kind, faultWeights[kind]]))
    : faultWeights;
  const taken = new Set<number>();
  const faults: FaultPlan[] = [];
  zones.forEach((parameters, zone) => {
    if (taken.has(zone) || !random.chance(share)) return;
    const kind = random.weighted<FaultKind>(weights);
    const plan = drawFault(random, kind, { zone, parameters, days, hasWashDowns: washed[parameters.machine] ?? false });
    for (const place of zonesHit(plan, zones)) {
      if (taken.has(place)) continue;
      taken.add(place);
      faults.push({ ...plan, zone: place });
    }
    // Rarely a zone has a second, later fault; the truth tells the first.
    if (random.chance(0.03) && !kind.startsWith('card'))
      faults.push(drawFault(random, 'sensor_drift', { zone, parameters, days, hasWashDowns: false }));
  });
  return faults;
}

/** A card fault hits every zone of its card. */
function zonesHit(plan: FaultPlan, zones: readonly ZoneParameters[]): number[] {
  if (plan.kind !== 'card_blips' && plan.kind !== 'card_reference') return [plan.zone];
  const card = zones[plan.zone]?.card;
  return zones.flatMap((zone, place) => (zone.card === card ? [place] : []));
}

function drawRecorder(random: Random, everyS: number, days: number): RecorderParameters {
  const stretch = (fromS: number, toS: number): { startS: number; endS: number } => {
    const startS = random.uniform(0.05, 0.95) * days * dayS;
    return { startS, endS: startS + random.logUniform(fromS, toS) };
  };
  return {
    everyS,
    gaps: random.chance(0.4) ? Array.from({ length: random.int(1, 3) }, () => stretch(120, 8 * 3600)) : [],
    freezes: random.chance(0.15) ? [stretch(300, 3 * 3600)] : [],
    logsMean: random.chance(0.08) && everyS >= 10,
    zeroRows: random.pick([0, 1, 1, 2, 3]),
    jitterS: random.chance(0.1) && everyS >= 5 ? Math.floor(everyS / 5) : 0,
  };
}
