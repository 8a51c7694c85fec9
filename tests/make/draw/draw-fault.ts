import { faultCauses, type FaultKind, type FaultPlan } from '../faults/fault.js';
import type { ZoneParameters } from '../plant-parameters.js';
import type { Random } from '../random.js';

const hourS = 3600;
const dayS = 86400;

/** How often each kind is drawn; wider than life, so that rare kinds are there to learn from. */
export const faultWeights: Readonly<Record<FaultKind, number>> = {
  sensor_open: 13,
  sensor_hot_open: 7,
  sensor_drift: 15,
  sensor_noise: 4,
  wire_flex_open: 10,
  wire_contact: 9,
  wire_broken: 5,
  wire_wet: 6,
  wire_short: 4,
  // Rare, and nothing else turns heat round, so there is nothing to learn from it: made where a test asks for it.
  leads_swapped: 0,
  card_blips: 2.5,
  card_reference: 2,
  channel_frozen: 6,
  heater_dead: 4,
  heater_half: 4,
  heater_ageing: 4,
  relay_stuck: 4,
  tag_frozen: 3,
  tag_missing: 1,
};

/** What a fault is drawn for. */
export interface FaultPlace {
  readonly zone: number;
  readonly parameters: ZoneParameters;
  readonly days: number;
  readonly hasWashDowns: boolean;
}

interface Course {
  readonly shape: string;
  readonly numbers: Readonly<Record<string, number>>;
}

/** Draws one fault of a kind for a zone. */
export function drawFault(random: Random, kind: FaultKind, place: FaultPlace): FaultPlan {
  const endS = place.days * dayS;
  const onsetS = endS * random.uniform(0.12, 0.85);
  const { shape, numbers } = drawCourse(random, kind, place, endS - onsetS);
  const repair = drawRepair(random, kind, onsetS + (numbers['warningS'] ?? 0), endS);
  return { kind, zone: place.zone, onsetS, shape, numbers, ...repair };
}

/** Hard faults are mended within hours or days; creeping ones are mostly still there at the end. */
function drawRepair(
  random: Random,
  kind: FaultKind,
  hardFromS: number,
  endS: number,
): Pick<FaultPlan, 'fixedS' | 'bypassAfterS' | 'repairStopS'> {
  const isHard = ['sensor_open', 'wire_broken', 'wire_short', 'heater_dead'].includes(kind);
  const isMended = random.chance(isHard ? 0.85 : faultCauses[kind] === 'recording' ? 0.8 : 0.2);
  const afterS = isHard ? random.logUniform(0.6 * hourS, 60 * hourS) : random.logUniform(8 * hourS, 8 * dayS);
  const fixedS = isMended && hardFromS + afterS < endS ? hardFromS + afterS : null;
  // Where the repair is near, they wait for it; else they run on without the zone after a while.
  const waits = fixedS !== null && fixedS - hardFromS < 8 * hourS && random.chance(0.8);
  return {
    fixedS,
    bypassAfterS: waits ? null : random.logUniform(0.5 * hourS, 5 * hourS),
    repairStopS: fixedS !== null && faultCauses[kind] !== 'recording' ? random.uniform(600, 4200) : 0,
  };
}

function drawCourse(random: Random, kind: FaultKind, place: FaultPlace, leftS: number): Course {
  switch (kind) {
    case 'sensor_open':
      return drawOpen(random);
    case 'sensor_hot_open':
      return drawHotOpen(random);
    case 'sensor_drift':
      return drawDrift(random, leftS);
    case 'sensor_noise':
      return {
        shape: random.pick(['white', 'white', 'popcorn']),
        numbers: {
          noiseDegC: random.logUniform(0.8, 8),
          spanS: leftS * random.uniform(0.05, 1),
          flipsPerHour: random.logUniform(2, 200),
        },
      };
    case 'wire_flex_open':
      return { shape: 'opens', numbers: drawFlex(random, Infinity) };
    case 'wire_broken':
      return drawBroken(random);
    case 'wire_contact':
      return drawContact(random, place.parameters);
    case 'wire_wet':
      return drawWet(random, place, leftS);
    case 'wire_short':
      return {
        shape: 'short',
        numbers: {
          warningS: random.chance(0.5) ? 0 : random.logUniform(hourS, 30 * hourS),
          warningPerHour: random.logUniform(0.3, 8),
        },
      };
    case 'card_blips':
      return {
        shape: 'blips',
        numbers: {
          perHour: random.logUniform(0.05, 3),
          meanOpenS: random.logUniform(1, 40),
          burstMean: random.uniform(0.2, 4),
          cardSeed: random.int(1, 2 ** 31),
          // Of a failing supply all channels drop out; of a failing multiplexer some at a time.
          zoneShare: random.chance(0.6) ? 1 : random.uniform(0.4, 0.9),
        },
      };
    case 'card_reference':
      return {
        shape: random.pick(['step', 'linear', 'settle', 'come-and-go']),
        numbers: {
          finalDegC: random.sign() * random.logUniform(1, 12),
          spanS: Math.max(hourS, leftS * random.uniform(0.05, 0.9)),
        },
      };
    case 'channel_frozen':
      return {
        shape: random.pick(['frozen', 'frozen', 'again-and-again']),
        numbers: { meanFrozenS: random.logUniform(0.3 * hourS, 8 * hourS), meanAliveS: random.logUniform(hourS, dayS) },
      };
    case 'leads_swapped':
    case 'tag_frozen':
    case 'tag_missing':
      return { shape: 'frozen', numbers: {} };
    default:
      return drawHeater(random, kind, leftS);
  }
}

function drawOpen(random: Random): Course {
  const hasWarning = random.chance(0.5);
  return {
    shape: hasWarning ? 'short-opens-first' : 'clean',
    numbers: {
      warningS: hasWarning ? random.logUniform(0.3 * hourS, 30 * hourS) : 0,
      warningPerHour: random.logUniform(0.5, 12),
      meanOpenS: random.logUniform(2, 60),
    },
  };
}

function drawHotOpen(random: Random): Course {
  return {
    shape: 'hot',
    numbers: {
      belowWorkK: random.uniform(1, 12),
      perHotHour: random.logUniform(0.1, 8),
      closesAfterK: random.logUniform(0.5, 25),
      meanOpenS: random.logUniform(20, 1500),
      growthPerDay: random.uniform(0, 0.8),
    },
  };
}

function drawDrift(random: Random, leftS: number): Course {
  const course = random.pick(['linear', 'linear', 'settle', 'step', 'accelerating']);
  const isGain = random.chance(0.3);
  return {
    shape: isGain ? `gain-${course}` : course,
    numbers: {
      finalDegC: random.sign() * random.logUniform(0.8, 25),
      spanS: course === 'settle' ? Math.max(2 * hourS, leftS * random.uniform(0.1, 1)) : leftS * random.uniform(0.6, 1),
    },
  };
}

function drawFlex(random: Random, breaksAfterS: number): Record<string, number> {
  return {
    perRunningHour: random.logUniform(0.15, 10),
    stoppedShare: random.chance(0.6) ? 0 : random.uniform(0.01, 0.12),
    meanOpenS: random.logUniform(0.7, 25),
    burstMean: random.uniform(0.2, 7),
    growthPerDay: random.chance(0.75) ? random.uniform(0.05, 0.8) : 0,
    strandShare: random.chance(0.4) ? random.uniform(0.2, 3) : 0,
    breaksAfterS,
  };
}

function drawBroken(random: Random): Course {
  const warningS = random.chance(0.85) ? random.logUniform(5 * hourS, 4 * dayS) : 0;
  const flex = { ...drawFlex(random, warningS), perRunningHour: random.logUniform(0.5, 12) };
  return { shape: random.chance(0.1) ? 'opens-low' : 'opens', numbers: { ...flex, warningS } };
}

function drawContact(random: Random, { sensor }: ZoneParameters): Course {
  const ohm = random.logUniform(0.5, 25);
  return {
    shape: random.pick(['steps', 'steps', 'when-hot']),
    numbers: {
      belowWorkK: random.uniform(5, 60),
      contactOhm: sensor.kind === 'pt1000' ? ohm * random.uniform(1, 5) : ohm,
      perHour: random.logUniform(0.1, 6),
      meanOnS: random.logUniform(20, 3 * hourS),
      stoppedShare: random.chance(0.3) ? 0 : random.uniform(0.05, 0.6),
      growthPerDay: random.uniform(0, 0.5),
    },
  };
}

function drawWet(random: Random, { parameters, hasWashDowns }: FaultPlace, leftS: number): Course {
  const ohm = random.logUniform(1500, 40_000);
  return {
    shape: hasWashDowns && random.chance(0.8) ? 'wash-down' : random.pick(['damp', 'creeping']),
    numbers: {
      shuntOhm: parameters.sensor.kind === 'pt1000' ? 10 * ohm : ohm,
      dryS: random.logUniform(0.5 * hourS, 48 * hourS),
      spanS: leftS,
    },
  };
}

function drawHeater(random: Random, kind: FaultKind, leftS: number): Course {
  const flipS = random.logUniform(60, 4 * hourS);
  if (kind === 'relay_stuck') return { shape: random.pick(['stuck', 'stuck', 'sticking']), numbers: { flipS } };
  if (kind === 'heater_dead')
    return { shape: random.pick(['gone', 'gone', 'coming-and-going']), numbers: { shareLeft: 0, spanS: 0, flipS } };
  if (kind === 'heater_half')
    return {
      shape: random.pick(['gone', 'gone', 'coming-and-going']),
      numbers: { shareLeft: random.uniform(0.3, 0.75), spanS: 0, flipS },
    };
  return {
    shape: 'ageing',
    numbers: { shareLeft: random.uniform(0.45, 0.85), spanS: leftS * random.uniform(0.5, 1), flipS },
  };
}
