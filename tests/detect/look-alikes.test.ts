import { describe, expect, test } from 'vitest';
import { judges } from '../../src/detect/index.js';
import { runJudges } from '../../src/detect/run-judges.js';
import type { Outcome } from '../../src/model/detector.js';
import { lookAlikeCases, lookAlikeParameters, type LookAlikeCase } from '../make/look-alikes.js';
import { makePlant } from '../make/make-plant.js';
import { plantEvidence } from '../make/plant-evidence.js';
import { plainFault } from '../make/small-plant.js';

const hourS = 3600;
const dayS = 24 * hourS;

function seen(look: LookAlikeCase): readonly Outcome[] {
  const evidence = plantEvidence(makePlant(lookAlikeParameters(look, 11)));
  const { outcomes, problems } = runJudges(evidence, judges);
  expect(problems).toEqual([]);
  expect(outcomes).toHaveLength(judges.length * evidence.zones.length);
  return outcomes.filter(({ symptoms }) => symptoms.length > 0);
}

const told = ({ detector, zone, symptoms }: Outcome) => `${detector} in zone ${zone}: ${JSON.stringify(symptoms[0])}`;

describe('every judge is silent, or says that it cannot tell, on', () => {
  test.each(lookAlikeCases.map((look) => ({ name: look[0], look })))('$name', ({ look }) => {
    expect(seen(look).map(told)).toEqual([]);
  });
});

test('the same plant with a fault is not passed over in silence', () => {
  const faults = [plainFault('wire_flex_open', 1, 2)];
  expect(new Set(seen(['a fault', { faults }]).map(({ zone }) => zone))).toEqual(new Set([1]));
});

test('a clock put forward leaves an hour without rows, which is told as a gap of all zones and of none alone', () => {
  const hour = { startS: 3 * dayS + 2 * hourS, endS: 3 * dayS + 3 * hourS };
  const outcomes = seen([
    'an hour missing',
    {},
    (plant) => ({ ...plant, recorder: { ...plant.recorder, gaps: [hour] } }),
  ]);
  expect(new Set(outcomes.map(({ detector }) => detector))).toEqual(new Set(['frozen-record']));
  for (const { symptoms } of outcomes) {
    expect(symptoms[0]!.facts).toMatchObject({ gapCount: 1, ownGapCount: 0, tagFrozenCount: 0, fileFrozenCount: 0 });
  }
});
