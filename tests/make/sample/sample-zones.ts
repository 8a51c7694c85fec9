import type { CardParameters, MachineParameters, ZoneParameters } from '../plant-parameters.js';
import type { Random } from '../random.js';
import type { ControllerParameters } from '../temperature-controller.js';

/** What tells one zone of the sample plant from another; the rest follows from physics. */
export interface SampleZone {
  readonly name: string;
  readonly card: string;
  readonly massKg: number;
  readonly powerW: number;
  /** Share of full power that holds the set point in still air. */
  readonly duty: number;
  readonly setpointDegC: number;
}

/** Aluminium 6061, J/(kg·K): materials pages, typical value. */
const aluminiumJPerKgK = 896;
const roomDegC = 22;

const input: CardParameters = {
  filterS: 1,
  openRampS: 0,
  holdsLastS: 0,
  settlesAfterOpen: false,
  rangeTopDegC: 600,
  opensLow: false,
  resolutionDegC: 0.1,
  shortPlace: 0,
};

/** Plain PI tuning: gain for a closed loop of about two minutes. */
function controller(zone: SampleZone): ControllerParameters {
  return {
    kind: 'pid',
    gainPercentPerK: (zone.massKg * aluminiumJPerKgK * 100) / zone.powerW / 90,
    integralS: 300,
    derivativeS: 0,
    maxPercent: 100,
    hysteresisK: 2,
    cycleS: 4,
    onInputFail: 'zero',
    logsRelay: false,
  };
}

export function sampleZone(random: Random, zone: SampleZone, wires: 3 | 4): ZoneParameters {
  const lossWPerK = (zone.powerW * zone.duty) / (zone.setpointDegC - roomDegC);
  const bodyJPerK = zone.massKg * aluminiumJPerKgK;
  return {
    name: zone.name,
    machine: 0,
    card: zone.card,
    thermal: {
      bodyJPerK,
      heaterJPerK: 0.06 * bodyJPerK,
      contactWPerK: (0.06 * bodyJPerK) / 12,
      lossWPerK,
      lossGrowthPerK: 0.0008,
      powerW: zone.powerW,
      sensorLagS: 6,
    },
    controller: controller(zone),
    sensor: {
      kind: 'pt100',
      wires,
      badLeg: 1,
      offsetDegC: 0.2 * random.gauss(),
      gainError: 0.0015 * random.gauss(),
      noiseDegC: random.uniform(0.05, 0.12),
      spareOffsetDegC: 0.2 * random.gauss(),
    },
    input,
    alarms: { lowK: 8, highK: 8, deviationDelayS: 20, inputDelayS: 1, waitsForBand: true },
    neighbourWPerK: 0.15 * lossWPerK,
    loadWPerK: 0.35 * lossWPerK,
    cycleShare: 0.4,
    airOffsetDegC: 0.3 * random.gauss(),
    setpointsDegC: [zone.setpointDegC, zone.setpointDegC - 8],
    cutoutAboveK: 80,
  };
}

export function sampleMachine(name: string): MachineParameters {
  return {
    name,
    rest: 'off',
    standbyDegC: 60,
    warmUpS: 2700,
    breaksPerShift: 1,
    cycleS: 5,
    stopsPerHour: 0.7,
    stopMedianS: 130,
    longStopsPerDay: 0.15,
    stopsAfterInputS: 4,
    stopsAfterDeviationS: 40,
    restartS: 75,
    washDownsPerDay: 2,
    speedChangesPerShift: 1,
    changeoversPerDay: 0.6,
    nudgesPerDay: 0.1,
  };
}
