import type { Episode, Evidence } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { quantile } from '../../maths/quantile.js';
import { oncePer } from './memo.js';
import { resolutionDegCOf } from './sampling.js';

/** One stay of a zone at a code. */
export interface CodeSpan {
  readonly startMs: number;
  readonly endMs: number;
  readonly sampleCount: number;
  readonly beforeDegC: number;
  readonly afterDegC: number;
}

/** An exact value that stands for something else than a temperature, learned from the log. */
export interface LearnedCode {
  readonly valueDegC: number;
  readonly spans: readonly CodeSpan[];
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
  const byValue = new Map<number, CodeSpan[]>();
  const note = (value: number, span: CodeSpan) => {
    const spans = byValue.get(value);
    if (spans) spans.push(span);
    else byValue.set(value, [span]);
  };
  const steps = evidence.episodes.get('impossible-step')?.[zone.index] ?? [];
  const runs = evidence.episodes.get('stuck-run')?.[zone.index] ?? [];
  const smallestJumpDegC = Math.max(2, 5 * resolutionDegCOf(zone));
  for (const run of runs) if (isJumpedTo(run, smallestJumpDegC)) note(run.facts['valueDegC']!, spanOfRun(run));
  steps.forEach((step, i) => {
    const span = spanOfStep(step, steps[i + 1]);
    if (span) note(step.facts['toDegC']!, span);
  });
  const usual = evidence.digest.zones[zone.index]!.meanDegC;
  const low = quantile(usual, 0.05);
  const high = quantile(usual, 0.95);
  return [...byValue]
    .map(([valueDegC, spans]) => codeOf(valueDegC, apartSpans(spans), low, high))
    .filter((code) => isCode(code, runs));
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

/** A short stay: an impossible step to a value, and the next one away from exactly that value. */
function spanOfStep(step: Episode, next: Episode | undefined): CodeSpan | null {
  if (!next || next.facts['fromDegC'] !== step.facts['toDegC']) return null;
  const isBack = step.facts['jumpDegC']! * next.facts['jumpDegC']! < 0;
  if (!isBack) return null;
  return {
    startMs: step.endMs,
    endMs: next.startMs,
    sampleCount: next.startMs === step.endMs ? 1 : 2,
    beforeDegC: step.facts['fromDegC']!,
    afterDegC: next.facts['toDegC']!,
  };
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

function codeOf(valueDegC: number, spans: readonly CodeSpan[], low: number, high: number): LearnedCode {
  const side = valueDegC > high + OUTSIDE_DEG_C ? 'above' : valueDegC < low - OUTSIDE_DEG_C ? 'below' : 'near';
  const sampleCount = spans.reduce((sum, span) => sum + span.sampleCount, 0);
  return { valueDegC, spans, sampleCount, otherZonesCount: 0, side };
}

function isCode(code: LearnedCode, runs: readonly Episode[]): boolean {
  const hasLong = code.spans.some((span) => span.sampleCount >= LONG_SAMPLE_COUNT);
  if (code.spans.length < (hasLong ? FEWEST_SPANS_WITH_LONG : FEWEST_SPANS)) return false;
  const stays = runs.filter((run) => run.facts['valueDegC'] === code.valueDegC).length;
  return code.spans.length >= SMALLEST_JUMP_SHARE * Math.max(stays, 1);
}
