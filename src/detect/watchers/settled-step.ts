import type { DetectorMeta, Episode } from '../../model/detector.js';
import { finiteFacts, withLeftOut } from '../shared/basics/capped-list.js';
import { learnedRates, type HeatingRates } from '../shared/blocks/heating-limit.js';
import { holeMsOf, resolutionDegCOf } from '../shared/basics/sampling.js';
import type { Strip } from '../shared/blocks/strip.js';
import { jumpRules, noJumps, type NotedJumps } from '../shared/blocks/noted-jumps.js';
import { windowWatcher } from '../shared/blocks/window-watcher.js';

export interface SettledStepSettings {
  /** Smaller steps drown in noise; on a Pt100 about a quarter of an ohm (IEC 60751, 2.6 °C per Ω). */
  readonly smallestDegC: number;
  /** Nor may a step be a few steps of a coarse log (own choice). */
  readonly smallestSteps: number;
  /** The step is at least this many times the range of the readings before it (own choice: about 8 noise SDs). */
  readonly timesCalmRange: number;
  /** A step whose later readings keep less than this share of it is a spike (own choice). */
  readonly smallestKeptShare: number;
  /** A step of which heat explains this share is heat (own choice). */
  readonly largestExplainedShare: number;
}

/** Readings that must be calm before the step; their range is then near 2.85 noise SDs (normal range, n = 8). */
const CALM_SAMPLES = 8;
/** Readings from the step on: the step shows in the first one, or in all where an input filter spreads it. */
const AFTER_SAMPLES = 3;
/** Jumps looked at together: few enough that noise is most of what a piece holds, even where the zone moves (own choice). */
const PIECE_SAMPLES = 256;
/**
 * Behind its first sample a step is complete within this time: three time constants of an input filter of five seconds
 * (common practice).
 */
const FILTER_MS = 15_000;
/** A change of the running state so many samples before the step may have made it through the load (own choice). */
const LOAD_SAMPLES = 3;

const meta: DetectorMeta<SettledStepSettings> = {
  id: 'settled-step',
  sees: 'a calm reading that jumps to another level between two samples',
  needs: ['reading'],
  source: 'Common practice; the loop pulls a false step back to set point, so only its first samples show its size.',
  defaults: {
    smallestDegC: 0.6,
    smallestSteps: 3,
    timesCalmRange: 3,
    smallestKeptShare: 0.3,
    largestExplainedShare: 0.7,
  },
};

interface Step {
  startMs: number;
  endMs: number;
  stepDegC: number;
  beforeDegC: number;
  calmRangeDegC: number;
  keptDegC: number;
  setpointDegC: number;
  outputBeforePercent: number;
  /** Furthest from the calm output, in the direction that would explain the step, just before and at the jump. */
  outputTowardsPercent: number;
  outputAfterPercent: number;
  running: number;
}

interface Found extends NotedJumps<Step> {
  readonly zone: number;
  readonly settings: SettledStepSettings;
  readonly smallestDegC: number;
  readonly holeMs: number;
}

/** Lists jumps out of a calm stretch that keep their level for some samples and that the heater did not make. */
export const settledStep = windowWatcher<Found, SettledStepSettings>({
  meta,
  scanMemory: () => CALM_SAMPLES + AFTER_SAMPLES - 1,
  ...jumpRules<Step, Found>(),
  start: (zone, settings) => ({
    zone: zone.index,
    settings,
    smallestDegC: Math.max(settings.smallestDegC, settings.smallestSteps * resolutionDegCOf(zone)),
    holeMs: holeMsOf(zone),
    ...noJumps<Step>(zone),
  }),
  isQuiet: ({ smallestDegC }, { largestStepDegC }) => largestStepDegC < firstStepOf(smallestDegC),
  scan(found, strip) {
    const last = strip.to - AFTER_SAMPLES;
    for (let jump = Math.max(CALM_SAMPLES, strip.from - AFTER_SAMPLES + 1); jump <= last; jump += PIECE_SAMPLES)
      scanPiece(found, strip, jump, Math.min(last + 1, jump + PIECE_SAMPLES));
  },
  finish({ zone, settings, limit, jumps }) {
    const rates = learnedRates(limit);
    const kept = jumps.items.filter(
      (step) => !(explainedDegC(step, rates) >= settings.largestExplainedShare * Math.abs(step.stepDegC)),
    );
    return withLeftOut(
      kept.map((step) => episodeOf(zone, step, rates)),
      jumps.leftOutCount,
    );
  },
});

/** The first sample of a step shows at least half of it, unless an input filter is too slow for this watcher (own choice). */
const firstStepOf = (smallestDegC: number): number => smallestDegC / 2;

/**
 * Looks at jumps to places `from` … `to` − 1. Two neighbours that are too far apart for a calm stretch before any step
 * that the piece can hold rule out all jumps whose stretch has both, so in noise one look in seven places is enough.
 */
function scanPiece(found: Found, strip: Strip, from: number, to: number): void {
  const { degC } = strip;
  const { timesCalmRange } = found.settings;
  const largestStepDegC = rangeWithoutGaps(degC, from - 1, to + AFTER_SAMPLES - 1);
  let jump = from;
  while (jump < to) {
    let later = jump - 1;
    const calm = jump - CALM_SAMPLES;
    while (later > calm && !(Math.abs(degC[later]! - degC[later - 1]!) * timesCalmRange > largestStepDegC)) later--;
    if (later > calm) {
      jump = later + CALM_SAMPLES;
      continue;
    }
    if (mayBeStep(found, degC, jump)) noteStep(found, strip, jump);
    jump++;
  }
}

/** Quick looks that nearly no jump passes; NaN fails them or is caught by `noteStep`. */
function mayBeStep({ smallestDegC, settings }: Found, degC: Float64Array, jump: number): boolean {
  const before = degC[jump - 1]!;
  const firstStepDegC = Math.abs(degC[jump]! - before);
  if (!(firstStepDegC >= firstStepOf(smallestDegC))) return false;
  const lastStepDegC = Math.abs(degC[jump + AFTER_SAMPLES - 1]! - before);
  if (!(lastStepDegC >= settings.smallestKeptShare * smallestDegC)) return false;
  // Compared one by one: Math.max costs more here than all the rest (it has to mind NaN).
  const nextStepDegC = Math.abs(degC[jump + 1]! - before);
  let furthestDegC = firstStepDegC > lastStepDegC ? firstStepDegC : lastStepDegC;
  if (!(nextStepDegC <= furthestDegC)) furthestDegC = nextStepDegC;
  return !(furthestDegC < smallestDegC);
}

/** Largest less smallest of the values that are there; −Infinity when there are none. */
function rangeWithoutGaps(values: Float64Array, from: number, to: number): number {
  let min = Infinity;
  let max = -Infinity;
  for (let i = from; i < to; i++) {
    const value = values[i]!;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return max - min;
}

function noteStep(found: Found, strip: Strip, jump: number): void {
  const { timeMs, degC, setpointDegC, running } = strip;
  const calm = jump - CALM_SAMPLES;
  const end = jump + AFTER_SAMPLES - 1;
  const beforeDegC = degC[jump - 1]!;
  const sign = Math.sign(degC[jump]! - beforeDegC);
  let peak = jump;
  for (let i = jump + 1; i <= end && timeMs[i]! - timeMs[jump]! <= FILTER_MS; i++) {
    if (sign * degC[i]! > sign * degC[peak]!) peak = i;
  }
  const stepDegC = degC[peak]! - beforeDegC;
  // One sample later, for a quick loop has pulled the reading back in two.
  const keptDegC = degC[Math.min(peak + 1, end)]! - beforeDegC;
  const { smallestDegC, settings } = found;
  if (!(sign * stepDegC >= smallestDegC && sign * keptDegC >= settings.smallestKeptShare * sign * stepDegC)) return;
  const calmRangeDegC = rangeOf(degC, calm, jump);
  if (!(calmRangeDegC * settings.timesCalmRange <= sign * stepDegC)) return;
  const furthestDegC = sign * Math.max(sign * degC[jump]!, sign * degC[jump + 1]!, sign * degC[end]!) - beforeDegC;
  if (sign * furthestDegC > sign * stepDegC + calmRangeDegC) return; // goes on moving: heat, product, a door
  for (let i = calm + 1; i <= end; i++) if (timeMs[i]! - timeMs[i - 1]! > found.holeMs) return;
  if (rangeOf(setpointDegC, calm, end + 1) > 0) return;
  if (rangeOf(running, jump - LOAD_SAMPLES, end + 1) > 0) return; // product comes or goes
  found.jumps.push({
    startMs: timeMs[jump - 1]!,
    endMs: timeMs[peak]!,
    stepDegC,
    beforeDegC,
    calmRangeDegC,
    keptDegC,
    setpointDegC: setpointDegC[jump]!,
    ...outputsAround(strip, calm, jump, end, sign),
    running: running[jump]!,
  });
}

type Outputs = Pick<Step, 'outputBeforePercent' | 'outputTowardsPercent' | 'outputAfterPercent'>;

function outputsAround({ outputPercent }: Strip, calm: number, jump: number, end: number, sign: number): Outputs {
  let sum = 0;
  for (let i = calm; i < jump - 1; i++) sum += outputPercent[i]!;
  const at = outputPercent[jump]!;
  const before = outputPercent[jump - 1]!;
  return {
    outputBeforePercent: sum / (CALM_SAMPLES - 1),
    outputTowardsPercent: sign > 0 ? Math.max(before, at) : Math.min(before, at),
    outputAfterPercent: outputPercent[end]!,
  };
}

/** NaN when a value is not known. */
function rangeOf(values: Float64Array, from: number, to: number): number {
  let min = Infinity;
  let max = -Infinity;
  for (let i = from; i < to; i++) {
    const value = values[i]!;
    if (value !== value) return NaN;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return max - min;
}

/** What the change of output could have moved in that time, in the direction of the step; NaN when it is not logged. */
function explainedDegC(step: Step, rates: HeatingRates): number {
  const seconds = (step.endMs - step.startMs) / 1000;
  const changePercent = step.outputTowardsPercent - step.outputBeforePercent;
  if (step.stepDegC > 0) return (rates.heatingDegCPerS * seconds * Math.max(0, changePercent)) / 100;
  if (step.outputBeforePercent === 0) return 0;
  return (rates.coolingDegCPerS * seconds * Math.max(0, -changePercent)) / step.outputBeforePercent;
}

function episodeOf(zone: number, step: Step, rates: HeatingRates): Episode {
  const rate = step.stepDegC > 0 ? rates.heatingDegCPerS : rates.coolingDegCPerS;
  return {
    kind: meta.id,
    zone,
    startMs: step.startMs,
    endMs: step.endMs,
    facts: finiteFacts({
      stepDegC: step.stepDegC,
      beforeDegC: step.beforeDegC,
      calmRangeDegC: step.calmRangeDegC,
      keptDegC: step.keptDegC,
      setpointDegC: step.setpointDegC,
      explainedDegC: explainedDegC(step, rates),
      fullPowerDegC: (rate * (step.endMs - step.startMs)) / 1000,
      outputBeforePercent: step.outputBeforePercent,
      outputAfterPercent: step.outputAfterPercent,
      runningShare: step.running,
    }),
  };
}
