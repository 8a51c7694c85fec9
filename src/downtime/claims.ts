import type { AlarmKind, AlarmSpan, StopEntry } from '../model/alarm.js';
import type { AlarmList } from '../model/alarm-list.js';
import type { PlantDigest } from '../model/digest.js';
import type { Zone } from '../model/zone.js';
import type { Interval } from '../maths/intervals.js';
import type { Claim } from './claim.js';
import { outAloneOn, type OutAlone } from './out-together.js';
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
const coldKinds: ReadonlySet<AlarmKind> = new Set(['temperature-low', 'deviation-low', 'heater']);
/** What a claim is called when a zone is too cold together with its machine. */
const TOGETHER = 'several zones too cold';

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
  const isAlone = outAloneOn(machine, digest);
  const stopping = alarms.about((subject) => {
    const { zone, kind } = subject;
    if (zone === null) return kind === 'machine-stop' && isOf(subject, machine);
    return names.has(zone) && stoppingKinds.has(kind);
  });
  const claims: Claim[] = [];
  for (const alarm of stopping) {
    const { zone, message } = alarm;
    const startMs = alarm.startMs;
    const endMs = endOf(alarm, digest);
    if (zone === null) claims.push({ startMs, endMs, name: message, zone, faultEndMs: endMs });
    else claims.push(...zoneClaims({ startMs, endMs, name: names.get(zone)!, zone }, alarm.kind, isAlone, input));
  }
  return claims;
}

function zoneClaims(alarm: ZoneAlarm, kind: AlarmKind, isAlone: OutAlone, input: ClaimInput): Claim[] {
  const { startMs, endMs } = alarm;
  if (coldKinds.has(kind) && kind !== 'heater' && isOfTheStart(startMs, endMs, input)) return [];
  if (coldKinds.has(kind)) return coldClaims(alarm, kind, isAlone, input);
  return isTooShort(startMs, endMs, input) ? [] : [{ ...alarm, faultEndMs: endMs }];
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

/**
 * A zone too cold answers for the stop from when it is cold alone; before that the machine is cold as a whole. The last
 * zone to come up after that is only the slowest, unless it takes much longer than the others.
 */
function coldClaims(alarm: ZoneAlarm, kind: AlarmKind, isAlone: OutAlone, { digest, settings }: ClaimInput): Claim[] {
  const { startMs, endMs, name, zone } = alarm;
  const aloneMs = kind === 'heater' ? startMs : aloneFrom(alarm, isAlone, digest, settings);
  const togetherUntil = (untilMs: number) => ({
    startMs,
    endMs: untilMs,
    name: TOGETHER,
    zone: null,
    faultEndMs: untilMs,
  });
  if (aloneMs > startMs && endMs - aloneMs < settings.slowestHeatUpMs) return [togetherUntil(endMs)];
  const isShort = endMs - startMs < settings.longestRecoveryMs;
  const hotMs = isShort ? hotAgain(zone, startMs, endMs, digest, settings) : endMs;
  const own = { startMs: aloneMs, endMs, name, zone, faultEndMs: Math.max(endMs, hotMs) };
  return aloneMs > startMs ? [togetherUntil(aloneMs), own] : [own];
}

interface ZoneAlarm {
  readonly startMs: number;
  readonly endMs: number;
  readonly name: string;
  readonly zone: number;
}

/**
 * First moment of an alarm from which the zone stays cold alone for as long as others need to follow it down; the end of
 * the alarm when there is none.
 */
function aloneFrom(
  { startMs, endMs, zone }: ZoneAlarm,
  isAlone: OutAlone,
  { startMs: logStartMs, periodMs, length }: PlantDigest,
  { othersFollowMs }: DowntimeSettings,
): number {
  const first = Math.max(0, Math.floor((startMs - logStartMs) / periodMs));
  const following = Math.ceil(othersFollowMs / periodMs);
  const last = Math.min(length - 1, Math.max(first, Math.ceil((endMs - logStartMs) / periodMs) - 1));
  let from = first;
  for (let place = first; place <= last && place - from <= following; place++) {
    if (!isAlone(zone, place, -1)) from = place + 1;
  }
  if (from > last) return Math.max(startMs, endMs);
  return Math.max(startMs, logStartMs + from * periodMs);
}

/**
 * When a zone that was too cold let the machine run again. It recovers while the machine stands and falls again under
 * load, so the top of its reading marks the restart, and the restart time before it is not the fault's.
 */
function hotAgain(
  zone: number,
  startMs: number,
  endMs: number,
  digest: PlantDigest,
  settings: DowntimeSettings,
): number {
  const top = topOfRecovery(digest, zone, startMs, endMs + settings.longestRecoveryMs);
  return Number.isNaN(top) ? endMs : top - settings.restartMs;
}

/** End of the minute in which a rising reading turned; NaN when it never rose. */
function topOfRecovery(
  { startMs, periodMs, length, zones }: PlantDigest,
  zone: number,
  fromMs: number,
  toMs: number,
): number {
  const { meanDegC } = zones[zone]!;
  const first = Math.max(0, Math.floor((fromMs - startMs) / periodMs));
  const last = Math.min(length - 1, Math.floor((toMs - startMs) / periodMs));
  let lowest = Infinity;
  for (let i = first; i < last; i++) {
    const now = meanDegC[i]!;
    lowest = Math.min(lowest, Number.isNaN(now) ? Infinity : now);
    if (now > lowest && meanDegC[i + 1]! < now) return startMs + (i + 0.5) * periodMs;
  }
  return NaN;
}

function faultClaims({ machine, alarms, faults }: ClaimInput): Claim[] {
  return machine.zones.flatMap(({ index, name }: Zone) => {
    const own = [...alarms.about(({ zone, kind }) => zone === index && stoppingKinds.has(kind))];
    const isInAlarm = ({ start, end }: Interval) =>
      own.some((alarm) => alarm.startMs <= end + SAME_EVENT_MS && !(alarm.endMs < start - SAME_EVENT_MS));
    return (faults[index] ?? [])
      .filter((fault) => !isInAlarm(fault))
      .map(({ start, end }) => ({
        startMs: start,
        endMs: end,
        name,
        zone: index,
        faultEndMs: end,
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
    const claim = { startMs, endMs, name: names.get(zone)!, zone, faultEndMs: endMs };
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
    .map(({ startMs, endMs, reason }) => ({
      startMs,
      endMs,
      name: reason || 'stop list',
      zone: null,
      faultEndMs: endMs,
    }));
}
