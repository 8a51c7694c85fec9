import type { AlarmSpan, StopEntry } from '../model/alarm.js';
import type { PlantDigest } from '../model/digest.js';
import type { DowntimeBucket } from '../model/downtime-findings.js';
import type { PlantFile } from '../model/plant-file.js';
import { intersectIntervals, mergeIntervals, subtractIntervals, type Interval } from '../maths/intervals.js';
import { attributeStop } from './attribute-stop.js';
import { claimsOf, type Claim } from './claims.js';
import { knownRunning, runningOf, stopsOfRunning, type Machine } from './machine-minutes.js';
import { productionTime, type ProductionTime } from './production-time.js';
import type { DowntimeSettings } from './settings.js';

/** A piece of stopped time in exactly one bucket. */
export interface StoppedPiece extends Interval {
  readonly machine: string;
  readonly bucket: DowntimeBucket;
  readonly name: string;
  readonly zone: number | null;
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
  readonly alarms: readonly AlarmSpan[];
  readonly stops: readonly StopEntry[];
  readonly faults: readonly (readonly Interval[])[];
  /** Zones that have a fault; null = not judged, every zone's alarm counts as its fault. */
  readonly faultyZones: ReadonlySet<number> | null;
  readonly plant: PlantFile;
  readonly settings: DowntimeSettings;
}

/** Finds the stops of one machine and gives each piece of them to one cause. Never throws. */
export function recordOf(input: MachineInput): MachineRecord {
  const { machine, digest } = input;
  const running = runningOf(machine, digest);
  const claims = claimsOf({ ...input, hasRunning: running !== null });
  const stopped = running ? mergeIntervals(stopsOfRunning(running, digest)) : stopsOfClaims(claims);
  const known = running ? knownRunning(running, digest) : null;
  const ran = known ? subtractIntervals(known, stopped) : null;
  const production = productionTime({ ...input, ran });
  const unplanned = intersectIntervals(stopped, production.planned);
  const planned = running ? subtractIntervals(stopped, production.planned) : [];
  const pieces = [...piecesOf(unplanned, stopped, claims, input), ...plannedPieces(planned, machine)];
  return {
    machine: machine.name,
    production,
    from: running ? 'running' : claims.length > 0 ? 'alarms' : null,
    pieces: pieces.sort((a, b) => a.start - b.start),
  };
}

/** Without a running column a machine stands from each claim until it can have run again. */
function stopsOfClaims(claims: readonly Claim[]): Interval[] {
  return mergeIntervals(claims.map(({ startMs, againMs }) => ({ start: startMs, end: againMs })));
}

function piecesOf(
  stops: readonly Interval[],
  stopped: readonly Interval[],
  claims: readonly Claim[],
  { machine, settings, faultyZones }: MachineInput,
): StoppedPiece[] {
  let next = 0;
  let open: Claim[] = [];
  let whole = 0;
  return stops.flatMap((stop, number) => {
    while (next < claims.length && claims[next]!.startMs < stop.end) open.push(claims[next++]!);
    open = open.filter(({ endMs }) => endMs >= stop.start - settings.longestRestartMs);
    while (stopped[whole + 1] && stopped[whole + 1]!.start <= stop.start) whole++;
    const ranUntilMs = stopped[whole]!.start; // the stop may have begun before production was due
    return attributeStop(stop, open, ranUntilMs, settings).map(({ start, end, claim }) => {
      const isFault = claim?.zone !== null && claim?.zone !== undefined;
      const isFaulty = isFault && (!faultyZones || faultyZones.has(claim.zone!));
      const bucket = claim === null ? 'unknown' : isFaulty ? 'zone-fault' : 'other-cause';
      const name = claim === null ? 'unknown' : isFault && !isFaulty ? `${claim.name}: temperature alarm` : claim.name;
      return {
        start,
        end,
        machine: machine.name,
        bucket,
        name,
        zone: isFaulty ? claim.zone : null,
        stop: number,
      } as const;
    });
  });
}

function plannedPieces(planned: readonly Interval[], machine: Machine): StoppedPiece[] {
  return planned.map(({ start, end }, stop) => ({
    start,
    end,
    machine: machine.name,
    bucket: 'planned',
    name: 'planned',
    zone: null,
    stop,
  }));
}
