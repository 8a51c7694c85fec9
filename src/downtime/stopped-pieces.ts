import type { StopEntry } from '../model/alarm.js';
import type { AlarmList } from '../model/alarm-list.js';
import type { PlantDigest } from '../model/digest.js';
import type { DowntimeBucket } from '../model/downtime-findings.js';
import type { PlantFile } from '../model/plant-file.js';
import {
  intersectIntervals,
  mergeByStart,
  mergeIntervals,
  subtractIntervals,
  type Interval,
} from '../maths/intervals.js';
import { attributeStop, type Piece } from './attribute-stop.js';
import type { Claim } from './claim.js';
import { claimsOf } from './claims.js';
import { knownRunning, runningOf, stopsOfRunning, type Machine } from './machine-minutes.js';
import { isOf, plannedStopsOf, productionTime, type ProductionTime } from './production-time.js';
import type { DowntimeSettings } from './settings.js';
import { usualBreaks } from './usual-breaks.js';
import { stopRhythm, type StopRhythm } from './stop-rhythm.js';

/** A piece of stopped time in exactly one bucket. */
export interface StoppedPiece extends Interval {
  readonly machine: string;
  readonly bucket: DowntimeBucket;
  readonly name: string;
  readonly zone: number | null;
  /** True when a zone's fault was gone and the machine only waited to run again. */
  readonly isRestart: boolean;
  /** Number of the stop it is part of, per machine. */
  readonly stop: number;
}

/** What one machine did in the window. */
export interface MachineRecord {
  readonly machine: string;
  readonly production: ProductionTime;
  readonly from: 'running' | 'alarms' | null;
  /** In time order, never overlapping. */
  readonly pieces: readonly StoppedPiece[];
}

export interface MachineInput {
  readonly machine: Machine;
  readonly digest: PlantDigest;
  readonly alarms: AlarmList;
  readonly stops: readonly StopEntry[];
  readonly faults: readonly (readonly Interval[])[];
  readonly plant: PlantFile;
  readonly settings: DowntimeSettings;
}

/** Finds the stops of one machine and gives each piece of them to one cause. Never throws. */
export function recordOf(input: MachineInput): MachineRecord {
  const { machine, digest } = input;
  const running = runningOf(machine, digest);
  const claims = claimsOf({ ...input, running, rhythm: running ? null : rhythmOf(input) });
  const known = running ? knownRunning(running, digest) : null;
  const stopped = running
    ? mergeIntervals([
        ...stopsOfRunning(running, digest),
        ...subtractIntervals(stopsOfClaims(claims, input.settings), known!),
      ])
    : stopsOfClaims(claims, input.settings);
  const ran = known ? subtractIntervals(known, stopped) : null;
  const production = withoutBreaks(productionTime({ ...input, ran }), running ? stopped : [], claims, input);
  const unplanned = intersectIntervals(stopped, production.planned);
  // Without a running column only the stop list knows of planned stops.
  const window = { start: digest.startMs, end: digest.startMs + digest.length * digest.periodMs };
  const listed = intersectIntervals(mergeIntervals(plannedStopsOf(input.stops, machine)), [window]);
  const planned = running ? subtractIntervals(stopped, production.planned) : subtractIntervals(listed, unplanned);
  const stretches = mergeIntervals(stopped, input.settings.lookBackMs); // a try to start is not running
  const pieces = [...piecesOf(unplanned, stretches, claims, input), ...plannedPieces(planned, machine)];
  return {
    machine: machine.name,
    production,
    from: running ? 'running' : claims.length > 0 ? 'alarms' : null,
    pieces: pieces.sort((a, b) => a.start - b.start),
  };
}

/** Only where a running column shows stops that nobody gave a reason for; shifts of plant.yaml tell the breaks themselves. */
function withoutBreaks(
  production: ProductionTime,
  stood: readonly Interval[],
  claims: readonly Claim[],
  { plant, settings }: MachineInput,
): ProductionTime {
  if (production.from === 'shifts' || stood.length === 0) return production;
  const caused = claims
    .filter(({ isQuiet }) => !isQuiet)
    .map(({ startMs, faultEndMs }) => ({
      start: startMs - settings.lookBackMs,
      end: faultEndMs + settings.longestRestartMs,
    }));
  const { clock, taken } = usualBreaks(production.planned, stood, caused, plant.timezone ?? 'utc');
  return { ...production, planned: subtractIntervals(production.planned, taken), breaks: clock };
}

function rhythmOf(input: MachineInput): StopRhythm | null {
  const own = input.alarms.about((alarm) => alarm.kind === 'machine-stop' && isOf(alarm, input.machine));
  return stopRhythm(own.columns.startMs, () => productionTime({ ...input, ran: null }).planned);
}

/**
 * Stops of a machine without running column: it stands while a cause stands, and after a zone's trip at least until
 * the reset. A cause that comes while it stands or is being started trips nothing anew. The restart itself is not
 * part of the stop, since nothing shows it.
 */
function stopsOfClaims(claims: readonly Claim[], settings: DowntimeSettings): Interval[] {
  return mergeByStart(stopPerClaim(claims, settings));
}

function* stopPerClaim(claims: readonly Claim[], { resetMs, restartMs }: DowntimeSettings): Iterable<Interval> {
  let runsAgainMs = -Infinity;
  for (const { startMs, faultEndMs, zone } of claims) {
    const isTrip = zone !== null && startMs >= runsAgainMs;
    const end = isTrip ? Math.max(faultEndMs, startMs + resetMs) : faultEndMs;
    yield { start: startMs, end };
    runsAgainMs = Math.max(runsAgainMs, zone === null ? end : end + restartMs);
  }
}

function piecesOf(
  stops: readonly Interval[],
  stopped: readonly Interval[],
  claims: readonly Claim[],
  { machine, settings }: MachineInput,
): StoppedPiece[] {
  let next = 0;
  let open: Claim[] = [];
  let whole = 0;
  return stops.flatMap((stop, number) => {
    while (next < claims.length && claims[next]!.startMs < stop.end) open.push(claims[next++]!);
    open = open.filter(({ faultEndMs }) => faultEndMs >= stop.start - settings.lookBackMs);
    while (stopped[whole + 1] && stopped[whole + 1]!.start <= stop.start) whole++;
    const ranUntilMs = stopped[whole]!.start; // the stop may have begun before production was due
    return attributeStop(stop, open, ranUntilMs, settings).map((piece) => ({
      start: piece.start,
      end: piece.end,
      machine: machine.name,
      stop: number,
      ...bucketOf(piece),
    }));
  });
}

function bucketOf({ claim, isRestart }: Piece): Pick<StoppedPiece, 'bucket' | 'name' | 'zone' | 'isRestart'> {
  if (!claim) return { bucket: 'unknown', name: 'unknown', zone: null, isRestart: false };
  if (claim.zone === null) return { bucket: 'other-cause', name: claim.name, zone: null, isRestart: false };
  if (isRestart) return { bucket: 'other-cause', name: `restart after ${claim.name}`, zone: null, isRestart: true };
  return { bucket: 'zone-fault', name: claim.name, zone: claim.zone, isRestart: false };
}

function plannedPieces(planned: readonly Interval[], machine: Machine): StoppedPiece[] {
  return planned.map(({ start, end }, stop) => ({
    start,
    end,
    machine: machine.name,
    bucket: 'planned',
    name: 'planned',
    zone: null,
    isRestart: false,
    stop,
  }));
}
