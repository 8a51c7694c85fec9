import type { AnyJudge } from '../../src/detect/run-judges.js';
import type { Evidence, Facts, Outcome } from '../../src/model/detector.js';

/** What a judge says of one zone with its own defaults. */
export function ask(judge: AnyJudge, evidence: Evidence, zone = 0): Outcome {
  return judge.judge(evidence, judge.meta.defaults)[zone]!;
}

/** Facts of its first symptom; an empty object when it sees nothing. */
export function factsOf(judge: AnyJudge, evidence: Evidence, zone = 0): Facts {
  return ask(judge, evidence, zone).symptoms[0]?.facts ?? {};
}
