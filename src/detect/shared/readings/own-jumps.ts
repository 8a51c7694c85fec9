import type { Episode, Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { FASTEST_HEAT_DEG_C_PER_S } from '../basics/fastest-heat.js';
import { oncePer } from '../basics/memo.js';
import { samplingMsOf } from '../basics/sampling.js';
import { peersOf } from './movement.js';
import { noiseDegCOf } from './noise.js';
import { matesOf } from '../basics/mates.js';

/** A reading that a fault displaced is brought back by its control, or by itself, within about so long (own choice). */
const STAY_MS = 10 * MINUTE_MS;
/** As many rows at least, where rows are rare. */
const STAY_ROWS = 3;
/** What is left of a jump that stays. */
const STAYING_SHARE = 0.5;
/** A peer goes along when it moves this share of the jump, the same way, and most of them must (own choices). */
const SMALLEST_PART = 0.15;
const COMMON_SHARE = 0.5;
/** A zone falls when it does so by more than this many noise SDs. */
const TIMES_NOISE = 6;
/** With fewer others, all of them may be on the card that fails (own choice). */
const FEWEST_FALLING = 3;
/** A reading within this share of the jump was at its set point (own choice). */
const AT_SETPOINT_SHARE = 0.5;
/** Less output heats nothing (own choice). */
const NO_HEAT_PERCENT = 1;

/**
 * Jumps that the machine did not make: of the episodes of impossible-step, by zone index, those that
 * no heat could make, that come back, or that most other zones of the machine do not make, too. A log that is slow for
 * its zones shows starts, stops and new set points as one step, all zones at once, and a moment without power as a dip.
 */
export const ownJumpsOf = oncePer((evidence: Evidence): readonly (readonly Episode[])[] =>
  evidence.zones.map((zone) =>
    (evidence.episodes.get('impossible-step')?.[zone.index] ?? []).filter((jump) => !isOfMachine(evidence, zone, jump)),
  ),
);

function isOfMachine(evidence: Evidence, zone: Zone, jump: Episode): boolean {
  if (Math.abs(jump.facts['rateDegCPerS']!) > FASTEST_HEAT_DEG_C_PER_S) return false;
  return isAllFalling(evidence, zone, jump) || isLastingMove(evidence, zone, jump);
}

/** A start, a stop or a new set point. */
function isLastingMove(evidence: Evidence, zone: Zone, { startMs, endMs, facts }: Episode): boolean {
  const jumpDegC = facts['jumpDegC']!;
  const moved = (z: Zone): number => lastingMoveDegC(evidence, z, startMs, endMs) * Math.sign(jumpDegC);
  if (!(moved(zone) >= STAYING_SHARE * Math.abs(jumpDegC)) || isUnasked(evidence, zone, startMs, endMs)) return false;
  const peers = peersOf(evidence, zone).filter((peer) => !Number.isNaN(moved(peer)));
  const along = peers.filter((peer) => moved(peer) >= SMALLEST_PART * Math.abs(jumpDegC));
  return along.length > 0 && along.length >= COMMON_SHARE * peers.length;
}

/** The heating of the machine, or of all machines, was off for a moment: every zone falls, whatever input it has. */
function isAllFalling(evidence: Evidence, zone: Zone, { startMs, endMs, facts }: Episode): boolean {
  if (facts['jumpDegC']! > 0) return false;
  const others = evidence.zones.filter((z) => z !== zone);
  const groups = [matesOf(evidence.zones, zone), others];
  return groups.some(
    (group) => group.length >= FEWEST_FALLING && group.every((peer) => isFalling(evidence, peer, startMs, endMs)),
  );
}

/** Somewhere within a row of the time, clearly below where it was. */
function isFalling(evidence: Evidence, zone: Zone, startMs: number, endMs: number): boolean {
  const { firstDegC, minDegC } = evidence.digest.zones[zone.index]!;
  const rowMs = samplingMsOf(zone);
  const [before, from, to] = [startMs - rowMs, startMs, endMs + rowMs].map((at) => placeAt(evidence, at));
  const beforeDegC = firstDegC.subarray(before, from! + 1).find(Number.isFinite) ?? NaN;
  const lowestDegC = minDegC.subarray(from, to! + 1).reduce((low, degC) => (degC < low ? degC : low), Infinity);
  return beforeDegC - lowestDegC > TIMES_NOISE * noiseDegCOf(evidence, zone);
}

/** From some time before a jump to some time after it; NaN where there are no readings. */
function lastingMoveDegC(evidence: Evidence, zone: Zone, startMs: number, endMs: number): number {
  const stayMs = Math.max(STAY_MS, STAY_ROWS * samplingMsOf(zone));
  const { meanDegC } = evidence.digest.zones[zone.index]!;
  const [before, from, to, after] = [startMs - stayMs, startMs, endMs, endMs + stayMs].map((at) =>
    placeAt(evidence, at),
  );
  const beforeDegC = meanDegC.subarray(before, from! + 1).find(Number.isFinite) ?? NaN;
  const afterDegC = meanDegC.subarray(to, after! + 1).findLast(Number.isFinite) ?? NaN;
  return afterDegC - beforeDegC;
}

/** The set point is known and stays, the reading was at it, and it is no fall for want of heat. */
function isUnasked(evidence: Evidence, zone: Zone, startMs: number, endMs: number): boolean {
  const { meanDegC, setpointDegC, outputPercent } = evidence.digest.zones[zone.index]!;
  const [from, to] = [placeAt(evidence, startMs), placeAt(evidence, endMs)];
  const jumpDegC = meanDegC[to]! - meanDegC[from]!;
  if (setpointDegC[from] !== setpointDegC[to] || (jumpDegC < 0 && outputPercent[to]! < NO_HEAT_PERCENT)) return false;
  return Math.abs(meanDegC[from]! - setpointDegC[from]!) < AT_SETPOINT_SHARE * Math.abs(jumpDegC);
}

function placeAt({ digest }: Evidence, timeMs: number): number {
  return Math.max(0, Math.floor((timeMs - digest.startMs) / digest.periodMs));
}
