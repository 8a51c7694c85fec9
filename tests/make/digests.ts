import type { Evidence } from '../../src/model/detector.js';
import type { Zone } from '../../src/model/zone.js';
import { makeZone, type MadeSample } from './blocks.js';
import { Random } from './random.js';
import { DAY_MS, evidenceOf, HOUR_MS, MINUTE_MS, MONDAY_MS } from './zone-log.js';

/** What one zone of a small plant does, as functions of hours since Monday 00:00. Left out = sound. */
export interface HeatedZone {
  /** Reading minus truth; `hot` is the true temperature. */
  readonly offsetDegC?: (hours: number, trueDegC: number) => number;
  /** Share of the heater's power that is there. */
  readonly power?: (hours: number) => number;
  /** Output device passes full power whatever the output says. */
  readonly isStuckOn?: (hours: number) => boolean;
  /** The reading is this instead. */
  readonly shownDegC?: (hours: number) => number | null;
  readonly setpointDegC?: number;
  readonly tauMinutes?: number;
  readonly card?: string;
}

export interface HeatedPlant {
  readonly days?: number;
  readonly everyMinutes?: number;
  readonly digits?: number;
  readonly hasOutput?: boolean;
  readonly hasSetpoint?: boolean;
  readonly seed?: number;
  /** Share of full load, on top of stops. */
  readonly load?: (hours: number) => number;
  /** Most that the controllers give, share of full. */
  readonly outputCap?: number;
  readonly shift?: { readonly fromHour: number; readonly toHour: number };
}

/** Full power brings a zone this far above the room in the end: duty at 150 °C is about a third. */
const FULL_POWER_DEG_C = 400;
/** Controller: output per degree, and per degree and minute. */
const GAIN = 0.05;
const RESET_PER_MINUTE = 0.004;
/** Load takes as much heat as this share of the losses. */
const LOAD_SHARE = 0.4;

/**
 * A plant of one machine, minute by minute: lumped bodies dT/dt = (full·power·u − (T − room)·(1 + load))/τ under a
 * controller that holds the reading at its set point in shifts and is off at night and at the weekend.
 */
export function heatedPlant(zones: readonly HeatedZone[], plan: HeatedPlant = {}): Evidence {
  const logs = zones.map((zone, index) => runZone(zone, index, plan));
  const made: Zone[] = zones.map((zone, index) =>
    makeZone({
      index,
      card: zone.card ?? null,
      sensor: 'pt100',
      has: { reading: true, setpoint: plan.hasSetpoint ?? true, output: plan.hasOutput ?? true, running: true },
      samplingMs: (plan.everyMinutes ?? 1) * MINUTE_MS,
      resolutionDegC: 10 ** -(plan.digits ?? 1),
    }),
  );
  return evidenceOf(logs, { zones: made });
}

function runZone(zone: HeatedZone, index: number, plan: HeatedPlant): MadeSample[] {
  const {
    days = 8,
    everyMinutes = 1,
    digits = 1,
    seed = 1,
    hasOutput = true,
    hasSetpoint = true,
    outputCap = 1,
  } = plan;
  const random = new Random(1000 * seed + index);
  const stops = new Random(seed); // the same for all zones: stops belong to the machine
  const tau = zone.tauMinutes ?? 12 + 3 * index;
  const target = zone.setpointDegC ?? 150 + 5 * index;
  let degC = 20;
  let integral = 0.3;
  let stopLeft = 0;
  const samples: MadeSample[] = [];
  for (let minute = 0; minute < days * 24 * 60; minute++) {
    const hours = minute / 60;
    const isOn = isShift(hours, plan);
    if (stops.next() < 0.01) stopLeft = 10;
    const running = isOn && stopLeft-- <= 0 && degC > target - 20 ? 1 : 0;
    const room = 20 + 4 * Math.sin((2 * Math.PI * (hours - 10)) / 24);
    const load = running * LOAD_SHARE * (1 + 0.1 * index) * (plan.load?.(hours) ?? 1);
    const shown = zone.shownDegC?.(hours) ?? degC + (zone.offsetDegC?.(hours, degC) ?? 0);
    const error = target - shown;
    const asked = GAIN * error + integral;
    // Integrates only while the output has room, so that a long heat-up winds nothing up.
    if (isOn && asked > 0 && asked < outputCap) integral += RESET_PER_MINUTE * error;
    if (!isOn) integral = 0.3;
    const output = isOn ? Math.min(outputCap, Math.max(0, asked)) : 0;
    const heat = (zone.isStuckOn?.(hours) ? 1 : output) * (zone.power?.(hours) ?? 1);
    for (let part = 0; part < 6; part++) {
      degC += ((FULL_POWER_DEG_C * heat - (degC - room) * (1 + load)) / tau) * (1 / 6);
    }
    if (minute % everyMinutes !== 0) continue;
    samples.push({
      timeMs: MONDAY_MS + minute * MINUTE_MS,
      degC: Number((shown + 0.1 * random.gauss()).toFixed(digits)),
      ...(hasSetpoint ? { setpointDegC: isOn ? target : 0 } : {}),
      ...(hasOutput ? { outputPercent: 100 * output } : {}),
      running,
    });
  }
  return samples;
}

function isShift(hours: number, { shift = { fromHour: 6, toHour: 22 } }: HeatedPlant): boolean {
  const hour = hours % 24;
  return hours % (7 * 24) < 5 * 24 && hour >= shift.fromHour && hour < shift.toHour;
}

/** Time of an hour since Monday 00:00. */
export const atHour = (hours: number): number => MONDAY_MS + hours * HOUR_MS;

/** Hours by which a time is off. */
export const hoursOff = (timeMs: number, hours: number): number => Math.abs(timeMs - atHour(hours)) / HOUR_MS;

/** 0 before `from`, then rising evenly to `to` at the end of the log. */
export function rising(fromHour: number, toDegC: number, days = 8): (hours: number) => number {
  const endHour = (days * DAY_MS) / HOUR_MS;
  return (hours) => (hours > fromHour ? (toDegC * (hours - fromHour)) / (endHour - fromHour) : 0);
}

/** So many sound zones. */
export const sound = (count: number): HeatedZone[] => Array.from({ length: count }, () => ({}));
