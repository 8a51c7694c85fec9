import type { Evidence } from '../../../model/detector.js';
import { HOUR_MS, DAY_MS } from '../../../model/time-units.js';
import { momentsOf, populationSd } from '../../../maths/moments.js';
import { median } from '../../../maths/quantile.js';
import { robustSd } from '../../../maths/spread.js';
import { assumedRoomOf } from '../cold/cold-hours.js';
import { oncePer } from '../basics/memo.js';
import { roomSeriesOf } from '../cold/soaks.js';
import { stuckStretchesOf } from '../readings/stuck-stretches.js';
import { windowsOf, type ZoneWindows } from '../readings/windows.js';
import { zoneState } from '../readings/zone-state.js';
import { matesOf } from '../basics/mates.js';

/** A zone less warm than this above the room has a duty too small to compare (own choice). */
const LEAST_SPAN_DEG_C = 20;
/** Fewer settled windows than this, half an hour each, cannot show the zone's usual duty (own choice). */
const LEAST_ROWS = 16;
/** A zone whose usual duty is above this has no room left to show a change (own choice). */
const SATURATED_PERCENT = 90;
/** A window whose mean is further from its set point is not at rest (own choice). */
const FARTHEST_DEG_C = 3;
/** A duty near zero no longer follows the temperature (common practice); full output still says "at least this much". */
const LEAST_DUTY_PERCENT = 1;
const MOST_DUTY_PERCENT = 100;
/** A set point that changes by less needs no term of its own (own choice). */
const LEAST_SETPOINT_RANGE_DEG_C = 1;
/** A mean over half an hour is not better known than this: outputs are logged in whole percents (common practice). */
const LEAST_ERROR_PERCENT = 0.05;
/** Running share must vary by this standard deviation to be of use (own choice). */
const LEAST_RUNNING_SD = 0.02;
/** With fewer peers than this, the room's own day must be told apart from the load by the clock (own choice). */
const PEERS_ENOUGH = 4;
/** A neighbour away from its set point for this many windows counts as disturbed (own choice: longer than a stop). */
const DISTURBED_WINDOWS = 4;
/**
 * Peers that explain a zone's duty: the nearest in the list, where neighbours stand next to each other. What moves a
 * whole machine shows in these, and the cost rises with the square of their number (own choice).
 */
const MOST_PEERS = 24;
/** Strength of the ridge that keeps like-moving peers from fighting, share of the rows (own choice: hardly any bias). */
const RIDGE_SHARE = 1e-3;

/** The duty of a zone in its settled windows, one place per window. */
export interface Duty {
  readonly timeMs: Float64Array;
  /** Duty brought to the zone's usual temperature above the room, percent. */
  readonly dutyPercent: Float64Array;
  /** Percent of duty for one degree of true temperature. */
  readonly percentPerDegC: number;
  readonly spanDegC: number;
  readonly peerCount: number;
  /** What rounding of the output alone leaves uncertain in a row. */
  readonly leastErrorDegC: number;
}

/**
 * The duty of a zone as a linear model without change: duty = usual + its share of what moves the peers (load and room)
 * + terms for set point, running share and heat stored. The columns take much more memory than the rest.
 */
export interface DutyRows {
  readonly duty: Duty;
  /** One place per window each. */
  readonly columns: readonly Float64Array[];
  /** Weights of the extra rows that make the ridge: one per column, value of that column in it. */
  readonly ridge: readonly number[];
}

export type DutyAnswer = { readonly rows: DutyRows } | { readonly unable: string };

/** @param leftOut Zones that are no reference, because they have a fault of their own. Never throws. */
export function dutyRowsOf(evidence: Evidence, index: number, leftOut: ReadonlySet<number>): DutyAnswer {
  const zone = evidence.zones[index]!;
  if (!zone.has.output) return { unable: `Zone ${zone.name}: the log has no output, so its duty is not known.` };
  const windows = windowsOf(evidence);
  const own = windows.zones[index]!;
  const roomDegC = assumedRoomOf(evidence);
  const others = [...matesOf(evidence.zones, zone)].sort(
    (a, b) => Math.abs(a.index - index) - Math.abs(b.index - index),
  );
  const peers: Float64Array[] = [];
  for (const { index: peer, has } of others) {
    const duty = has.output && !leftOut.has(peer) ? standardDutiesOf(evidence)[peer]! : null;
    if (duty) peers.push(duty);
    if (peers.length === MOST_PEERS) break;
  }
  const usable = usableWindows(own, peers, roomDegC, windows.count);
  if (usable.length < LEAST_ROWS) {
    const hours = (LEAST_ROWS * windows.windowMs) / HOUR_MS;
    return { unable: `Zone ${zone.name} was settled for less than ${hours} hours, so its usual duty is not known.` };
  }
  const timeMs = Float64Array.from(usable, (w) => windows.startMs + (w + 0.5) * windows.windowMs);
  const neighbours = others.slice(0, MOST_PEERS).map((z) => disturbedWindowsOf(evidence)[z.index]!);
  const room = peers.length < PEERS_ENOUGH ? roomColumns(evidence, timeMs) : [];
  if (median(usable.map((w) => own.outputPercent[w]!)) > SATURATED_PERCENT) {
    return { unable: `Zone ${zone.name} works at full output most of the time, so its duty says little.` };
  }
  return { rows: buildRows(own, peers, usable, roomDegC, timeMs, [...room, ...neighbourColumns(neighbours, usable)]) };
}

/** Apart from the rest: a loop that becomes hot in a long function has all of it translated (measured). */
function usableWindows(own: ZoneWindows, peers: readonly Float64Array[], roomDegC: number, count: number): number[] {
  const usable: number[] = [];
  for (let w = 0; w < count; w++) if (isUsable(own, w, roomDegC) && isSeenBeside(peers, w)) usable.push(w);
  return usable;
}

/** Whether any peer has a duty in the window; true where there are no peers at all. */
function isSeenBeside(peers: readonly Float64Array[], w: number): boolean {
  for (const duty of peers) if (!Number.isNaN(duty[w]!)) return true;
  return peers.length === 0;
}

const usualOr = (value: number, other: number) => (Number.isNaN(value) ? other : value);

function isUsable(zone: ZoneWindows, w: number, roomDegC: number): boolean {
  const duty = zone.outputPercent[w]!;
  return (
    zone.state[w] === zoneState.settled &&
    duty >= LEAST_DUTY_PERCENT &&
    duty <= MOST_DUTY_PERCENT &&
    zone.readingDegC[w]! - roomDegC >= LEAST_SPAN_DEG_C &&
    !(Math.abs(zone.readingDegC[w]! - zone.setpointDegC[w]!) > FARTHEST_DEG_C)
  );
}

/** By zone index; each zone is a peer of many. */
const standardDutiesOf = oncePer((evidence: Evidence): readonly (Float64Array | null)[] => {
  const roomDegC = assumedRoomOf(evidence);
  return windowsOf(evidence).zones.map((zone) => standardDuty(zone, roomDegC));
});

/** Duty per degree above the room, less its median, over its own spread; null where it hardly moves or is not known. */
function standardDuty(zone: ZoneWindows, roomDegC: number): Float64Array | null {
  const perDegree = zone.outputPercent.map((duty, w) =>
    isUsable(zone, w, roomDegC) ? duty / (zone.readingDegC[w]! - roomDegC) : NaN,
  );
  const centre = median(perDegree);
  const spread = robustSd(perDegree);
  return spread > 0 ? perDegree.map((value) => (value - centre) / spread) : null;
}

function buildRows(
  own: ZoneWindows,
  peers: readonly Float64Array[],
  usable: readonly number[],
  roomDegC: number,
  timeMs: Float64Array,
  more: readonly Float64Array[],
): DutyRows {
  const pick = (of: (w: number) => number) => new Float64Array(usable.length).map((_, row) => of(usable[row]!));
  const span = pick((w) => own.readingDegC[w]! - roomDegC);
  const spanDegC = median(span);
  const dutyPercent = pick((w) => (own.outputPercent[w]! * spanDegC) / (own.readingDegC[w]! - roomDegC));
  const columns: Float64Array[] = [pick(() => 1), pick((w) => usualOr(own.rateDegCPerHour[w]!, 0))];
  const level = pick((w) => usualOr(own.setpointDegC[w]!, own.readingDegC[w]!) - roomDegC - spanDegC);
  if (rangeOf(level) >= LEAST_SETPOINT_RANGE_DEG_C && !Number.isNaN(own.setpointDegC[usable[0]!]!)) columns.push(level);
  const running = pick((w) => own.runningShare[w]!);
  if (running.every(Number.isFinite) && sdOf(running) >= LEAST_RUNNING_SD) columns.push(running);
  for (const peer of peers) columns.push(peerColumn(peer, peers, usable));
  columns.push(...more);
  const ridge = columns.map((column, k) => (k === 0 ? 0 : Math.sqrt(RIDGE_SHARE * usable.length) * sdOf(column)));
  const duty = {
    timeMs,
    dutyPercent,
    percentPerDegC: median(dutyPercent) / spanDegC,
    spanDegC,
    peerCount: peers.length,
    leastErrorDegC: (LEAST_ERROR_PERCENT / median(dutyPercent)) * spanDegC,
  };
  return { duty, columns, ridge };
}

/** Where the peer itself is not known, the median of the others stands in for it. */
function peerColumn(peer: Float64Array, peers: readonly Float64Array[], usable: readonly number[]): Float64Array {
  const column = placesOf(peer, usable);
  for (let row = 0; row < column.length; row++)
    if (Number.isNaN(column[row]!)) column[row] = medianAt(peers, usable[row]!);
  return column;
}

function placesOf(values: Float64Array, places: readonly number[]): Float64Array {
  const picked = new Float64Array(places.length);
  for (let row = 0; row < picked.length; row++) picked[row] = values[places[row]!]!;
  return picked;
}

const medianAt = (peers: readonly Float64Array[], w: number) => median(peers.map((peer) => peer[w]!));

/** By zone index; each zone is a neighbour of many. */
const disturbedWindowsOf = oncePer((evidence: Evidence): readonly Float64Array[] =>
  evidence.zones.map(({ index }) => disturbedWindows(evidence, index)),
);

/**
 * 1 where a neighbour is not itself: not settled for hours while this zone is, or with a reading that stands still, so
 * that its loop no longer holds it. Heat flows between neighbours, so a zone that runs away beside this one, or stays
 * cold, changes this one's duty.
 */
function disturbedWindows(evidence: Evidence, index: number): Float64Array {
  const { zones, startMs, windowMs } = windowsOf(evidence);
  const { state } = zones[index]!;
  const stuck = stuckStretchesOf(evidence)[index]!.filter(({ verdict }) => verdict === 'channel');
  const disturbed = new Float64Array(state.length);
  const isAway = (w: number) => state[w] !== undefined && state[w] !== zoneState.settled;
  for (let w = 0; w < state.length; w++) {
    const middleMs = startMs + (w + 0.5) * windowMs;
    if (stuck.some((run) => middleMs >= run.startMs && middleMs <= run.endMs)) disturbed[w] = 1;
    if (!isAway(w)) continue;
    let run = 1;
    while (run < DISTURBED_WINDOWS && isAway(w - run)) run++;
    for (let ahead = 1; run < DISTURBED_WINDOWS && isAway(w + ahead); ahead++) run++;
    if (run >= DISTURBED_WINDOWS) disturbed[w] = 1;
  }
  return disturbed;
}

function neighbourColumns(neighbours: readonly Float64Array[], usable: readonly number[]): Float64Array[] {
  return neighbours
    .map((disturbed) => placesOf(disturbed, usable))
    .filter((column) => column.includes(1) && column.includes(0));
}

/** Room temperature as the soaks tell it, and one wave a day for what it does between them. */
function roomColumns(evidence: Evidence, timeMs: Float64Array): Float64Array[] {
  const wave = (of: (angle: number) => number) => Float64Array.from(timeMs, (at) => of((2 * Math.PI * at) / DAY_MS));
  const columns: Float64Array[] = [wave(Math.sin), wave(Math.cos)];
  const room = roomSeriesOf(evidence);
  if (room.timeMs.length > 0) columns.push(Float64Array.from(timeMs, (at) => interpolate(room.timeMs, room.degC, at)));
  return columns.filter((column) => sdOf(column) > 0);
}

function interpolate(x: Float64Array, y: Float64Array, at: number): number {
  let i = 0;
  while (i < x.length && x[i]! <= at) i++;
  if (i === 0) return y[0]!;
  if (i === x.length) return y[i - 1]!;
  return y[i - 1]! + ((y[i]! - y[i - 1]!) * (at - x[i - 1]!)) / (x[i]! - x[i - 1]!);
}

function rangeOf(values: Float64Array): number {
  return (
    values.reduce((most, v) => Math.max(most, v), -Infinity) - values.reduce((least, v) => Math.min(least, v), Infinity)
  );
}

function sdOf(values: Float64Array): number {
  return populationSd(momentsOf(values));
}
