import type { Evidence } from '../../../model/detector.js';
import type { ZoneDigest } from '../../../model/digest.js';
import type { Zone } from '../../../model/zone.js';
import { MINUTE_MS, HOUR_MS } from '../../../model/time-units.js';
import { maskOf } from '../readings/mask.js';
import { oncePer } from '../basics/memo.js';
import { samplingMsOf } from '../basics/sampling.js';
import { WARMEST_ROOM_DEG_C } from '../basics/warmest-room.js';

/** A rise must be this large to count as a heat-up (own choice: above any upset). */
const LEAST_RISE_DEG_C = 40;
/** Slope is taken between these shares of the rise: before, heat is still on its way; after, output is cut back. */
const FROM_SHARE = 0.2;
const TO_SHARE = 0.8;
/** No heater zone takes longer to heat (common practice). */
const LONGEST_MS = 4 * HOUR_MS;
/** Slower than this it is not heated but drifts along with its room. */
const SLOWEST_DEG_C_PER_MINUTE = 0.15;
/** A reading that shows no new high for so long, and in so many readings, has stopped rising (own choice). */
const WITHOUT_HIGH_MS = 6 * MINUTE_MS;
const READINGS_WITHOUT_HIGH = 2;

/** One heat-up from cold. */
export interface HeatUp {
  readonly startMs: number;
  readonly endMs: number;
  readonly fromDegC: number;
  readonly toDegC: number;
  /** Between a fifth and four fifths of the rise. */
  readonly slopeDegCPerMinute: number;
  /** How long that part took. */
  readonly minutes: number;
  /** Mean output over that part; NaN where not logged. */
  readonly outputPercent: number;
}

/** Every heat-up from room to working temperature, per zone in time order. Never throws. */
export const heatUpsOf = oncePer((evidence: Evidence): readonly (readonly HeatUp[])[] =>
  evidence.zones.map((zone) => heatUpsIn(evidence, zone)),
);

function heatUpsIn(evidence: Evidence, listed: Zone): HeatUp[] {
  const { startMs, periodMs, zones } = evidence.digest;
  const zone = zones[listed.index]!;
  const mask = maskOf(evidence)[listed.index]!;
  const withoutHigh = Math.ceil(
    Math.max(WITHOUT_HIGH_MS, READINGS_WITHOUT_HIGH * Math.max(samplingMsOf(listed), periodMs)) / periodMs,
  );
  const found: HeatUp[] = [];
  const longest = Math.ceil(LONGEST_MS / periodMs);
  let before = -1; // the last place with a usable reading: logs slower than a minute leave places empty
  for (let i = 0; i < mask.length; i++) {
    if (mask[i]) {
      if (zone.readingCount[i] !== 0 || zone.badCount[i] !== 0) before = -1;
      continue;
    }
    const last = before;
    before = i;
    if (last < 0 || !(zone.meanDegC[last]! <= WARMEST_ROOM_DEG_C && zone.meanDegC[i]! > WARMEST_ROOM_DEG_C)) continue;
    const foot = footOf(zone, mask, last);
    const top = topOf(zone, mask, i, Math.min(mask.length, i + longest), withoutHigh);
    const heatUp = measure(zone, foot, top, startMs, periodMs);
    if (heatUp) found.push(heatUp);
    i = Math.max(i, top);
    before = i;
  }
  return found;
}

/** Back to where the rise began. */
function footOf(zone: ZoneDigest, mask: Uint8Array, from: number): number {
  let foot = from;
  for (let i = from - 1; i >= 0; i--) {
    if (zone.readingCount[i] === 0 && zone.badCount[i] === 0) continue;
    if (mask[i] || !(zone.meanDegC[i]! < zone.meanDegC[foot]!)) break;
    foot = i;
  }
  return foot;
}

/** On to where the reading stops rising: no new high for so many places. */
function topOf(zone: ZoneDigest, mask: Uint8Array, from: number, end: number, withoutHigh: number): number {
  let top = from;
  for (let i = from; i < end && i - top <= withoutHigh; i++) {
    if (mask[i]) continue;
    if (zone.meanDegC[i]! > zone.meanDegC[top]!) top = i;
  }
  return top;
}

function measure(zone: ZoneDigest, foot: number, top: number, startMs: number, periodMs: number): HeatUp | null {
  const fromDegC = zone.meanDegC[foot]!;
  const rise = zone.meanDegC[top]! - fromDegC;
  if (!(rise >= LEAST_RISE_DEG_C)) return null;
  const from = crossing(zone, foot, top, fromDegC + FROM_SHARE * rise);
  const to = crossing(zone, foot, top, fromDegC + TO_SHARE * rise);
  const minutes = ((to - from) * periodMs) / MINUTE_MS;
  const slopeDegCPerMinute = ((TO_SHARE - FROM_SHARE) * rise) / minutes;
  if (!(minutes > 0) || slopeDegCPerMinute < SLOWEST_DEG_C_PER_MINUTE) return null;
  let sum = 0;
  let count = 0;
  for (let i = Math.floor(from); i <= Math.ceil(to); i++) {
    if (Number.isNaN(zone.outputPercent[i]!)) continue;
    sum += zone.outputPercent[i]!;
    count++;
  }
  return {
    startMs: startMs + foot * periodMs,
    endMs: startMs + top * periodMs,
    fromDegC,
    toDegC: zone.meanDegC[top]!,
    slopeDegCPerMinute,
    minutes,
    outputPercent: sum / count,
  };
}

/** Place, with its fraction, at which the reading passes a level. */
function crossing(zone: ZoneDigest, foot: number, top: number, levelDegC: number): number {
  let before = foot;
  for (let i = foot; i <= top; i++) {
    const degC = zone.meanDegC[i]!;
    if (Number.isNaN(degC)) continue;
    if (degC >= levelDegC) {
      const step = degC - zone.meanDegC[before]!;
      return step > 0 ? before + ((levelDegC - zone.meanDegC[before]!) / step) * (i - before) : i;
    }
    before = i;
  }
  return NaN;
}
