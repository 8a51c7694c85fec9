import { expect, test } from 'vitest';
import { causes } from '../../src/model/cause.js';
import type { Strengths } from '../../src/weigh/strengths.js';
import { withPlantOverrides } from '../../src/weigh/strengths.js';
import type { Term, ZoneEvidence } from '../../src/weigh/term.js';
import { weighZone } from '../../src/weigh/weigh-zone.js';
import { makeZone } from '../make/blocks.js';

const zone = makeZone({ name: 'Front jaw', isChangeLogged: false });
const evidence: ZoneEvidence = { zone, outcomes: new Map(), others: [] };
const level: Strengths = {
  prior: { sensor: 0, wiring: 0, input: 0, heater: 0, recording: 0, none: 0 },
  terms: { loud: { sensor: Math.log(2) }, unsaid: { heater: 5 } },
};
const term = (id: string, value: number | null): Term => ({
  id,
  says: `${id}.`,
  detector: 'made',
  for: ['sensor'],
  against: [],
  value: () => value,
});

test('adds log-odds: twice the odds for one of six even causes is 2 in 7', () => {
  const { probabilities, terms } = weighZone(evidence, [term('loud', 1)], level);
  expect(probabilities.sensor).toBeCloseTo(2 / 7, 12);
  expect(probabilities.none).toBeCloseTo(1 / 7, 12);
  expect(terms).toEqual([{ term: 'loud', says: 'loud.', value: 1, adds: { sensor: Math.log(2) } }]);
});

test('half the value adds half the log-odds', () => {
  const { probabilities } = weighZone(evidence, [term('loud', 0.5)], level);
  expect(probabilities.sensor).toBeCloseTo(Math.SQRT2 / (5 + Math.SQRT2), 12);
});

test('a term that cannot be told, or does not apply, counts nothing', () => {
  const { probabilities, terms } = weighZone(evidence, [term('loud', null), term('unsaid', 0)], level);
  for (const cause of causes) expect(probabilities[cause]).toBeCloseTo(1 / 6, 12);
  expect(terms).toEqual([]);
});

test('plant.yaml can replace priors by shares and single strengths', () => {
  const given = withPlantOverrides(level, {
    zones: [],
    priors: { none: 0.9 },
    strengths: { loud: { sensor: Math.log(4) } },
  });
  const { probabilities } = weighZone(evidence, [], given);
  expect(probabilities.none).toBeCloseTo(0.9, 12);
  expect(probabilities.sensor).toBeCloseTo(0.02, 12);
  const loud = weighZone(evidence, [term('loud', 1)], { ...given, prior: level.prior });
  expect(loud.probabilities.sensor).toBeCloseTo(4 / 9, 12);
});
