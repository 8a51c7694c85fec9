import type { Episode, Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { MINUTE_MS, HOUR_MS } from '../../../model/time-units.js';
import { median } from '../../../maths/quantile.js';
import { besideSpikes } from './beside-spikes.js';
import { conditionsOf } from './exposure.js';
import { fullOutputPercentOf } from './full-output.js';
import { isMoving, isMovingClearly, movementIn, peersOf, type Movement } from './movement.js';
import { oncePer } from '../basics/memo.js';
import { longestOutputRest } from './output-rests.js';
import { resolutionDegCOf } from '../basics/sampling.js';
import { WARMEST_ROOM_DEG_C } from '../basics/warmest-room.js';
import { usedStepsDegC } from './used-step.js';

/** A long run of one exact reading, and what else moved meanwhile. */
export interface StuckStretch {
  readonly startMs: number;
  readonly endMs: number;
  readonly valueDegC: number;
  readonly minutes: number;
  /** How many times longer than the zone's usual long runs, with the zone's own coarseness in it. */
  readonly timesUsual: number;
  readonly own: Movement;
  /** The same without the last minutes, whose heat cannot have reached the sensor. */
  readonly heat: Movement;
  /** Of the output, well inside. */
  readonly innerOutputRangePercent: number;
  /** The reading jumped to this value from another one, by more than a live reading moves at once. */
  readonly isJumpedTo: boolean;
  /** Median over the peers; NaN without peers. */
  readonly peerRangeDegC: number;
  /** Share of peers whose reading moved at all; NaN without peers. */
  readonly movedPeersShare: number;
  /** Share of peers that moved further than a coarse reading flickers, theirs or the zone's own. */
  readonly clearlyMovedPeersShare: number;
  readonly peerOutputRangePercent: number;
  /** Range of the peer that moved least but one; NaN for fewer than two peers. */
  readonly stillestPeersDegC: number;
  readonly verdict: 'channel' | 'tag' | 'file' | 'calm';
}

/** Shorter rests are nothing (own choice: micro-stops and coarse logs rest that long). */
const SMALLEST_MINUTES = 20;
/** Range of output means that must move a live reading within the stretch (own choice). */
const MOVED_OUTPUT_PERCENT = 20;
/** Movement of peers, or of the own set point, that a live reading cannot sit out (own choice). */
const MOVED_PEERS_DEG_C = 8;
const MOVED_SETPOINT_DEG_C = 5;
/** What the output does in the last minutes of a rest has not reached the sensor yet (common practice: dead time). */
const HEAT_LAG_MS = 5 * MINUTE_MS;
/** A coarse reading may have stood for minutes before the record stopped: peers are looked at well inside (own choice). */
const MARGIN_SHARE = 0.1;
/** A rest so many times the usual long one is out of character by itself (own choice). */
const OUT_OF_CHARACTER_TIMES = 8;
/** The same where neighbours moved far and no output is logged to tell more (own choice). */
const LONG_TIMES = 3;
/** Cold, all peers went this far with the room, and through this many steps of the log: no zone sits that out (own choice). */
const ROOM_DEG_C = 2;
const ROOM_STEPS = 4;
/** A jump into the run of this size, and of several digits, is no creeping to rest (own choice: above any noise). */
const JUMPED_DEG_C = 5;
/** Two stretches at one exact value with less than this between them, a hole or a restart, are one fault (own choice). */
const SAME_FAULT_MS = 2 * HOUR_MS;
/** Share of zones at rest from which on the recorder, not the zones, stands still (own choice). */
const FILE_SHARE = 0.9;

/** Long runs of every zone with a verdict each, by zone index, in time order. */
export const stuckStretchesOf = oncePer((evidence: Evidence): readonly (readonly StuckStretch[])[] =>
  evidence.zones.map((zone) => {
    const isBesideSpike = besideSpikes(evidence, zone);
    const stretches = (evidence.episodes.get('stuck-run')?.[zone.index] ?? [])
      .filter((run) => run.facts['durationMinutes']! >= SMALLEST_MINUTES)
      .map((run) => {
        const whole = stretchOf(evidence, zone, run, !isBesideSpike(run));
        return staleIn(evidence, zone, run, whole) ?? whole;
      });
    return stretches.map((stretch) =>
      isPartOfChannel(stretch, stretches) ? { ...stretch, verdict: 'channel' } : stretch,
    );
  }),
);

/** What looks like a stale tag for a while, and at the same exact value proves to be the channel before or after. */
function isPartOfChannel(stretch: StuckStretch, all: readonly StuckStretch[]): boolean {
  return (
    stretch.verdict === 'tag' &&
    all.some(
      (other) =>
        other.verdict === 'channel' &&
        other.valueDegC === stretch.valueDegC &&
        other.startMs - stretch.endMs < SAME_FAULT_MS &&
        stretch.startMs - other.endMs < SAME_FAULT_MS,
    )
  );
}

/**
 * A stale tag inside a longer run: a coarse reading had stood at this value while its loop still worked. The tag is stale
 * for as long as the output does not move either, out of character and for most of the run; null where that is none.
 */
function staleIn(evidence: Evidence, zone: Zone, run: Episode, whole: StuckStretch): StuckStretch | null {
  if (whole.isJumpedTo || whole.verdict === 'tag' || whole.verdict === 'file') return null;
  const rest = longestOutputRest(evidence, zone.index, run.startMs, run.endMs);
  if (!rest || rest.timesUsual < OUT_OF_CHARACTER_TIMES) return null;
  const minutes = (rest.endMs - rest.startMs) / MINUTE_MS;
  if (minutes < Math.max(SMALLEST_MINUTES, 0.5 * whole.minutes)) return null;
  const { startMs, endMs } = rest;
  const facts = { ...run.facts, durationMinutes: minutes, jumpInDegC: 0 };
  const stale = stretchOf(evidence, zone, { ...run, startMs, endMs, facts }, false);
  return stale.verdict === 'tag' ? stale : null;
}

function stretchOf(evidence: Evidence, zone: Zone, run: Episode, isOwnJump: boolean): StuckStretch {
  const { startMs, endMs, facts } = run;
  // Whole periods well inside: at its ends the run may hold a live sample that happens to be equal.
  const fromMs = startMs + evidence.digest.periodMs;
  const toMs = endMs - evidence.digest.periodMs;
  const own = movementIn(evidence, zone.index, fromMs, toMs);
  const marginMs = Math.min(HEAT_LAG_MS, MARGIN_SHARE * (toMs - fromMs));
  const heat = movementIn(evidence, zone.index, fromMs, Math.max(fromMs, toMs - HEAT_LAG_MS));
  const inner = movementIn(evidence, zone.index, fromMs + marginMs, toMs - marginMs);
  const steps = usedStepsDegC(evidence);
  const stepDegC = steps[zone.index]!;
  const peers = peersOf(evidence, zone).map((peer) => ({
    peer,
    movement: movementIn(evidence, peer.index, fromMs + marginMs, toMs - marginMs),
  }));
  const known = peers.filter(({ movement }) => !Number.isNaN(movement.readingRangeDegC));
  const parts = {
    startMs,
    endMs,
    valueDegC: facts['valueDegC']!,
    minutes: facts['durationMinutes']!,
    timesUsual: facts['durationMinutes']! / Math.max(0.1, facts['usualLongMinutes'] ?? 0),
    own,
    heat,
    innerOutputRangePercent: inner.outputRangePercent,
    isJumpedTo: isOwnJump && Math.abs(facts['jumpInDegC'] ?? 0) >= Math.max(JUMPED_DEG_C, 4 * resolutionDegCOf(zone)),
    peerRangeDegC: median(known.map(({ movement }) => movement.sustainedRangeDegC)),
    movedPeersShare: known.filter(({ peer, movement }) => isMoving(movement, peer)).length / known.length,
    clearlyMovedPeersShare:
      known.filter(({ peer, movement }) => isMovingClearly(movement, Math.max(stepDegC, steps[peer.index]!))).length /
      known.length,
    peerOutputRangePercent: median(known.map(({ movement }) => movement.outputRangePercent)),
    stillestPeersDegC: stillestDegC(known.map(({ movement }) => movement)),
  };
  return { ...parts, verdict: verdictOf(evidence, zone, parts) };
}

function verdictOf(evidence: Evidence, zone: Zone, stretch: Omit<StuckStretch, 'verdict'>): StuckStretch['verdict'] {
  const { own, heat, timesUsual, peerRangeDegC, movedPeersShare, peerOutputRangePercent } = stretch;
  const isOutOfCharacter = timesUsual >= OUT_OF_CHARACTER_TIMES;
  // A whole file at rest, but for the first minutes: the reading stood before the record stopped.
  const isFileAtRest = movedPeersShare <= 1 - FILE_SHARE && stretch.innerOutputRangePercent === 0;
  const hasOutputMoved = heat.outputRangePercent >= MOVED_OUTPUT_PERCENT && !isFileAtRest;
  const hasSetpointMoved = heat.setpointRangeDegC >= MOVED_SETPOINT_DEG_C;
  const havePeersMoved = peerRangeDegC >= Math.max(MOVED_PEERS_DEG_C, 4 * resolutionDegCOf(zone));
  // At its stop, an output stands still for a live loop as well: the loop asks for all the heat there is.
  const stopPercent = fullOutputPercentOf(evidence)[zone.index]!;
  const isOutputDead = own.outputRangePercent === 0 && own.outputMeanPercent > 0 && own.outputMeanPercent < stopPercent;
  // What stops moving keeps its last value, be it a sensor at rest or a recorder; only a value put in its place is jumped to.
  if (stretch.isJumpedTo && isOutOfCharacter) return 'channel';
  if (hasOutputMoved || hasSetpointMoved) return isOutOfCharacter || havePeersMoved ? 'channel' : 'calm';
  if (!isWarm(evidence, zone, stretch.valueDegC)) return coldVerdictOf(zone, stretch, havePeersMoved, stopPercent);
  if (movedPeersShare <= 1 - FILE_SHARE && isOutOfCharacter) return isOutputDead || !zone.has.output ? 'file' : 'calm';
  // A frozen tag keeps an output that neighbours with the same load could not keep.
  if (isOutputDead && (havePeersMoved || (isOutOfCharacter && peerOutputRangePercent > 0))) return 'tag';
  // Neighbours on the move are no proof against a zone that holds its set point, only against one out of character.
  if (havePeersMoved && timesUsual >= (zone.has.output ? OUT_OF_CHARACTER_TIMES : LONG_TIMES)) return 'channel';
  // At its stop no loop keeps the reading on the move: the zone rests where its heat just does.
  const isAtStop = own.outputMeanPercent >= stopPercent;
  // Of two neighbours one may move by a fault of its own.
  return isOutOfCharacter && !isAtStop && stretch.clearlyMovedPeersShare > 0.5 ? 'channel' : 'calm';
}

/**
 * A cold zone rests at room temperature, so it must be told apart by what rests less: peers that heated up, or that all
 * followed the room through several steps of the log.
 */
function coldVerdictOf(
  zone: Zone,
  { own, timesUsual, stillestPeersDegC }: Omit<StuckStretch, 'verdict'>,
  havePeersMoved: boolean,
  stopPercent: number,
): StuckStretch['verdict'] {
  if (havePeersMoved && timesUsual >= OUT_OF_CHARACTER_TIMES) {
    // Peers were heated: a live loop would have been called for, a stale tag shows its old zero output.
    return zone.has.output && own.outputRangePercent === 0 && own.outputMeanPercent < stopPercent ? 'tag' : 'channel';
  }
  const leastDegC = Math.max(ROOM_DEG_C, ROOM_STEPS * resolutionDegCOf(zone));
  return stillestPeersDegC >= leastDegC && timesUsual >= LONG_TIMES ? 'channel' : 'calm';
}

/** One peer may be stuck itself, so it is the second smallest range that counts. */
function stillestDegC(movements: readonly Movement[]): number {
  return movements.map(({ readingRangeDegC }) => readingRangeDegC).sort((a, b) => a - b)[1] ?? NaN;
}

/** Clearly above the coldest the zone gets; where it is never cold but for this rest, above any room. */
function isWarm(evidence: Evidence, zone: Zone, degC: number): boolean {
  const { hotFromDegC } = conditionsOf(evidence)[zone.index]!;
  return hotFromDegC === -Infinity ? degC > WARMEST_ROOM_DEG_C : degC >= hotFromDegC / 2;
}
