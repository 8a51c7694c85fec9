import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { highest, lowest } from '../../../maths/extremes.js';
import { finiteValues } from '../../../maths/finite.js';
import { meanBetween } from '../../../maths/mean-between.js';
import { median } from '../../../maths/quantile.js';
import { setpointsDegCOf } from '../duty/chart-points.js';
import { fullOutputPercentOf } from '../readings/full-output.js';
import { heatUpsOf } from './heat-ups.js';
import { beganLow, endsOf, isSignalLost, slopeOutside, type Places, type RunEnds } from './run-ends.js';
import { oncePer } from '../basics/memo.js';
import { matesOf } from '../basics/mates.js';
import { countByMachine } from '../basics/machine-counts.js';
import { samplingMsOf } from '../basics/sampling.js';
import { assumedRoomOf } from '../cold/cold-hours.js';
import { zoneState, zoneStatesOf } from '../readings/zone-state.js';

/** Below its usual level by this much, a zone is not held any more (own choice: above any load swing). */
const FAR_DEG_C = 15;
/** Shorter runs are start-ups and upsets (own choice). */
const LEAST_MS = 15 * MINUTE_MS;
/** Over this long a heated zone must have risen … */
const RISE_MS = 10 * MINUTE_MS;
/** … by this much (own choice: a quarter degree a minute is slower than any zone heats at full power). */
const LEAST_RISE_DEG_C = 2.5;
/** … and where the zone's own heat-ups are quick, by this share of theirs: hot neighbours warm a dead zone a little. */
const LEAST_RISE_SHARE = 0.1;
/** A run may be broken this long: single minutes between states. */
const BRIDGE_MS = 3 * MINUTE_MS;
/** Share of a machine's other zones that must be held to say, without an output, that this one should be hot. */
const HELD_SHARE = 0.5;

/** A stretch in which a zone should be hot and is not, and what the reading did at its two ends. */
export interface NoHeatRun extends RunEnds {
  readonly startMs: number;
  readonly endMs: number;
  readonly lastsToEnd: boolean;
  readonly minutes: number;
  readonly lowestDegC: number;
  /** How far the last part lies above the room: heat that comes in all the same. */
  readonly aboveRoomDegC: number;
  /** Scatter of the reading over the last half: a shorted input hardly moves. */
  readonly rangeDegC: number;
  readonly outputPercent: number;
}

/** Stretches of full output (or, without output, of held peers) in which the reading is far down and does not rise. */
export const noHeatRunsOf = oncePer((evidence: Evidence): readonly (readonly NoHeatRun[])[] => {
  const all = evidence.zones.map((zone) => noHeatRuns(evidence, zone));
  return all.map((runs, z) => {
    const others = all.filter((_, other) => other !== z);
    const withinMs = BRIDGE_MS + samplingMsOf(evidence.zones[z]!);
    return withFallBefore(runs.filter((run) => !isSwitchedTogether(run, others, withinMs)));
  });
});

/** Two others whose heat goes and comes back in the same minutes are switched with this one: no heater fails so. */
function isSwitchedTogether(run: NoHeatRun, others: readonly (readonly NoHeatRun[])[], withinMs: number): boolean {
  const isSame = ({ startMs, endMs }: NoHeatRun) =>
    Math.abs(startMs - run.startMs) <= withinMs && Math.abs(endMs - run.endMs) <= withinMs;
  return others.filter((runs) => runs.some(isSame)).length >= FEWEST_SHARED;
}

/** A run that begins low, at the level of an earlier one, goes on with it: after a hole in the log, or a stop. */
function withFallBefore(runs: readonly NoHeatRun[]): NoHeatRun[] {
  let lost: NoHeatRun | null = null;
  return runs.map((run) => {
    const goesOn = lost !== null && beganLow(run) && Math.abs(run.lastDegC - lost.lastDegC) < FAR_DEG_C;
    const known: NoHeatRun = goesOn ? { ...run, fallRatio: lost!.fallRatio } : run;
    if (isSignalLost(known)) lost = known;
    return known;
  });
}

/** Where each zone is down, by zone index; NaN levels give no place. */
const downOf = oncePer((evidence: Evidence): readonly Uint8Array[] =>
  evidence.zones.map((zone) => {
    const usualDegC = setpointsDegCOf(evidence)[zone.index] ?? null;
    return usualDegC === null ? new Uint8Array(evidence.digest.length) : downPlaces(evidence, zone, usualDegC);
  }),
);

/** Two others, and a quarter of them, down together: a machine, or one of several under one name, that starts (own choice). */
const FEWEST_SHARED = 2;
const SHARED_SHARE = 0.25;

/** Leaves out where other zones are down with this one: their supply is off, or the machine starts from cold. */
function aloneDown(evidence: Evidence, zone: Zone): Uint8Array {
  const { zoneCount, countAt } = downCountsOf(evidence).get(zone.machine)!;
  const peerCount = zoneCount - 1;
  return downOf(evidence)[zone.index]!.map((isDown, i) => {
    if (!isDown) return 0;
    const others = countAt[i]! - 1;
    const isShared = others >= peerCount / 2 || (others >= FEWEST_SHARED && others >= SHARED_SHARE * peerCount);
    return others === 0 || !isShared ? 1 : 0;
  });
}

const downCountsOf = oncePer((evidence: Evidence) => countByMachine(evidence, ({ index }) => downOf(evidence)[index]!));

function noHeatRuns(evidence: Evidence, zone: Zone): NoHeatRun[] {
  const usualDegC = setpointsDegCOf(evidence)[zone.index] ?? null;
  if (usualDegC === null) return [];
  const isDown = aloneDown(evidence, zone);
  const { periodMs } = evidence.digest;
  const runs = runsOf(isDown, Math.ceil((BRIDGE_MS + samplingMsOf(zone)) / periodMs)).filter(
    ([from, to]) => (to - from) * periodMs >= LEAST_MS,
  );
  const usualSlope = slopeOutside(evidence, zone, runs);
  return runs.map((places) => runOf(evidence, zone, places, usualDegC, usualSlope));
}

function downPlaces(evidence: Evidence, zone: Zone, usualDegC: number): Uint8Array {
  const { digest } = evidence;
  const { meanDegC, setpointDegC, outputPercent, badCount } = digest.zones[zone.index]!;
  const fullPercent = fullOutputPercentOf(evidence)[zone.index]!;
  const called = zone.has.output ? null : heatCalledByPeers(evidence, zone);
  const arePeersAtWork = called ? peersAtWork(evidence, zone, usualDegC) : () => true;
  const ahead = Math.max(1, Math.round(RISE_MS / digest.periodMs));
  const slope = median(heatUpsOf(evidence)[zone.index]!.map(({ slopeDegCPerMinute }) => slopeDegCPerMinute));
  const usualRiseDegC = Math.min(FAR_DEG_C, (LEAST_RISE_SHARE * slope * RISE_MS) / MINUTE_MS);
  const leastRiseDegC = usualRiseDegC > LEAST_RISE_DEG_C ? usualRiseDegC : LEAST_RISE_DEG_C; // NaN: no heat-up seen
  const reached = reachedSetpointsOf(evidence)[zone.index]!;
  // Not the mask: a dead zone in whole degrees may rest on one value for hours and is no stuck channel.
  return new Uint8Array(digest.length).map((_, i) => {
    if (badCount[i]! > 0 || Number.isNaN(meanDegC[i]!)) return 0;
    const isFull = called ? called[i] === 1 : outputPercent[i]! >= fullPercent;
    const target = targetDegC(setpointDegC[i]!, usualDegC, reached);
    if (!isFull || !(meanDegC[i]! < target - FAR_DEG_C)) return 0;
    const back = nearest(meanDegC, i - ahead, -1);
    const on = nearest(meanDegC, i + ahead, 1);
    if (meanDegC[i]! - back > leastRiseDegC) return 0;
    const rise = on - meanDegC[i]!;
    // What comes back at a jump was down until then, and what still falls is on its way down.
    const comesAlive = rise > leastRiseDegC && !(rise > FAR_DEG_C) && !(back - meanDegC[i]! > LEAST_RISE_DEG_C);
    return comesAlive || !arePeersAtWork(i) ? 0 : 1;
  });
}

/**
 * Where the zone should be: at its set point where it has held that before, else not above what it usually holds. A
 * machine that mostly stands by is usually at its standby level.
 */
function targetDegC(setpointDegC: number, usualDegC: number, reached: ReadonlySet<number>): number {
  if (!(setpointDegC > 0)) return usualDegC;
  return reached.has(Math.round(setpointDegC)) ? setpointDegC : Math.min(setpointDegC, usualDegC);
}

/** Set points, to the degree, that each zone was settled at, by zone index. */
const reachedSetpointsOf = oncePer((evidence: Evidence): readonly ReadonlySet<number>[] =>
  evidence.digest.zones.map(({ meanDegC, setpointDegC }, index) => {
    const reached = new Set<number>();
    zoneStatesOf(evidence)[index]!.forEach((state, i) => {
      const isHeld = state === zoneState.settled && Math.abs(meanDegC[i]! - setpointDegC[i]!) < FAR_DEG_C / 3;
      if (isHeld) reached.add(Math.round(setpointDegC[i]!));
    });
    return reached;
  }),
);

/** The first value from a place on in a direction, within an hour's places: slow logs leave places empty. */
function nearest(values: Float32Array, place: number, direction: -1 | 1): number {
  for (let step = 0; step < 60; step++) {
    const value = values[place + direction * step];
    if (value === undefined || !Number.isNaN(value)) return value ?? NaN;
  }
  return NaN;
}

/** 1 where most of the other zones of the machine are held at their temperatures, or have just come there. */
function heatCalledByPeers(evidence: Evidence, zone: Zone): Uint8Array {
  const { zoneCount, countAt } = heldCountsOf(evidence).get(zone.machine)!;
  const peerCount = zoneCount - 1;
  const own = heldPlacesOf(evidence)[zone.index]!;
  if (peerCount < 2) return new Uint8Array(own.length);
  return own.map((isHeld, i) => (countAt[i]! - isHeld >= HELD_SHARE * peerCount ? 1 : 0));
}

const heldPlacesOf = oncePer((evidence: Evidence) => evidence.zones.map((zone) => heldPlaces(evidence, zone)));

const heldCountsOf = oncePer((evidence: Evidence) =>
  countByMachine(evidence, ({ index }) => heldPlacesOf(evidence)[index]!),
);

/** Places that tell where the other zones stand while this one is at its temperature; more tell no more (own choice). */
const MOST_LEVEL_PLACES = 500;

/**
 * Says of a place whether most of the other zones are held where they stand while this one is at its temperature, or
 * above. A machine that stands by is held as well, only lower, and this zone with it.
 */
function peersAtWork(evidence: Evidence, zone: Zone, usualDegC: number): (place: number) => boolean {
  const { zones } = evidence.digest;
  const peers = matesOf(evidence.zones, zone).map(({ index }) => index);
  const held = heldPlacesOf(evidence);
  const { meanDegC } = zones[zone.index]!;
  const isUsual = (degC: number, place: number) =>
    held[zone.index]![place] === 1 && Math.abs(degC - usualDegC) < FAR_DEG_C;
  let leastDegC: readonly number[] | null = null; // few zones are ever down, so few are asked
  return (place) => {
    if (!leastDegC) {
      const all = Array.from(meanDegC.keys()).filter((i) => isUsual(meanDegC[i]!, i));
      const stride = Math.max(1, Math.floor(all.length / MOST_LEVEL_PLACES));
      const some = all.filter((_, i) => i % stride === 0);
      leastDegC = peers.map((peer) => median(some.map((i) => zones[peer]!.meanDegC[i]!)) - FAR_DEG_C);
    }
    const isAtWork = (peer: number, p: number) =>
      held[peer]![place] === 1 && !(zones[peer]!.meanDegC[place]! < leastDegC![p]!);
    return peers.filter(isAtWork).length >= HELD_SHARE * peers.length;
  };
}

/** A peer that is switched off loses more than this in ten minutes, as long as it counts as hot (own choice). */
const FALLS_DEG_C = 1;

/** 1 where a zone is settled, or hot and not falling: the heat is on, though the half hour of settling is not over. */
function heldPlaces(evidence: Evidence, zone: Zone): Uint8Array {
  const { digest } = evidence;
  const { meanDegC, setpointDegC } = digest.zones[zone.index]!;
  const states = zoneStatesOf(evidence)[zone.index]!;
  const usualDegC = setpointsDegCOf(evidence)[zone.index] ?? NaN;
  const back = Math.max(1, Math.round(RISE_MS / digest.periodMs));
  return states.map((state, i) => {
    if (state === zoneState.settled) return 1;
    const isCalled = !(setpointDegC[i]! < usualDegC - FAR_DEG_C);
    const isHot = meanDegC[i]! > usualDegC - FAR_DEG_C;
    return isCalled && isHot && meanDegC[i]! - nearest(meanDegC, i - back, -1) > -FALLS_DEG_C ? 1 : 0;
  });
}

function runsOf(flags: Uint8Array, bridge: number): Places[] {
  const runs: [number, number][] = [];
  for (let i = 0; i < flags.length; i++) {
    if (!flags[i]) continue;
    const last = runs.at(-1);
    if (last && i - last[1] <= bridge) last[1] = i + 1;
    else runs.push([i, i + 1]);
  }
  return runs;
}

function runOf(
  evidence: Evidence,
  zone: Zone,
  [from, to]: Places,
  usualDegC: number,
  usualSlopeDegCPerMinute: number,
): NoHeatRun {
  const { digest } = evidence;
  const { meanDegC, minDegC, outputPercent, setpointDegC } = digest.zones[zone.index]!;
  const shouldDegC = targetDegC(setpointDegC[to - 1]!, usualDegC, reachedSetpointsOf(evidence)[zone.index]!);
  const half = Math.floor((from + to) / 2);
  const late = finiteValues(meanDegC.subarray(half, to));
  const roomDegC = assumedRoomOf(evidence);
  const lastDegC = late.at(-1) ?? NaN;
  const lateLow = lowest(late);
  return {
    startMs: digest.startMs + from * digest.periodMs,
    endMs: digest.startMs + to * digest.periodMs,
    lastsToEnd: to >= digest.length - 2,
    minutes: ((to - from) * digest.periodMs) / MINUTE_MS,
    lowestDegC: lowest(finiteValues(minDegC.subarray(from, to))),
    ...endsOf(evidence, zone, [from, to], { roomDegC, shouldDegC, lastDegC, usualSlopeDegCPerMinute }),
    aboveRoomDegC: lateLow - roomDegC,
    rangeDegC: highest(late) - lateLow,
    outputPercent: meanBetween(outputPercent, from, to),
  };
}
