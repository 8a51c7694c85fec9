import type { Evidence } from '../../../model/detector.js';
import type { ZoneDigest } from '../../../model/digest.js';
import type { Zone } from '../../../model/zone.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { runningMedian } from '../../../maths/running-median.js';
import { maskOf } from './mask.js';
import { oncePer } from '../basics/memo.js';
import { placesPerSampleOf, samplingMsOf } from '../basics/sampling.js';
import { WARMEST_ROOM_DEG_C } from '../basics/warmest-room.js';

/** What a zone does in one place of the digest. */
export const zoneState = {
  /** No usable reading. */
  unknown: 0,
  /** Not heated: output zero, or no heat called for. */
  off: 1,
  /** Held at a temperature for a while, the loop at rest. */
  settled: 2,
  /** Anything else: heating, cooling, disturbed. */
  moving: 3,
} as const;

/** An output this small heats nothing (common practice: the last digit of the log). */
export const ZERO_OUTPUT_PERCENT = 0.5;
/** So far below its set point with zero output, the zone is switched off and not regulating (own choice). */
const SWITCHED_OFF_DEG_C = 20;
/** Where no set point tells, zero output for this long is more than the pause of an on/off controller (own choice). */
const LONGEST_PAUSE_MS = 20 * MINUTE_MS;
/** A stop or start of the load throws a small zone off by some degrees for minutes; beyond this it is not held. */
const BAND_DEG_C = 8;
/** Without a set point, the level held is the median of this long a stretch: longer than a swing or a heat-up. */
const LEVEL_MS = 90 * MINUTE_MS;
/** Two levels found so are one and the same within this (own choice: above the noise of such a median). */
const SAME_LEVEL_DEG_C = 1.5;
/** A set point given in the other unit and rounded is still the same set point. */
const SAME_SETPOINT_DEG_C = 0.5;
/** A zone does not change what it does in so short a time without readings (own choice). */
const LOST_MS = 5 * MINUTE_MS;
/** Quiet time after which loop and bar have come to rest (common practice: three time constants of ten minutes). */
const SETTLING_MS = 30 * MINUTE_MS;

/**
 * Tells for every place of the digest whether a zone is off, settled or moving.
 *
 * @returns Per zone one {@link zoneState} per place. Places without a good reading repeat the place before for some minutes,
 *   and in a log slower than the digest until its next sample is due. Never throws.
 */
export const zoneStatesOf = oncePer((evidence: Evidence): readonly Uint8Array[] =>
  evidence.zones.map((zone) => {
    const digest = evidence.digest.zones[zone.index]!;
    return statesOf(zone, digest, maskOf(evidence)[zone.index]!, evidence.digest.periodMs);
  }),
);

function statesOf(zone: Zone, digest: ZoneDigest, mask: Uint8Array, periodMs: number): Uint8Array {
  const states = new Uint8Array(mask.length);
  const off = offPlaces(digest, mask, Math.ceil(LONGEST_PAUSE_MS / periodMs), placesPerSampleOf(zone, periodMs));
  const levelDegC = levelsHeld(digest, mask, off, periodMs);
  const sameDegC = zone.has.setpoint ? SAME_SETPOINT_DEG_C : SAME_LEVEL_DEG_C;
  const settlingPlaces = Math.ceil(SETTLING_MS / periodMs);
  const slackPlaces = Math.ceil(Math.max(1.5 * samplingMsOf(zone), LOST_MS) / periodMs);
  let heldDegC = NaN;
  let since = 0;
  let emptyPlaces = Infinity;
  for (let i = 0; i < mask.length; i++) {
    if (mask[i]) {
      emptyPlaces++;
      if (digest.readingCount[i] === 0 && emptyPlaces <= slackPlaces) states[i] = states[i - 1]!;
      else heldDegC = NaN;
      continue;
    }
    emptyPlaces = 0;
    if (off[i]) {
      states[i] = zoneState.off;
      heldDegC = NaN;
      continue;
    }
    const isSame = Math.abs(levelDegC[i]! - heldDegC) <= sameDegC;
    if (!isSame || !(Math.abs(digest.meanDegC[i]! - levelDegC[i]!) <= BAND_DEG_C)) {
      heldDegC = levelDegC[i]!;
      since = i;
    }
    states[i] = i - since >= settlingPlaces ? zoneState.settled : zoneState.moving;
  }
  return states;
}

/** The set point, or the level at which the reading is held where the log gives none; NaN where the zone is off. */
function levelsHeld(digest: ZoneDigest, mask: Uint8Array, off: Uint8Array, periodMs: number): Float64Array {
  const heatedDegC = new Float64Array(mask.length).fill(NaN);
  let hasSetpoint = false;
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] || off[i]) continue;
    heatedDegC[i] = digest.meanDegC[i]!;
    if (!Number.isNaN(digest.setpointDegC[i]!)) hasSetpoint = true;
  }
  if (hasSetpoint) return new Float64Array(digest.setpointDegC);
  return runningMedian(heatedDegC, Math.max(3, Math.round(LEVEL_MS / periodMs)));
}

/**
 * 1 where the zone is not heated.
 *
 * @param apart Places that one sample stands for.
 */
function offPlaces(digest: ZoneDigest, mask: Uint8Array, longestPause: number, apart: number): Uint8Array {
  const off = new Uint8Array(mask.length);
  let pause = 0;
  let pauseFrom = 0;
  for (let i = 0; i < mask.length; i++) {
    const degC = digest.meanDegC[i]!;
    const setpointDegC = digest.setpointDegC[i]!;
    const outputPercent = digest.outputPercent[i]!;
    if (outputPercent > ZERO_OUTPUT_PERCENT) pause = 0;
    else if (outputPercent <= ZERO_OUTPUT_PERCENT) {
      if (pause === 0) pauseFrom = i;
      pause += apart;
    }
    if (mask[i]) continue;
    if (!Number.isNaN(setpointDegC)) {
      const isHeatCalled = setpointDegC > WARMEST_ROOM_DEG_C && !(degC < setpointDegC - SWITCHED_OFF_DEG_C);
      off[i] = setpointDegC <= WARMEST_ROOM_DEG_C || (pause > 0 && !isHeatCalled) ? 1 : 0;
      if (pause === 0 && !Number.isNaN(outputPercent)) off[i] = 0;
    } else if (!Number.isNaN(outputPercent)) {
      off[i] = pause >= longestPause ? 1 : 0;
      if (off[i] && pause - apart < longestPause) off.fill(1, pauseFrom, i);
    } else off[i] = degC <= WARMEST_ROOM_DEG_C ? 1 : 0;
  }
  return off;
}
