import type { DetectorMeta, Episode, Watcher } from '../../model/detector.js';
import { readingState, type SampleBlock } from '../../model/sample-block.js';
import { CappedList, finiteFacts, withLeftOut } from '../shared/basics/capped-list.js';

export type OpenRunsSettings = Record<string, never>;

/** Neighbouring samples of one and the same state that is not good. */
interface Run {
  readonly state: number;
  readonly startMs: number;
  endMs: number;
  sampleCount: number;
  /** First number in the cells; NaN for words and blanks. */
  readonly valueDegC: number;
  /** Samples that hold exactly that number. */
  sameCount: number;
  runningSum: number;
  runningCount: number;
  /** Samples in which the zone's set point or output was logged. */
  controlCount: number;
  /** The good reading right before and right after; NaN where the neighbour is no good reading either. */
  beforeMs: number;
  beforeDegC: number;
  afterMs: number;
  afterDegC: number;
  /** Last good reading before and output at it, however long ago. */
  lastGoodMs: number;
  lastGoodDegC: number;
  outputBeforePercent: number;
}

interface LastSample {
  timeMs: number;
  degC: number;
  isGood: boolean;
}

export interface OpenRunsState {
  readonly zone: number;
  runs: CappedList<Run>;
  open: Run | null;
  /** First sample of this piece of the log, for the run that may go on across its start. */
  first: LastSample | null;
  last: LastSample | null;
  lastGoodMs: number;
  lastGoodDegC: number;
  lastGoodOutputPercent: number;
}

const meta: DetectorMeta<OpenRunsSettings> = {
  id: 'open-runs',
  sees: 'runs of samples that hold no temperature: full scale, a word, bad quality, nothing',
  needs: ['reading'],
  source: 'Common practice.',
  defaults: {},
};

/** Lists every run of samples of one state that is not good, with the good readings around it. */
export const openRuns: Watcher<OpenRunsState, OpenRunsSettings> = {
  meta,
  start: (zone) => ({
    zone: zone.index,
    runs: new CappedList(),
    open: null,
    first: null,
    last: null,
    lastGoodMs: NaN,
    lastGoodDegC: NaN,
    lastGoodOutputPercent: NaN,
  }),
  take(state, block, { isAllGood }) {
    const { length } = block;
    if (length === 0) return;
    state.first ??= sampleAt(block, 0);
    if (isAllGood) takeGood(state, block, 0, length);
    else takeRuns(state, block);
    state.last = sampleAt(block, length - 1);
  },
  merge(earlier, later) {
    if (later.first === null) return earlier;
    if (earlier.first === null) return later;
    const merged: OpenRunsState = { ...later, first: earlier.first, runs: earlier.runs.copy() };
    const bridged = bridgeSeam(earlier, later, merged);
    for (const run of later.runs.items) if (run !== bridged) merged.runs.push(withLastGood(run, earlier));
    merged.runs.leftOutCount += later.runs.leftOutCount;
    if (later.open && later.open !== bridged) merged.open = withLastGood(later.open, earlier);
    if (Number.isNaN(later.lastGoodMs)) Object.assign(merged, lastGoodOf(earlier));
    return merged;
  },
  finish({ zone, runs, open }) {
    const all = runs.copy();
    if (open) all.push(open);
    return withLeftOut(
      all.items.map((run) => episodeOf(zone, run)),
      all.leftOutCount,
    );
  },
};

function sampleAt({ timeMs, readingDegC, state }: SampleBlock, i: number): LastSample {
  return { timeMs: timeMs[i]!, degC: readingDegC[i]!, isGood: state[i] === readingState.good };
}

function takeRuns(state: OpenRunsState, block: SampleBlock): void {
  const { length, state: states } = block;
  for (let i = 0; i < length;) {
    const kind = states[i]!;
    let to = i + 1;
    while (to < length && states[to] === kind) to++;
    if (kind === readingState.good) takeGood(state, block, i, to);
    else takeBad(state, block, i, to);
    i = to;
  }
}

function takeGood(
  state: OpenRunsState,
  { timeMs, readingDegC, outputPercent }: SampleBlock,
  i: number,
  to: number,
): void {
  if (state.open) {
    state.open.afterMs = timeMs[i]!;
    state.open.afterDegC = readingDegC[i]!;
    state.runs.push(state.open);
    state.open = null;
  }
  state.lastGoodMs = timeMs[to - 1]!;
  state.lastGoodDegC = readingDegC[to - 1]!;
  state.lastGoodOutputPercent = outputPercent[to - 1]!;
}

function takeBad(state: OpenRunsState, block: SampleBlock, i: number, to: number): void {
  const { timeMs, readingDegC, running, setpointDegC, outputPercent } = block;
  if (state.open && state.open.state !== block.state[i]) {
    state.runs.push(state.open);
    state.open = null;
  }
  const before = i > 0 ? sampleAt(block, i - 1) : state.last;
  state.open ??= newRun(state, block, i, before?.isGood ? before : null);
  const run = state.open;
  for (let j = i; j < to; j++) {
    if (readingDegC[j] === run.valueDegC) run.sameCount++;
    if (running[j] === running[j]) {
      run.runningSum += running[j]!;
      run.runningCount++;
    }
    if (!Number.isNaN(setpointDegC[j]!) || !Number.isNaN(outputPercent[j]!)) run.controlCount++;
  }
  run.sampleCount += to - i;
  run.endMs = timeMs[to - 1]!;
}

function newRun(state: OpenRunsState, block: SampleBlock, i: number, before: LastSample | null): Run {
  return {
    state: block.state[i]!,
    startMs: block.timeMs[i]!,
    endMs: block.timeMs[i]!,
    sampleCount: 0,
    valueDegC: block.readingDegC[i]!,
    sameCount: 0,
    runningSum: 0,
    runningCount: 0,
    controlCount: 0,
    beforeMs: before?.timeMs ?? NaN,
    beforeDegC: before?.degC ?? NaN,
    afterMs: NaN,
    afterDegC: NaN,
    lastGoodMs: state.lastGoodMs,
    lastGoodDegC: state.lastGoodDegC,
    outputBeforePercent: state.lastGoodOutputPercent,
  };
}

/** Joins or closes what lies on the seam; returns the run of `later` that is used up by it. */
function bridgeSeam(earlier: OpenRunsState, later: OpenRunsState, merged: OpenRunsState): Run | null {
  const first = later.runs.items[0] ?? later.open;
  const isBadFirst = first !== null && first.startMs === later.first!.timeMs;
  const open = earlier.open;
  if (!isBadFirst) {
    if (open) merged.runs.push({ ...open, afterMs: later.first!.timeMs, afterDegC: later.first!.degC });
    return null;
  }
  if (open && open.state !== first.state) merged.runs.push(open);
  const last = earlier.last!;
  const joined =
    open && open.state === first.state
      ? joinRuns(open, first)
      : withLastGood(last.isGood ? { ...first, beforeMs: last.timeMs, beforeDegC: last.degC } : first, earlier);
  if (first === later.open) merged.open = joined;
  else merged.runs.push(joined);
  return first;
}

function joinRuns(earlier: Run, later: Run): Run {
  const isSame = later.valueDegC === earlier.valueDegC;
  return {
    ...earlier,
    endMs: later.endMs,
    sampleCount: earlier.sampleCount + later.sampleCount,
    sameCount: earlier.sameCount + (isSame ? later.sameCount : 0),
    runningSum: earlier.runningSum + later.runningSum,
    runningCount: earlier.runningCount + later.runningCount,
    controlCount: earlier.controlCount + later.controlCount,
    afterMs: later.afterMs,
    afterDegC: later.afterDegC,
  };
}

/** A run that knows of no good reading before it takes the last one of the earlier piece. */
function withLastGood(run: Run, earlier: OpenRunsState): Run {
  if (!Number.isNaN(run.lastGoodMs)) return run;
  return {
    ...run,
    lastGoodMs: earlier.lastGoodMs,
    lastGoodDegC: earlier.lastGoodDegC,
    outputBeforePercent: earlier.lastGoodOutputPercent,
  };
}

function lastGoodOf({ lastGoodMs, lastGoodDegC, lastGoodOutputPercent }: OpenRunsState): Partial<OpenRunsState> {
  return { lastGoodMs, lastGoodDegC, lastGoodOutputPercent };
}

function episodeOf(zone: number, run: Run): Episode {
  return {
    kind: meta.id,
    zone,
    startMs: run.startMs,
    endMs: run.endMs,
    facts: finiteFacts({
      stateCode: run.state,
      sampleCount: run.sampleCount,
      valueDegC: run.valueDegC,
      sameShare: Number.isNaN(run.valueDegC) ? NaN : run.sameCount / run.sampleCount,
      runningShare: run.runningCount > 0 ? run.runningSum / run.runningCount : NaN,
      controlShare: run.controlCount / run.sampleCount,
      beforeMs: run.beforeMs,
      beforeDegC: run.beforeDegC,
      afterMs: run.afterMs,
      afterDegC: run.afterDegC,
      lastGoodMs: run.lastGoodMs,
      lastGoodDegC: run.lastGoodDegC,
      outputBeforePercent: run.outputBeforePercent,
    }),
  };
}
