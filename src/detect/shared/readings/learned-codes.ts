import type { Episode, Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { quantile } from '../../../maths/quantile.js';
import { besideSpikes } from './beside-spikes.js';
import { oncePer } from '../basics/memo.js';
import { resolutionDegCOf, samplingMsOf } from '../basics/sampling.js';

/** One stay of a zone at a code. */
export interface CodeSpan {
  readonly startMs: number;
  readonly endMs: number;
  readonly sampleCount: number;
  /** NaN where a hole or a bad sample lies between. */
  readonly beforeDegC: number;
  readonly afterDegC: number;
}

/** An exact value that stands for something else than a temperature, learned from the log. */
export interface LearnedCode {
  readonly valueDegC: number;
  readonly spans: readonly CodeSpan[];
  /** Samples that hold exactly this value; those of the spans alone where the log is quicker than the digest. */
  readonly sampleCount: number;
  /** Other zones that show exactly the same code. */
  readonly otherZonesCount: number;
  /** Where it lies against the zone's own readings: `near` is within reach of real temperatures. */
  readonly side: 'above' | 'below' | 'near';
}

/** Stays that make an exact value a code: three short ones, or two of which at least one is long (own choice). */
const FEWEST_SPANS = 3;
const FEWEST_SPANS_WITH_LONG = 2;
const LONG_SAMPLE_COUNT = 20;
/** A code this far outside the usual readings is no temperature of the zone (own choice). */
const OUTSIDE_DEG_C = 40;
/** Share of jumps into the value among its stays; a settled value is mostly reached by creeping (own choice). */
const SMALLEST_JUMP_SHARE = 0.6;
/**
 * A value seen in short stays alone must draw this share of the zone's jumps out and back: a noisy reading with many
 * jumps hits some value three times by chance, a code is where nearly all of them go (own choice: five codes at most).
 */
const SMALLEST_SHARE_OF_STAYS = 0.2;
/** More values than this that are returned to are the steps of a coarse reading (own choice, as above). */
const MOST_CODES = 5;

/**
 * Codes that no list knows: an exact value reached and left by jumps too fast for heat, again and again.
 * By zone index; from the episodes of impossible-step (short stays) and stuck-run (long ones).
 */
export const learnedCodesOf = oncePer((evidence: Evidence): readonly (readonly LearnedCode[])[] => {
  const found = evidence.zones.map((zone) => codesOfZone(evidence, zone));
  return found.map((codes, z) =>
    codes.map((code) => ({
      ...code,
      otherZonesCount: found.filter((others, o) => o !== z && others.some((c) => c.valueDegC === code.valueDegC))
        .length,
    })),
  );
});

function codesOfZone(evidence: Evidence, zone: Zone): LearnedCode[] {
  const runs = groupedByValue(evidence.episodes.get('stuck-run')?.[zone.index] ?? []);
  const steps = evidence.episodes.get('impossible-step')?.[zone.index] ?? [];
  const stays = steps.flatMap((step, i) => spanOfStep(step, steps[i + 1], 1.5 * samplingMsOf(zone)) ?? []);
  const usual = evidence.digest.zones[zone.index]!.meanDegC;
  const low = quantile(usual, 0.05);
  const high = quantile(usual, 0.95);
  const isBesideSpike = besideSpikes(evidence, zone);
  const smallestJumpDegC = Math.max(2, 5 * resolutionDegCOf(zone));
  const values = new Set([...runs.keys(), ...stays.map((stay) => stay.valueDegC)]);
  const codes = [...values].flatMap((valueDegC): LearnedCode[] => {
    const long = runs.get(valueDegC) ?? [];
    const short = stays.filter((stay) => stay.valueDegC === valueDegC).map(({ span }) => span);
    const jumped = long.filter((run) => isJumpedTo(run, smallestJumpDegC) && !isBesideSpike(run));
    const jumpedTo = apartSpans([...jumped.map(spanOfRun), ...short]);
    if (!isCode(jumpedTo, long, short.length / stays.length)) return [];
    // Of a proven code every stay counts, also those that begin behind a hole, so that nothing shows how it was reached.
    const spans = apartSpans([...long.map(spanOfRun), ...short]);
    const counted = spans.reduce((sum, span) => sum + span.sampleCount, 0);
    const sampleCount = Math.max(counted, samplesAt(evidence, zone, valueDegC));
    return [{ valueDegC, spans, sampleCount, otherZonesCount: 0, side: sideOf(valueDegC, low, high) }];
  });
  return codes.length > MOST_CODES ? [] : codes;
}

function groupedByValue(runs: readonly Episode[]): Map<number, Episode[]> {
  const byValue = new Map<number, Episode[]>();
  for (const run of runs) {
    const value = run.facts['valueDegC']!;
    const same = byValue.get(value);
    if (same) same.push(run);
    else byValue.set(value, [run]);
  }
  return byValue;
}

/** Samples in periods of the digest that hold nothing but this value; all of them where the log is no quicker. */
function samplesAt({ digest }: Evidence, zone: Zone, valueDegC: number): number {
  const { minDegC, maxDegC, readingCount } = digest.zones[zone.index]!;
  const stored = Math.fround(valueDegC);
  let count = 0;
  for (let i = 0; i < digest.length; i++) {
    if (minDegC[i] === stored && maxDegC[i] === stored) count += readingCount[i]!;
  }
  return count;
}

/** Into and out of the value by a jump; the first and last stay of a log have one side only. */
function isJumpedTo({ facts }: Episode, smallestDegC: number): boolean {
  const isIn = Math.abs(facts['jumpInDegC'] ?? 0) >= smallestDegC;
  const isOut = Math.abs(facts['jumpOutDegC'] ?? 0) >= smallestDegC;
  return isIn && (isOut || facts['jumpOutDegC'] === undefined);
}

function spanOfRun({ startMs, endMs, facts }: Episode): CodeSpan {
  const value = facts['valueDegC']!;
  return {
    startMs,
    endMs,
    sampleCount: facts['sampleCount']!,
    beforeDegC: value - (facts['jumpInDegC'] ?? NaN),
    afterDegC: value + (facts['jumpOutDegC'] ?? NaN),
  };
}

/** A stay of one or two samples: an impossible step to a value, and the next one away from exactly that value. */
function spanOfStep(
  step: Episode,
  next: Episode | undefined,
  longestMs: number,
): { valueDegC: number; span: CodeSpan } | null {
  if (!next || next.facts['fromDegC'] !== step.facts['toDegC']) return null;
  if (next.startMs - step.endMs > longestMs) return null; // it went away between and came back
  const isBack = step.facts['jumpDegC']! * next.facts['jumpDegC']! < 0;
  if (!isBack) return null;
  const span = {
    startMs: step.endMs,
    endMs: next.startMs,
    sampleCount: next.startMs === step.endMs ? 1 : 2,
    beforeDegC: step.facts['fromDegC']!,
    afterDegC: next.facts['toDegC']!,
  };
  return { valueDegC: step.facts['toDegC']!, span };
}

/** In time order; a stay that both watchers saw counts once. */
function apartSpans(spans: readonly CodeSpan[]): CodeSpan[] {
  const apart: CodeSpan[] = [];
  for (const span of [...spans].sort((a, b) => a.startMs - b.startMs || b.endMs - a.endMs)) {
    const last = apart.at(-1);
    if (!last || span.startMs > last.endMs) apart.push(span);
  }
  return apart;
}

function sideOf(valueDegC: number, low: number, high: number): LearnedCode['side'] {
  if (valueDegC > high + OUTSIDE_DEG_C) return 'above';
  return valueDegC < low - OUTSIDE_DEG_C ? 'below' : 'near';
}

/** @param shareOfStays Of all short stays of the zone, the share at this value; NaN when there are none. */
function isCode(jumpedTo: readonly CodeSpan[], runs: readonly Episode[], shareOfStays: number): boolean {
  const hasLong = jumpedTo.some((span) => span.sampleCount >= LONG_SAMPLE_COUNT);
  if (jumpedTo.length < (hasLong ? FEWEST_SPANS_WITH_LONG : FEWEST_SPANS)) return false;
  if (runs.length === 0 && !(shareOfStays >= SMALLEST_SHARE_OF_STAYS)) return false;
  // A run behind a hole or a bad sample does not show how it was reached.
  const known = runs.filter((run) => run.facts['jumpInDegC'] !== undefined).length;
  return jumpedTo.length >= SMALLEST_JUMP_SHARE * Math.max(known, 1);
}
