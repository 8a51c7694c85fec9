import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { mergeIntervals, type Interval } from '../../../maths/intervals.js';
import { median, quantile } from '../../../maths/quantile.js';
import { oncePer } from '../basics/memo.js';
import { samplesAhead } from '../basics/sampling.js';
import { conditionsOf, stood } from '../readings/exposure.js';
import { zoneState, zoneStatesOf } from '../readings/zone-state.js';
import { assumedRoomOf } from './cold-hours.js';
import { coolDownsOf } from './cool-downs.js';

/** Water takes several times the heat that still air does; a draught or a door takes half as much again (common practice). */
const QUICK_RATIO = 2;
/** A washing lasts from some minutes to an hour and a half (common practice). */
const SHORTEST_MS = 5 * MINUTE_MS;
const LONGEST_MS = 90 * MINUTE_MS;
/** Single minutes that are less quick do not end it. */
const BRIDGE_MS = 3 * MINUTE_MS;
/** Of the zone's own cool-downs the slowest ones went without water; one fit may be too slow (own choice). */
const DRY_QUANTILE = 0.8;
/** The rate of a fall is taken over so long … */
const FALL_MS = 3 * MINUTE_MS;
/** … while the zone is this far above the room, so that noise does not make the rate (own choices). */
const LEAST_SPAN_DEG_C = 15;
/** One zone that loses heat is a zone; two and more are a machine. */
const FEWEST_ZONES = 2;
/** Digests coarser than this blur a washing. */
const COARSEST_MS = 2 * MINUTE_MS;

/**
 * When the machine of a zone was washed down, by machine name, in time order: what stop and maintenance lists say of it,
 * and times in which all its zones together lost heat several times as fast as by themselves – or, held at their
 * temperatures on a machine that stands, asked for several times their usual output. Never throws.
 */
export const washDownsOf = oncePer((evidence: Evidence): ReadonlyMap<string, readonly Interval[]> => {
  const machines = [...new Set(evidence.zones.map(({ machine }) => machine))];
  return new Map(
    machines.map((machine) => [machine, mergeIntervals([...listed(evidence, machine), ...bySight(evidence, machine)])]),
  );
});

function listed({ stops, maintenance, zones }: Evidence, machine: string): Interval[] {
  const inStops = stops
    .filter((stop) => stop.isWashDown && (stop.machine === null || stop.machine === machine))
    .map(({ startMs, endMs }) => ({ start: startMs, end: endMs }));
  const inMaintenance = maintenance
    .filter(({ isWashDown, zone }) => isWashDown && (zone === null || zones[zone]?.machine === machine))
    .map(({ timeMs }) => ({ start: timeMs, end: timeMs }));
  return [...inStops, ...inMaintenance];
}

function bySight(evidence: Evidence, machine: string): Interval[] {
  const { digest } = evidence;
  if (digest.periodMs > COARSEST_MS) return [];
  const zones = evidence.zones.filter((zone) => zone.machine === machine);
  if (zones.length < FEWEST_ZONES) return [];
  const ratios = zones.map((zone) => heatLossRatios(evidence, zone));
  const quick: Interval[] = [];
  for (let i = 0; i < digest.length; i++) {
    const there = ratios.map((ratio) => ratio[i]!).filter(Number.isFinite);
    if (there.length < FEWEST_ZONES || !(median(there) >= QUICK_RATIO)) continue;
    const start = digest.startMs + i * digest.periodMs;
    quick.push({ start, end: start + digest.periodMs });
  }
  const runs = mergeIntervals(quick, BRIDGE_MS);
  return runs.filter(({ start, end }) => end - start >= SHORTEST_MS && end - start <= LONGEST_MS);
}

/** Heat that a zone loses over what it usually loses, place by place; NaN where neither course shows it. */
function heatLossRatios(evidence: Evidence, zone: Zone): Float64Array {
  const falling = fallRatios(evidence, zone);
  const asking = outputRatios(evidence, zone);
  return falling.map((ratio, i) => (Number.isNaN(ratio) ? asking[i]! : ratio));
}

/** Without heat: how fast the zone falls to the room, over its own time constant. */
function fallRatios(evidence: Evidence, zone: Zone): Float64Array {
  const { digest } = evidence;
  const { meanDegC } = digest.zones[zone.index]!;
  const states = zoneStatesOf(evidence)[zone.index]!;
  const tauMs =
    quantile(
      coolDownsOf(evidence)[zone.index]!.map(({ tauMinutes }) => tauMinutes),
      DRY_QUANTILE,
    ) * MINUTE_MS;
  const roomDegC = assumedRoomOf(evidence);
  const ahead = samplesAhead(zone, FALL_MS, digest.periodMs);
  const ratios = new Float64Array(digest.length).fill(NaN);
  for (let i = 0; i + ahead < digest.length; i++) {
    if (states[i] !== zoneState.off || states[i + ahead] !== zoneState.off) continue;
    const [aboveDegC, laterDegC] = [meanDegC[i]! - roomDegC, meanDegC[i + ahead]! - roomDegC];
    if (!(laterDegC >= LEAST_SPAN_DEG_C)) continue;
    ratios[i] = (Math.log(aboveDegC / laterDegC) * tauMs) / (ahead * digest.periodMs);
  }
  return ratios;
}

/** Held at its temperature while the machine stands: the output over what it usually is then. */
function outputRatios(evidence: Evidence, zone: Zone): Float64Array {
  const { outputPercent } = evidence.digest.zones[zone.index]!;
  const states = zoneStatesOf(evidence)[zone.index]!;
  const { runningShare } = conditionsOf(evidence)[zone.index]!;
  const standing = outputPercent.map((percent, i) =>
    states[i] === zoneState.settled && stood(runningShare[i]!) ? percent : NaN,
  );
  const usualPercent = median(standing);
  const ratios = new Float64Array(standing.length).fill(NaN);
  if (usualPercent > 0) for (let i = 0; i < ratios.length; i++) ratios[i] = standing[i]! / usualPercent;
  return ratios;
}
