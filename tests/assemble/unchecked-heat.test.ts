import { describe, expect, test } from 'vitest';
import { uncheckedHeat } from '../../src/assemble/unchecked-heat.js';
import { causes, type Cause, type Probabilities } from '../../src/model/cause.js';
import type { Zone } from '../../src/model/zone.js';
import { actionScore, type RankInput } from '../../src/weigh/rank.js';
import type { Verdict } from '../../src/weigh/weigh-plant.js';

const zone = { index: 0, name: 'Front jaw', machine: 'M1' } as Zone;

function verdict(detector: string, cause: Cause, fixedMs = NaN): Verdict {
  const symptom = { detector, zone: 0, startMs: 0, endMs: 1, count: 1, facts: {} };
  return {
    zone,
    evidence: { zone, others: [], outcomes: new Map([[detector, { detector, zone: 0, symptoms: [symptom] }]]) },
    status: 'faulty',
    probabilities: Object.fromEntries(causes.map((one) => [one, one === cause ? 0.9 : 0.02])) as Probabilities,
    prior: Object.fromEntries(causes.map((one) => [one, 0])) as Probabilities,
    terms: [],
    span: { onsetMs: 0, fixedMs, lastMs: 1 },
  };
}

// Common practice: a welded contact and a shorted thermocouple are the usual ways to an overheated zone.
describe('heat that the loop cannot hold back', () => {
  test('an output that does not go off, and a reading held low, while they last', () => {
    expect(uncheckedHeat(verdict('output-stuck-on', 'heater'))).toBe('stuck-on');
    expect(uncheckedHeat(verdict('reading-low-shorted', 'wiring'))).toBe('reading-low');
    expect(uncheckedHeat(verdict('reading-low-shorted', 'sensor'))).toBe('reading-low');
    expect(uncheckedHeat(verdict('output-stuck-on', 'heater', 5))).toBeNull();
  });

  test('a heater that stays cold, a false reading, and what is only a recording are no danger of that kind', () => {
    expect(uncheckedHeat(verdict('heater-dead', 'heater'))).toBeNull();
    expect(uncheckedHeat(verdict('output-stuck-on', 'recording'))).toBeNull();
    expect(uncheckedHeat(verdict('reading-low-shorted', 'heater'))).toBeNull();
    expect(uncheckedHeat({ ...verdict('output-stuck-on', 'heater'), status: 'healthy' })).toBeNull();
  });

  test('it comes before a zone that stands still all week', () => {
    const one: RankInput = {
      ...{ faultShare: 0.9, downtimeMinutes: 0, windowDays: 7, isStanding: true },
      ...{ isWorse: false, isHeatUnchecked: true, daysToTolerance: NaN },
    };
    const costly = { ...one, faultShare: 0.99, isHeatUnchecked: false, downtimeMinutes: 6 * 24 * 60, isWorse: true };
    expect(actionScore(one)).toBeGreaterThan(actionScore(costly));
  });
});
