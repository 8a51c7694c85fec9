import type { Evidence, Judge, Outcome } from '../model/detector.js';
import type { ProblemNote } from '../model/problem.js';
import { tooFewReadings } from './shared/basics/few-readings.js';
import { detectorFailed, type SettingsById } from './run-watchers.js';

// The list holds judges of many settings types; each one only ever meets its own.
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export type AnyJudge = Judge<any>;

/** What all judges say of one window. */
export interface Judgement {
  /** All outcomes, judge by judge, each in zone order. */
  readonly outcomes: readonly Outcome[];
  readonly problems: readonly ProblemNote[];
}

/**
 * Asks every judge about the whole window.
 *
 * @param evidence Not changed.
 * @returns Never throws: a judge that throws answers `unable` for all zones and becomes a `detector-failed` note.
 */
export function runJudges(evidence: Evidence, judges: readonly AnyJudge[], settings: SettingsById = {}): Judgement {
  const problems: ProblemNote[] = [];
  const outcomes = judges.flatMap((judge) => {
    const { id, defaults } = judge.meta;
    try {
      const judged = judge.judge(evidence, { ...(defaults as object), ...settings[id] });
      return judged.map((outcome) => ofFewReadings(evidence, withDoubt(evidence, outcome)));
    } catch (error) {
      problems.push(detectorFailed(id, error, 'this log'));
      return evidence.zones.map(({ index, name }) => ({
        detector: id,
        zone: index,
        symptoms: [],
        unable: `Zone ${name}: the detector failed.`,
      }));
    }
  });
  return { outcomes, problems };
}

/** What was seen stays; that nothing was seen says nothing where there was next to nothing to look at. */
function ofFewReadings(evidence: Evidence, outcome: Outcome): Outcome {
  const why = tooFewReadings(evidence)[outcome.zone] ?? null;
  return why === null || outcome.symptoms.length > 0 ? outcome : { ...outcome, unable: why };
}

/** What was seen stays listed, but of numbers that may be no temperatures, or of two zones, it proves nothing. */
function withDoubt({ zones }: Evidence, outcome: Outcome): Outcome {
  const zone = zones[outcome.zone];
  if (!zone?.isQuantityUnknown && !zone?.isMixed) return outcome;
  const why = zone.isMixed
    ? 'its rows seem to be of two zones or machines in turn'
    : 'nothing in the log says that its numbers are temperatures';
  return { ...outcome, unable: `Zone ${zone.name}: ${why}.` };
}
