import type { LookAlike, MachineParameters } from '../plant-parameters.js';
import type { Random } from '../random.js';

const dayS = 86400;

export function drawMachine(random: Random, name: string, rest: MachineParameters['rest']): MachineParameters {
  const isWashed = random.chance(0.55);
  return {
    name,
    rest,
    standbyDegC: random.int(50, 110),
    warmUpS: random.uniform(1200, 6000),
    breaksPerShift: random.pick([0, 1, 1, 2]),
    cycleS: random.logUniform(1, 12),
    stopsPerHour: random.logUniform(0.15, 4),
    stopMedianS: random.logUniform(40, 420),
    longStopsPerDay: random.uniform(0, 0.5),
    stopsAfterInputS:
      random.weighted({ soon: 80, never: 12, late: 8 }) === 'soon'
        ? random.uniform(0, 15)
        : random.chance(0.5)
          ? Infinity
          : random.uniform(60, 600),
    stopsAfterDeviationS: random.chance(0.8) ? random.uniform(0, 90) : Infinity,
    restartS: random.logUniform(25, 240),
    washDownsPerDay: isWashed ? random.uniform(0.5, 2) : 0,
    speedChangesPerShift: random.uniform(0, 4),
    changeoversPerDay: random.uniform(0, 2),
    nudgesPerDay: random.chance(0.4) ? random.uniform(0.1, 1.5) : 0,
  };
}

/** Zero to five of the things that fool people. */
export function drawLookAlikes(
  random: Random,
  days: number,
  machines: number,
  zonesByMachine: readonly (readonly number[])[],
): LookAlike[] {
  const count = random.pick([0, 0, 1, 1, 2, 3, 5]);
  return Array.from({ length: count }, () => drawLookAlike(random, days, random.int(0, machines - 1), zonesByMachine));
}

function drawLookAlike(
  random: Random,
  days: number,
  machine: number,
  zonesByMachine: readonly (readonly number[])[],
): LookAlike {
  const kind = random.pick([
    'draught',
    'draught',
    'thick-product',
    'fast-line',
    'hot-day',
    'power-cut',
    'restart',
    'restart',
  ] as const);
  const startS = random.uniform(0.05, 0.95) * days * dayS;
  const long = random.logUniform(1200, 2 * dayS);
  switch (kind) {
    case 'draught':
      return {
        kind,
        machine,
        zone: random.chance(0.3) ? random.pick(zonesByMachine[machine] ?? [0]) : -1,
        startS,
        endS: startS + long,
        size: random.uniform(1.15, 1.8),
      };
    case 'thick-product':
      return { kind, machine, zone: -1, startS, endS: startS + long, size: random.uniform(1.2, 2) };
    case 'fast-line':
      return { kind, machine, zone: -1, startS, endS: startS + long, size: random.uniform(1.1, 1.4) };
    case 'hot-day':
      return { kind, machine: -1, zone: -1, startS, endS: startS + 10 * 3600, size: random.uniform(3, 9) };
    case 'power-cut':
      return {
        kind,
        machine: random.chance(0.5) ? -1 : machine,
        zone: -1,
        startS,
        endS: startS + random.logUniform(30, 7200),
        size: 0,
      };
    default:
      return { kind, machine: random.chance(0.3) ? -1 : machine, zone: -1, startS, endS: startS + 60, size: 0 };
  }
}
