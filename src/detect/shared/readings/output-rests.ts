import type { Evidence } from '../../../model/detector.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { quantile } from '../../../maths/quantile.js';
import { oncePer } from '../basics/memo.js';
import { fullOutputPercentOf } from './full-output.js';

/** A time in which an output, above zero and below its stop, did not move by its last digit. */
export interface OutputRest {
  readonly startMs: number;
  readonly endMs: number;
  /** How many times longer than the usual long rests of this output. */
  readonly timesUsual: number;
}

/** Nine in ten rests of an output are shorter than its usual long one. */
const USUAL_SHARE = 0.9;

/** The longest rest of a zone's output between two times, to whole periods of the digest; null where it never rests. */
export function longestOutputRest(evidence: Evidence, zone: number, fromMs: number, toMs: number): OutputRest | null {
  const { rests, usualMs } = outputRestsOf(evidence)[zone]!;
  let longest: Rest | null = null;
  for (const rest of rests) {
    const inside = { startMs: Math.max(rest.startMs, fromMs), endMs: Math.min(rest.endMs, toMs) };
    if (lengthMs(inside) > (longest ? lengthMs(longest) : 0)) longest = inside;
  }
  return longest && { ...longest, timesUsual: lengthMs(longest) / usualMs };
}

type Rest = Pick<OutputRest, 'startMs' | 'endMs'>;

function lengthMs({ startMs, endMs }: Rest): number {
  return endMs - startMs;
}

/** By zone index. One digit of noise ends a rest, so most are minutes long. */
const outputRestsOf = oncePer(
  (evidence: Evidence): readonly { readonly rests: readonly Rest[]; readonly usualMs: number }[] =>
    evidence.zones.map(({ index }) => {
      const rests = restsIn(evidence, index);
      return { rests, usualMs: Math.max(MINUTE_MS, quantile(rests.map(lengthMs), USUAL_SHARE)) };
    }),
);

function restsIn(evidence: Evidence, zone: number): Rest[] {
  const { digest } = evidence;
  const { outputPercent } = digest.zones[zone]!;
  const stopPercent = fullOutputPercentOf(evidence)[zone]!;
  const rests: Rest[] = [];
  for (let i = 0; i < digest.length;) {
    const percent = outputPercent[i]!;
    let to = i + 1;
    while (to < digest.length && outputPercent[to] === percent) to++;
    if (percent > 0 && percent < stopPercent)
      rests.push({ startMs: digest.startMs + i * digest.periodMs, endMs: digest.startMs + to * digest.periodMs });
    i = to;
  }
  return rests;
}
