import type {
  AlarmParameters,
  CardParameters,
  SensorKind,
  SensorParameters,
  ZoneParameters,
} from '../plant-parameters.js';
import type { Random } from '../random.js';
import type { ControllerParameters } from '../temperature-controller.js';
import type { ThermalParameters } from '../thermal-zone.js';
import type { ZoneFamily } from './words.js';

/** What zones of one plant have in common. */
export interface PlantHabits {
  readonly kind: SensorKind;
  readonly wires: 2 | 3 | 4;
  readonly input: CardParameters;
  readonly alarms: AlarmParameters;
  readonly controllerKind: ControllerParameters['kind'];
  readonly onInputFail: ControllerParameters['onInputFail'];
  readonly noiseDegC: number;
  readonly logsRelay: boolean;
}

/** Bodies of the trade: mass range (kg), specific heat (J/kg·K: aluminium 6061 896, carbon steel 480), set points (°C). */
const bodies = {
  bar: { fromKg: 0.3, toKg: 5, specificHeat: 896, fromDegC: 105, toDegC: 215 },
  platen: { fromKg: 3, toKg: 25, specificHeat: 896, fromDegC: 85, toDegC: 190 },
  barrel: { fromKg: 6, toKg: 50, specificHeat: 480, fromDegC: 150, toDegC: 270 },
  nozzle: { fromKg: 0.25, toKg: 2, specificHeat: 480, fromDegC: 170, toDegC: 300 },
} as const;

const roomDegC = 22;

/** Numbers that neighbouring zones of a machine share, so that they look alike as real ones do. */
export interface MachineBody {
  readonly family: ZoneFamily;
  readonly massKg: number;
  readonly fullPowerKPerS: number;
  readonly duty: number;
  readonly heaterLagS: number;
  readonly sensorLagS: number;
  readonly setpointDegC: number;
  readonly recipeStepsDegC: readonly number[];
  readonly loadShare: number;
  readonly neighbourShare: number;
}

export function drawMachineBody(random: Random, family: ZoneFamily, recipes: number): MachineBody {
  const { fromKg, toKg, specificHeat, fromDegC, toDegC } = bodies[family.body];
  const massKg = random.logUniform(fromKg, toKg);
  // Heat-up in 3 to 45 minutes, heavy bodies slower.
  const heatUpS = random.logUniform(180, 900) * (1 + massKg / 20) * (specificHeat < 600 && massKg > 5 ? 2 : 1);
  const setpointDegC = Math.round(random.uniform(fromDegC, toDegC));
  return {
    family,
    massKg,
    fullPowerKPerS: (1.25 * (setpointDegC - roomDegC)) / heatUpS,
    duty: random.uniform(0.12, 0.5),
    heaterLagS: random.logUniform(4, 45),
    sensorLagS: random.logUniform(2, 20),
    setpointDegC,
    recipeStepsDegC: Array.from({ length: recipes }, (_, i) => (i === 0 ? 0 : Math.round(random.uniform(-25, 25)))),
    loadShare: random.uniform(0, 0.7),
    neighbourShare: random.logUniform(0.02, 0.6),
  };
}

export function drawZone(
  random: Random,
  name: string,
  machine: number,
  card: string,
  body: MachineBody,
  habits: PlantHabits,
): ZoneParameters {
  const massKg = body.massKg * random.uniform(0.8, 1.25);
  const setpointDegC = body.setpointDegC + (random.chance(0.6) ? 0 : Math.round(random.uniform(-20, 20)));
  const setpointsDegC = body.recipeStepsDegC.map((step) => setpointDegC + step);
  const drawn = drawThermal(random, body, massKg, setpointDegC);
  const wantedWPerK = drawn.lossWPerK * body.loadShare * random.uniform(0.7, 1.3);
  const hottestDegC = Math.max(...setpointsDegC);
  const thermal = withReserve(drawn, wantedWPerK, hottestDegC);
  const controller = tune(random, thermal, habits);
  const loadWPerK = Math.min(wantedWPerK, bearableLoadWPerK(thermal, controller, hottestDegC));
  return {
    name,
    machine,
    card,
    thermal,
    controller,
    sensor: drawSensor(random, setpointDegC, habits),
    input: habits.input,
    alarms: habits.alarms,
    neighbourWPerK: thermal.lossWPerK * body.neighbourShare,
    loadWPerK,
    cycleShare: random.chance(0.5) ? random.uniform(0, 1) : 0,
    airOffsetDegC: 0.5 * random.gauss(),
    setpointsDegC,
    cutoutAboveK: random.uniform(50, 120),
  };
}

function drawThermal(random: Random, body: MachineBody, massKg: number, setpointDegC: number): ThermalParameters {
  const bodyJPerK = massKg * bodies[body.family.body].specificHeat;
  const duty = Math.min(0.6, body.duty * random.uniform(0.8, 1.25));
  const powerW = Math.round((body.fullPowerKPerS * random.uniform(0.85, 1.2) * bodyJPerK) / 10) * 10;
  const heaterJPerK = bodyJPerK * random.uniform(0.02, 0.12);
  return {
    bodyJPerK,
    heaterJPerK,
    contactWPerK: heaterJPerK / (body.heaterLagS * random.uniform(0.8, 1.25)),
    lossWPerK: (powerW * duty) / (setpointDegC - roomDegC),
    lossGrowthPerK: random.uniform(0, 0.002),
    powerW,
    sensorLagS: body.sensorLagS * random.uniform(0.7, 1.4),
  };
}

/** Builders leave power in hand: the hottest recipe with product needs at most 60 % of it, so 85 % where the output is limited to 70 %. */
function withReserve(thermal: ThermalParameters, loadWPerK: number, hottestDegC: number): ThermalParameters {
  const aboveAirK = hottestDegC - roomDegC;
  const neededW = (thermal.lossWPerK * (1 + thermal.lossGrowthPerK * aboveAirK) + loadWPerK) * aboveAirK;
  return { ...thermal, powerW: Math.max(thermal.powerW, Math.ceil(neededW / 0.6 / 10) * 10) };
}

/** A line whose start takes its zones out of band would not have been accepted: the load may pull a zone down by about 6 K. */
function bearableLoadWPerK(thermal: ThermalParameters, controller: ControllerParameters, hottestDegC: number): number {
  const answerW = (6 * controller.gainPercentPerK * thermal.powerW) / 100;
  return answerW / (hottestDegC - roomDegC);
}

/** Inside class B of IEC 60751 (±(0.3 + 0.005·|t|)) or ±2.2 °C for thermocouples (ASTM E230), two standard deviations at the limit. */
function drawSensor(random: Random, setpointDegC: number, habits: PlantHabits): SensorParameters {
  const isPlatinum = habits.kind.startsWith('pt');
  const offset = (): number => random.gauss() * (isPlatinum ? 0.2 : 0.5);
  return {
    kind: habits.kind,
    wires: habits.wires,
    badLeg: random.sign(),
    offsetDegC: offset(),
    gainError: random.gauss() * (isPlatinum ? 0.0018 : (0.5 * 2.2) / Math.max(150, setpointDegC)),
    noiseDegC: habits.noiseDegC * random.uniform(0.7, 1.5),
    spareOffsetDegC: offset(),
  };
}

/** On-off control is fit only for slow bodies: what full power adds during the lags must stay small. */
function controllerKind(
  thermal: ThermalParameters,
  wanted: ControllerParameters['kind'],
): ControllerParameters['kind'] {
  const lagS = thermal.heaterJPerK / thermal.contactWPerK + thermal.sensorLagS;
  const overshootK = (lagS * thermal.powerW) / thermal.bodyJPerK;
  return wanted === 'on-off' && overshootK > 6 ? 'pid' : wanted;
}

/** Lambda tuning of a PI loop for a first-order lag with delay (Skogestad's SIMC rules); one in eight is tuned badly. */
function tune(random: Random, thermal: ThermalParameters, habits: PlantHabits): ControllerParameters {
  const delayS = 0.5 * (thermal.heaterJPerK / thermal.contactWPerK) + thermal.sensorLagS + 3;
  const percentPerW = 100 / thermal.powerW;
  const closedLoopS = delayS * random.uniform(1, 4);
  const isHunting = random.chance(0.12);
  const gain = (thermal.bodyJPerK * percentPerW) / (closedLoopS + delayS);
  return {
    kind: controllerKind(thermal, habits.controllerKind),
    gainPercentPerK: Math.min(80, gain * (isHunting ? random.uniform(1.5, 3) : random.uniform(0.5, 1))),
    integralS:
      Math.max(20, 4 * (closedLoopS + delayS)) * (isHunting ? random.uniform(0.15, 0.5) : random.uniform(1, 2)),
    derivativeS: random.chance(0.4) ? 0.3 * delayS : 0,
    maxPercent: random.chance(0.85) ? 100 : random.int(70, 95),
    hysteresisK: random.uniform(1, 4),
    cycleS: Math.min(random.pick([2, 4, 6, 10, 20]), Math.max(2, (3 * thermal.bodyJPerK) / thermal.powerW)),
    onInputFail: habits.onInputFail,
    logsRelay: habits.logsRelay,
  };
}
