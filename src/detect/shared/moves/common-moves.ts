import type { Episode, Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { highest, lowest } from '../../../maths/extremes.js';
import { finiteValues } from '../../../maths/finite.js';
import { conditionsOf } from '../readings/exposure.js';
import { oncePer } from '../basics/memo.js';
import { peersOf } from '../readings/movement.js';
import { noiseDegCOf } from '../readings/noise.js';
import { hasBetween } from '../opens/opens.js';
import { placesPerSampleOf, samplingMsOf } from '../basics/sampling.js';

/** A peer moves with the step when it moves this many noise SDs, and this share of the step, the same way. */
const TIMES_NOISE = 6;
const SMALLEST_PART = 0.15;
/** … or this share of a step that no heat can make: the machine that it stops moves its other zones by a little (own choice). */
const PART_BEYOND_HEAT = 0.5;
/** Share of the peers that must move along for the step to be the machine's (own choice). */
const COMMON_SHARE = 1 / 3;
/** Change of the running share from one known period to the next that marks a start or stop. */
const EDGE_SHARE = 0.25;
/** Product takes no more heat than the heater is made to give; so many times as fast is no heat (own choice). */
const TIMES_FULL_POWER = 2.5;

/**
 * Whether a step of one zone has a cause outside its sensor: its neighbours move with it, or the machine starts or
 * stops at that moment, so that product comes or goes. A step beyond heat is none of the product.
 */
export function isCommonMove(evidence: Evidence, zone: Zone, step: Episode): boolean {
  const edgeMs = 2 * samplingMsOf(zone) + evidence.digest.periodMs;
  const isHeatless = isBeyondHeat(step.facts);
  // A stop behind the step is none of its causes: the alarm that it raised may have stopped the machine.
  if (!isHeatless && hasBetween(runningEdgesOf(evidence)[zone.index]!, step.endMs - edgeMs, step.endMs)) return true;
  const peers = peersOf(evidence, zone);
  const alongDegC = (isHeatless ? PART_BEYOND_HEAT : SMALLEST_PART) * step.facts['stepDegC']!;
  const moving = peers.filter((peer) => movesAlong(evidence, peer, step.endMs, alongDegC));
  return peers.length > 0 && moving.length >= COMMON_SHARE * peers.length;
}

/** Whether a step of settled-step is larger than full power, or its loss, could make in the time. */
function isBeyondHeat({ stepDegC, fullPowerDegC }: Episode['facts']): boolean {
  return Math.abs(stepDegC!) > TIMES_FULL_POWER * fullPowerDegC!;
}

/**
 * Extremes of the minutes, or readings, around the step against the level before: a quick loop has the mean back within
 * one. Not the place right before, which may hold a part of the step.
 */
function movesAlong(evidence: Evidence, peer: Zone, atMs: number, alongDegC: number): boolean {
  const { digest } = evidence;
  const { meanDegC, minDegC, maxDegC } = digest.zones[peer.index]!;
  const place = Math.floor((atMs - digest.startMs) / digest.periodMs);
  const apart = Math.ceil(placesPerSampleOf(peer, digest.periodMs));
  const known = (values: Float32Array, from: number, to: number) =>
    finiteValues(values.subarray(Math.max(0, from), to));
  const before = known(meanDegC, place - 2 * apart, place - apart).at(-1) ?? NaN;
  const reached =
    alongDegC > 0
      ? highest(known(maxDegC, place, place + 1 + apart)) - before
      : before - lowest(known(minDegC, place, place + 1 + apart));
  const noiseDegC = noiseDegCOf(evidence, peer);
  return reached > TIMES_NOISE * noiseDegC && reached > Math.abs(alongDegC);
}

/** Times at which the machine of each zone starts or stops, ascending, by zone index; empty where that is not known. */
export const runningEdgesOf = oncePer((evidence: Evidence): readonly (readonly number[])[] => {
  const { startMs, periodMs } = evidence.digest;
  return conditionsOf(evidence).map(({ runningShare }) => {
    const edges: number[] = [];
    let before = NaN; // slow logs leave places empty
    runningShare.forEach((share, i) => {
      if (Math.abs(share - before) >= EDGE_SHARE) edges.push(startMs + i * periodMs);
      if (!Number.isNaN(share)) before = share;
    });
    return edges;
  });
});
