import type { AlarmKind, AlarmSpan, StopEntry } from '../model/alarm.js';
import type { AlarmList } from '../model/alarm-list.js';
import type { PlantDigest } from '../model/digest.js';
import type { Zone } from '../model/zone.js';
import { nearAny, type Interval } from '../maths/intervals.js';
import type { Claim } from './claim.js';
import { coldClaims, type ColdAlarm } from './cold-claims.js';
import { outAloneOn } from './out-together.js';
import { outOfBandSpans } from './out-of-band.js';
import { isOf } from './production-time.js';
import type { Machine } from './machine-minutes.js';
import type { DowntimeSettings } from './settings.js';
import { untilItRan, whileSilent, type StopRhythm } from './stop-rhythm.js';

/** Kinds of zone alarm that keep a machine from running: no reading, or too cold (common practice). */
const stoppingKinds: ReadonlySet<AlarmKind> = new Set([
  'sensor-open',
  'sensor-fault',
  'temperature-low',
  'deviation-low',
  'heater',
]);
/**
 * Too hot mostly cuts the heat, not the machine (common practice), so by itself it proves no stop. Where a running
 * column does, or the silence of the machine's own alarms, a stop that comes with such an alarm is the zone's.
 */
const hotKinds: ReadonlySet<AlarmKind> = new Set(['temperature-high', 'deviation-high']);
const coldKinds: ReadonlySet<AlarmKind> = new Set(['temperature-low', 'deviation-low']);

/** An alarm and a fault seen in the readings this near to each other are one event; the alarm has the exact times. */
const SAME_EVENT_MS = 120_000;

export interface ClaimInput {
  readonly machine: Machine;
  readonly digest: PlantDigest;
  readonly alarms: AlarmList;
  readonly stops: readonly StopEntry[];
  /** By zone index: spans in which the readings show a fault that would stop the machine. */
  readonly faults: readonly (readonly Interval[])[];
  /** Running share by place of the digest; null where no log says. */
  readonly running: Float32Array | null;
  /** Where no log says when it ran: how often the machine's own alarms come; null = not known. */
  readonly rhythm: StopRhythm | null;
  readonly settings: DowntimeSettings;
}

/** All that can have stopped a machine, by start; of those that start together the lower zone first. */
export function claimsOf(input: ClaimInput): Claim[] {
  const { rhythm, settings } = input;
  const ofZones = [...alarmClaims(input), ...faultClaims(input)].map((claim) =>
    claim.zone === null || rhythm === null ? claim : untilItRan(claim, rhythm, settings.resetMs),
  );
  const claims = [...ofZones, ...hotClaims(input), ...quietClaims(input), ...stopClaims(input)];
  return claims.sort((a, b) => a.startMs - b.startMs || (a.zone ?? Infinity) - (b.zone ?? Infinity));
}

function alarmClaims(input: ClaimInput): Claim[] {
  const { machine, alarms, digest } = input;
  const names = new Map(machine.zones.map(({ index, name }) => [index, name]));
  const stopping = alarms.about((subject) => {
    const { zone, kind } = subject;
    if (zone === null) return (kind === 'machine-stop' || isUnplaced(kind, input)) && isOf(subject, machine);
    return names.has(zone) && stoppingKinds.has(kind);
  });
  const claims: Claim[] = [];
  const cold: ColdAlarm[] = [];
  for (const alarm of stopping) {
    const { startMs, zone, kind, message } = alarm;
    const endMs = endOf(alarm, digest);
    const isHeater = kind === 'heater';
    // Written out, since an object made by spreading takes twice the room, and there may be a million.
    if (zone === null) {
      claims.push({ startMs, endMs, name: message, zone, faultEndMs: endMs, isQuiet: isUnplaced(kind, input) });
    } else if (isHeater || coldKinds.has(kind)) {
      if (isHeater || !isOfTheStart(startMs, endMs, input))
        cold.push({ startMs, endMs, name: names.get(zone)!, zone, isHeater });
    } else if (!isTooShort(startMs, endMs, input)) {
      claims.push({ startMs, endMs, name: names.get(zone)!, zone, faultEndMs: endMs, isQuiet: false });
    }
  }
  return [...claims, ...coldClaims(cold, outAloneOn(machine, digest), digest, input.settings)];
}

/** Words of a machine that nobody knows: they name a stop that a running column proves, but prove none. */
function isUnplaced(kind: AlarmKind, { running }: ClaimInput): boolean {
  return kind === 'other' && running !== null;
}

/** An alarm that still stands does so to the end of the log. */
function endOf({ endMs }: AlarmSpan, { startMs, length, periodMs }: PlantDigest): number {
  return Number.isNaN(endMs) ? startMs + length * periodMs : endMs;
}

/**
 * A zone that leaves its band for some minutes while the machine stands is on its way to a new set point or swings
 * past it: that belongs to the start, and is no fault.
 */
function isOfTheStart(startMs: number, endMs: number, { running, digest, settings }: ClaimInput): boolean {
  if (running === null || endMs - startMs >= settings.slowestHeatUpMs) return false;
  const place = (timeMs: number) => Math.floor((timeMs - digest.startMs) / digest.periodMs);
  return running
    .subarray(Math.max(0, place(startMs - settings.lookBackMs)), place(startMs) + 1)
    .every((ran) => !(ran > 0));
}

function isTooShort(startMs: number, endMs: number, { running, settings }: ClaimInput): boolean {
  return running === null && endMs > startMs && endMs - startMs < settings.tripMs;
}

function faultClaims({ machine, alarms, faults }: ClaimInput): Claim[] {
  return machine.zones.flatMap(({ index, name }: Zone) => {
    const own = [...alarms.about(({ zone, kind }) => zone === index && stoppingKinds.has(kind))];
    const isInAlarm = nearAny(
      own.map(({ startMs, endMs }) => ({ start: startMs, end: Number.isNaN(endMs) ? Infinity : endMs })),
      SAME_EVENT_MS,
    );
    return (faults[index] ?? [])
      .filter((fault) => !isInAlarm(fault))
      .map(({ start, end }) => ({
        startMs: start,
        endMs: end,
        name,
        zone: index,
        faultEndMs: end,
        isQuiet: false,
      }));
  });
}

function hotClaims(input: ClaimInput): Claim[] {
  const { machine, alarms, digest, running, rhythm } = input;
  if (running === null && rhythm === null) return [];
  const names = new Map<number | null, string>(machine.zones.map(({ index, name }) => [index, name]));
  const claims: Claim[] = [];
  for (const alarm of alarms.about(({ zone, kind }) => names.has(zone) && hotKinds.has(kind))) {
    const { startMs, zone } = alarm;
    const endMs = endOf(alarm, digest);
    const claim = { startMs, endMs, name: names.get(zone)!, zone, faultEndMs: endMs, isQuiet: false };
    const counts =
      running === null ? rhythm && whileSilent(claim, rhythm) : !isOfTheStart(startMs, endMs, input) && claim;
    if (counts) claims.push(counts);
  }
  return claims;
}

/** Only a running column proves a stop that no alarm tells of, so there are none without it. */
function quietClaims({ machine, digest, running, settings }: ClaimInput): Claim[] {
  if (!running) return [];
  return outOfBandSpans(machine, digest, running, settings).map(({ start, end, zone }) => ({
    startMs: start,
    endMs: end,
    name: machine.zones.find(({ index }) => index === zone)!.name,
    zone,
    faultEndMs: end,
    isQuiet: true,
  }));
}

function stopClaims({ machine, stops }: ClaimInput): Claim[] {
  return stops
    .filter((stop) => !stop.isPlanned && (stop.machine === null || stop.machine === machine.name))
    .map(({ startMs, endMs, reason, zone }) => ({
      startMs,
      endMs,
      name: machine.zones.find(({ index }) => index === zone)?.name ?? (reason || 'stop list'),
      zone: machine.zones.some(({ index }) => index === zone) ? zone : null,
      faultEndMs: endMs,
      isQuiet: false,
    }));
}
