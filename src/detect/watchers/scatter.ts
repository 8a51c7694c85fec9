import type { DetectorMeta, Episode } from '../../model/detector.js';
import { HOUR_MS } from '../../model/time-units.js';
import { SECOND_DIFFERENCE_FACTOR } from '../../maths/spread.js';
import { CappedList, withLeftOut } from '../shared/basics/capped-list.js';
import { binCentre, binOf, BIN_COUNT } from '../shared/blocks/size-bins.js';
import { holeMsOf, resolutionDegCOf, samplingMsOf } from '../shared/basics/sampling.js';
import { windowWatcher } from '../shared/blocks/window-watcher.js';

export interface ScatterSettings {
  /** Readings further from set point than this are on the move (own choice). */
  readonly settledWithinDegC: number;
  /** Differences below which an hour says nothing (own choice). */
  readonly smallestCount: number;
}

/** A slow log needs a longer stretch for the same number of differences. */
const SAMPLES_PER_STRETCH = 30;
/** Share of the largest differences left out: spikes and steps are counted by others. */
const LEFT_OUT_SHARE = 0.1;
/** RMS of a standard normal without its outer 10 %: √(1 − 2·1.645·φ(1.645)/0.9), by definition. */
const TRIMMED_RMS = 0.78945;
/**
 * Of a faster log one difference in so long is looked at: five hundred an hour tell its noise to some 3 %. No multiple of
 * 2, 5 or 10 s, at which inputs are read (common practice), so that it is not always the same value held that is met.
 */
const LOOK_EVERY_MS = 7000;

const meta: DetectorMeta<ScatterSettings> = {
  id: 'scatter',
  sees: 'how much a settled reading scatters, hour by hour',
  needs: ['reading'],
  source: 'Noise from second differences (variance 6σ²), largest tenth left out; common practice.',
  defaults: { settledWithinDegC: 10, smallestCount: 20 },
};

/** One clock hour (longer for slow logs) of second differences, sorted into size bins. */
interface Stretch {
  index: number;
  firstMs: number;
  lastMs: number;
  count: number;
  readonly bins: Uint32Array;
}

interface Hour {
  firstMs: number;
  lastMs: number;
  count: number;
  noiseDegC: number;
}

interface Found {
  readonly zone: number;
  readonly settings: ScatterSettings;
  readonly unitDegC: number;
  readonly samplingMs: number;
  readonly holeMs: number;
  readonly stretchMs: number;
  /** Kept apart: an earlier piece of the log may hold its beginning. */
  head: Stretch | null;
  open: Stretch | null;
  hours: CappedList<Hour>;
}

/**
 * One episode per hour with the noise of the reading. Second differences leave heat-up and slow hunting out; readings
 * away from the set point are skipped where it is logged.
 */
export const scatter = windowWatcher<Found, ScatterSettings>({
  meta,
  scanMemory: () => 0,
  learnMemory: () => 2,
  start: (zone, settings) => ({
    zone: zone.index,
    settings,
    unitDegC: Math.min(0.1, resolutionDegCOf(zone)),
    samplingMs: samplingMsOf(zone),
    holeMs: holeMsOf(zone),
    stretchMs: Math.max(HOUR_MS, SAMPLES_PER_STRETCH * samplingMsOf(zone)),
    head: null,
    open: null,
    hours: new CappedList(),
  }),
  learn(found, { timeMs, degC, setpointDegC, from, to }) {
    const { unitDegC, stretchMs, holeMs } = found;
    const withinDegC = found.settings.settledWithinDegC;
    let endMs = found.open ? (found.open.index + 1) * stretchMs : -Infinity;
    let bins = found.open?.bins ?? noBins;
    // Numbers that change with every sample are kept out of the stretch until it ends.
    let count = 0;
    let lastMs = NaN;
    const first = Math.max(2, from);
    let dueMs = first < to ? nextLookMs(timeMs[first - 1]!) : NaN;
    for (let i = first; i < to; i++) {
      const nowMs = timeMs[i]!;
      if (nowMs < dueMs) continue;
      dueMs = nextLookMs(nowMs);
      const second = degC[i]! - 2 * degC[i - 1]! + degC[i - 2]!;
      if (second !== second || Math.abs(degC[i]! - setpointDegC[i]!) > withinDegC) continue;
      if (nowMs - timeMs[i - 2]! > holeMs) continue;
      if (nowMs >= endMs) {
        addTo(found.open, count, lastMs);
        found.open = nextStretch(found, nowMs);
        bins = found.open.bins;
        count = 0;
        endMs = (found.open.index + 1) * stretchMs;
      }
      bins[binOf(Math.abs(second), unitDegC)]!++;
      count++;
      lastMs = nowMs;
    }
    addTo(found.open, count, lastMs);
  },
  scan: () => undefined,
  isQuiet: () => true,
  copy: (found) => ({
    ...found,
    hours: found.hours.copy(),
    open: found.open && { ...found.open, bins: found.open.bins.slice() },
  }),
  merge(earlier, later) {
    if (later.head) {
      continueStretch(earlier, later.head);
      closeStretch(earlier, earlier.open!); // the later piece went on to another hour
      earlier.open = null;
    }
    earlier.hours.pushAll(later.hours);
    if (later.open) continueStretch(earlier, later.open);
    return earlier;
  },
  finish(found) {
    const hours = new CappedList<Hour>();
    if (found.head) pushHour(hours, found, found.head);
    hours.pushAll(found.hours);
    if (found.open) pushHour(hours, found, found.open);
    return withLeftOut(
      hours.items.map((hour) => episodeOf(found.zone, hour)),
      hours.leftOutCount,
    );
  },
});

/** Looks are due on a grid of the clock, so that it does not matter where a piece of the log begins. */
function nextLookMs(nowMs: number): number {
  return (Math.floor(nowMs / LOOK_EVERY_MS) + 1) * LOOK_EVERY_MS;
}

const noBins = new Uint32Array(0);

function addTo(stretch: Stretch | null, count: number, lastMs: number): void {
  if (stretch === null || count === 0) return;
  stretch.count += count;
  stretch.lastMs = lastMs;
}

function nextStretch(found: Found, atMs: number): Stretch {
  if (found.open) closeStretch(found, found.open);
  const index = Math.floor(atMs / found.stretchMs);
  return { index, firstMs: atMs, lastMs: atMs, count: 0, bins: new Uint32Array(BIN_COUNT) };
}

function closeStretch(found: Found, stretch: Stretch): void {
  if (found.head === null) found.head = stretch;
  else pushHour(found.hours, found, stretch);
}

function continueStretch(found: Found, stretch: Stretch): void {
  const open = found.open;
  if (open === null || open.index !== stretch.index) {
    if (open !== null) closeStretch(found, open);
    found.open = { ...stretch, bins: stretch.bins.slice() };
    return;
  }
  open.lastMs = stretch.lastMs;
  open.count += stretch.count;
  for (let bin = 0; bin < BIN_COUNT; bin++) open.bins[bin]! += stretch.bins[bin]!;
}

function pushHour(hours: CappedList<Hour>, found: Found, stretch: Stretch): void {
  if (stretch.count < found.settings.smallestCount) return;
  const { firstMs, lastMs, count } = stretch;
  hours.push({ firstMs, lastMs, count, noiseDegC: noiseOf(stretch, found.unitDegC) });
}

/** Standard deviation of the noise from the binned second differences. */
function noiseOf({ bins, count }: Stretch, unitDegC: number): number {
  let left = Math.floor(count * (1 - LEFT_OUT_SHARE));
  const kept = left;
  let squares = 0;
  for (let bin = 0; bin < BIN_COUNT && left > 0; bin++) {
    const used = Math.min(left, bins[bin]!);
    squares += used * binCentre(bin, unitDegC) ** 2;
    left -= used;
  }
  return Math.sqrt(squares / kept) / (TRIMMED_RMS * SECOND_DIFFERENCE_FACTOR);
}

function episodeOf(zone: number, hour: Hour): Episode {
  const facts = { noiseDegC: hour.noiseDegC, sampleCount: hour.count };
  return { kind: meta.id, zone, startMs: hour.firstMs, endMs: hour.lastMs, facts };
}
