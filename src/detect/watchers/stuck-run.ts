import type { DetectorMeta, Episode, Watcher } from '../../model/detector.js';
import { readingState, type SampleBlock } from '../../model/sample-block.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS } from '../../model/time-units.js';
import { CappedList, finiteFacts, withLeftOut } from '../shared/basics/capped-list.js';
import { holeMsOf, resolutionDegCOf } from '../shared/basics/sampling.js';
import { durationBin, noDurations, usualLongS } from '../shared/blocks/duration-bins.js';

export interface StuckRunSettings {
  /** Shorter runs are listed only when a jump led to them (own choice: a settled zone in whole degrees rests longer). */
  readonly smallestMinutes: number;
  readonly smallestSampleCount: number;
  /** A jump of this size into the run marks a code, so a short run is listed too (own choice: above any noise). */
  readonly smallestJumpDegC: number;
  readonly smallestCodeSampleCount: number;
}

const meta: DetectorMeta<StuckRunSettings> = {
  id: 'stuck-run',
  sees: 'exactly the same reading again and again, and what moved meanwhile',
  needs: ['reading'],
  source: 'Common practice; a live input shows at least its last digit moving.',
  defaults: { smallestMinutes: 20, smallestSampleCount: 5, smallestJumpDegC: 5, smallestCodeSampleCount: 3 },
};

interface Range {
  min: number;
  max: number;
}

interface Run {
  readonly valueDegC: number;
  readonly startMs: number;
  endMs: number;
  sampleCount: number;
  beforeDegC: number;
  afterDegC: number;
  readonly output: Range;
  readonly setpoint: Range;
  readonly running: Range;
}

export interface StuckRunState {
  readonly zone: number;
  readonly settings: StuckRunSettings;
  readonly jumpDegC: number;
  readonly holeMs: number;
  runs: CappedList<Run>;
  /** Finished runs by duration, as `durationBin` counts them. */
  readonly usual: Uint32Array;
  /** The first run is kept apart: an earlier piece of the log may hold its beginning. */
  head: Run | null;
  open: Run | null;
  firstMs: number;
  lastMs: number;
  /** NaN when the last sample was no good reading. */
  lastDegC: number;
}

/** Lists long runs of one exact reading, and shorter ones that a jump led to. */
export const stuckRun: Watcher<StuckRunState, StuckRunSettings> = {
  meta,
  start: (zone: Zone, settings) => ({
    zone: zone.index,
    settings,
    jumpDegC: Math.max(settings.smallestJumpDegC, 4 * resolutionDegCOf(zone)),
    holeMs: holeMsOf(zone),
    runs: new CappedList(),
    usual: noDurations(),
    head: null,
    open: null,
    firstMs: NaN,
    lastMs: NaN,
    lastDegC: NaN,
  }),
  take(state, block) {
    const { length, timeMs, readingDegC, state: states } = block;
    if (length === 0) return;
    if (Number.isNaN(state.firstMs)) state.firstMs = timeMs[0]!;
    for (let i = 0; i < length;) {
      if (states[i] !== readingState.good) {
        closeOpen(state, NaN);
        state.lastDegC = NaN;
        state.lastMs = timeMs[i++]!;
        continue;
      }
      const single = state.head !== null && state.open === null && i > 0 ? endOfSingles(block, i) : i;
      if (single > i) {
        takeSingles(state, block, i, single);
        i = single;
        continue;
      }
      const to = endOfRun(block, i, state.holeMs);
      const isShort = to - i < state.settings.smallestCodeSampleCount;
      if (isShort && i > 0 && to < length && state.head !== null) skipRun(state, block, i, to);
      else takeRun(state, block, i, to);
      state.lastMs = timeMs[to - 1]!;
      state.lastDegC = readingDegC[i]!;
      i = to;
    }
  },
  merge(earlier, later) {
    if (Number.isNaN(later.firstMs)) return earlier;
    if (Number.isNaN(earlier.firstMs)) return later;
    const merged: StuckRunState = {
      ...earlier,
      runs: new CappedList(),
      usual: earlier.usual.slice(),
      open: earlier.open && { ...earlier.open },
      lastMs: later.lastMs,
      lastDegC: later.lastDegC,
    };
    merged.runs.pushAll(earlier.runs);
    const first = later.head ?? later.open;
    if (first?.startMs === later.firstMs) continueRun(merged, first, earlier);
    else {
      closeOpen(merged, NaN);
      if (first) merged.open = { ...first };
    }
    if (later.head) {
      closeRun(merged, merged.open!); // its `after` is known already
      merged.open = later.open && { ...later.open };
      merged.runs.pushAll(later.runs);
    }
    for (let bin = 0; bin < merged.usual.length; bin++) merged.usual[bin]! += later.usual[bin]!;
    return merged;
  },
  finish(state) {
    const usual = state.usual.slice();
    const runs = new CappedList<Run>();
    const count = (run: Run | null) => {
      if (run && isListed(state, run)) runs.push(run);
      if (run) usual[durationBin(run.endMs - run.startMs)]!++;
    };
    count(state.head);
    runs.pushAll(state.runs);
    count(state.open);
    const usualS = usualLongS(usual);
    return withLeftOut(
      runs.items.map((run) => episodeOf(state.zone, run, usualS)),
      runs.leftOutCount,
    );
  },
};

/**
 * Place after the good samples from `from` on that each differ from the next one: the usual case of a live input. The
 * last sample of a block is left for `endOfRun`, since the next block may repeat it.
 */
function endOfSingles({ length, readingDegC, state }: SampleBlock, from: number): number {
  let to = from;
  const last = length - 1;
  while (to < last && readingDegC[to] !== readingDegC[to + 1] && state[to] === readingState.good) to++;
  return to;
}

function takeSingles(state: StuckRunState, { timeMs, readingDegC }: SampleBlock, from: number, to: number): void {
  state.usual[durationBin(0)]! += to - from;
  state.lastMs = timeMs[to - 1]!;
  state.lastDegC = readingDegC[to - 1]!;
}

/** Place after the last sample that repeats the one at `from` without a hole. */
function endOfRun({ length, timeMs, readingDegC, state }: SampleBlock, from: number, holeMs: number): number {
  const value = readingDegC[from];
  let to = from + 1;
  while (
    to < length &&
    readingDegC[to] === value &&
    state[to] === readingState.good &&
    timeMs[to]! - timeMs[to - 1]! <= holeMs
  ) {
    to++;
  }
  return to;
}

/** Nearly all runs of a live input are short and lie inside a block: they are only counted. */
function skipRun(state: StuckRunState, { timeMs, readingDegC }: SampleBlock, from: number, to: number): void {
  const isHole = timeMs[from]! - state.lastMs > state.holeMs;
  closeOpen(state, isHole ? NaN : readingDegC[from]!);
  state.usual[durationBin(timeMs[to - 1]! - timeMs[from]!)]!++;
}

function takeRun(state: StuckRunState, block: SampleBlock, from: number, to: number): void {
  const startMs = block.timeMs[from]!;
  const value = block.readingDegC[from]!;
  const open = state.open;
  const isHole = startMs - state.lastMs > state.holeMs;
  if (open && !isHole && open.valueDegC === value) {
    extendRun(open, block, from, to);
    return;
  }
  closeOpen(state, isHole ? NaN : value);
  state.open = emptyRun(value, startMs, isHole ? NaN : state.lastDegC);
  extendRun(state.open, block, from, to);
}

function emptyRun(valueDegC: number, startMs: number, beforeDegC: number): Run {
  return {
    valueDegC,
    startMs,
    endMs: startMs,
    sampleCount: 0,
    beforeDegC,
    afterDegC: NaN,
    output: { min: Infinity, max: -Infinity },
    setpoint: { min: Infinity, max: -Infinity },
    running: { min: Infinity, max: -Infinity },
  };
}

function extendRun(run: Run, block: SampleBlock, from: number, to: number): void {
  run.endMs = block.timeMs[to - 1]!;
  run.sampleCount += to - from;
  widen(run.output, block.outputPercent, from, to);
  widen(run.setpoint, block.setpointDegC, from, to);
  widen(run.running, block.running, from, to);
}

function widen(range: Range, values: Float64Array, from: number, to: number): void {
  for (let i = from; i < to; i++) {
    const value = values[i]!;
    if (value < range.min) range.min = value; // NaN fails both
    if (value > range.max) range.max = value;
  }
}

function closeOpen(state: StuckRunState, afterDegC: number): void {
  if (!state.open) return;
  state.open.afterDegC = afterDegC;
  closeRun(state, state.open);
  state.open = null;
}

function closeRun(state: StuckRunState, run: Run): void {
  if (state.head === null) {
    state.head = run;
    return;
  }
  state.usual[durationBin(run.endMs - run.startMs)]!++;
  if (isListed(state, run)) state.runs.push(run);
}

function continueRun(state: StuckRunState, first: Run, earlier: StuckRunState): void {
  const open = state.open;
  const isHole = first.startMs - earlier.lastMs > state.holeMs;
  if (!open || isHole || open.valueDegC !== first.valueDegC) {
    closeOpen(state, isHole ? NaN : first.valueDegC);
    state.open = { ...first, beforeDegC: isHole ? NaN : earlier.lastDegC };
    return;
  }
  state.open = {
    ...open,
    endMs: first.endMs,
    sampleCount: open.sampleCount + first.sampleCount,
    afterDegC: first.afterDegC,
    output: joinRanges(open.output, first.output),
    setpoint: joinRanges(open.setpoint, first.setpoint),
    running: joinRanges(open.running, first.running),
  };
}

function joinRanges(a: Range, b: Range): Range {
  return { min: Math.min(a.min, b.min), max: Math.max(a.max, b.max) };
}

function isListed({ settings, jumpDegC }: StuckRunState, run: Run): boolean {
  const minutes = (run.endMs - run.startMs) / MINUTE_MS;
  if (minutes >= settings.smallestMinutes && run.sampleCount >= settings.smallestSampleCount) return true;
  const isJumpedTo = Math.abs(run.valueDegC - run.beforeDegC) >= jumpDegC;
  return isJumpedTo && run.sampleCount >= settings.smallestCodeSampleCount;
}

function episodeOf(zone: number, run: Run, usualS: number): Episode {
  return {
    kind: meta.id,
    zone,
    startMs: run.startMs,
    endMs: run.endMs,
    facts: finiteFacts({
      valueDegC: run.valueDegC,
      sampleCount: run.sampleCount,
      durationMinutes: (run.endMs - run.startMs) / MINUTE_MS,
      usualLongMinutes: usualS / 60,
      jumpInDegC: run.valueDegC - run.beforeDegC,
      jumpOutDegC: run.afterDegC - run.valueDegC,
      outputRangePercent: run.output.max - run.output.min,
      outputLowPercent: run.output.min,
      outputHighPercent: run.output.max,
      setpointRangeDegC: run.setpoint.max - run.setpoint.min,
      runningChangeCount: run.running.max > run.running.min ? 1 : 0,
    }),
  };
}
