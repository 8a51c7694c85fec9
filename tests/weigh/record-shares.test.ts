import { describe, expect, test } from 'vitest';
import { softmax } from '../../src/maths/log-odds.js';
import { causes, type Cause } from '../../src/model/cause.js';
import type { ConfirmedFinding } from '../../src/model/record.js';
import { FITTED_WORTH_FINDINGS, foundCounts, withRecord } from '../../src/weigh/record-shares.js';
import type { Strengths } from '../../src/weigh/strengths.js';
import { plantRecordShares, plantStrengths, weighPlant } from '../../src/weigh/weigh-plant.js';
import { makeZone } from '../make/blocks.js';

const finding = (found: Cause, zone: number | null = null, isBeforeLog = true): ConfirmedFinding => ({
  found,
  zone,
  isBeforeLog,
});
const many = (found: Cause, count: number): ConfirmedFinding[] => Array.from({ length: count }, () => finding(found));
const shares = ({ prior }: Strengths): Record<Cause, number> => {
  const all = softmax(causes.map((cause) => prior[cause]));
  return Object.fromEntries(causes.map((cause, i) => [cause, all[i]])) as Record<Cause, number>;
};
const plant = { zones: [] };
const fitted = plantStrengths(plant);

/** 9 of 10 zones healthy; of ten faults 5, 2, 1, 1, 1. */
const round: Strengths = {
  prior: Object.fromEntries(
    causes.map((cause, i) => [cause, Math.log([0.05, 0.02, 0.01, 0.01, 0.01, 0.9][i]!)]),
  ) as Strengths['prior'],
  terms: {},
};

describe('shares among faults', () => {
  test('20 findings of the card stand against a fit worth 20: half the way to all of them', () => {
    const moved = shares(withRecord(round, foundCounts(many('input', 20), null), 20));
    // among faults: (20 × 0.1 + 20) / 40 = 0.55; of all zones a tenth has a fault
    expect(moved.input).toBeCloseTo(0.055, 12);
    expect(moved.sensor).toBeCloseTo(0.1 * ((20 * 0.5) / 40), 12);
    expect(moved.none).toBeCloseTo(0.9, 12);
  });

  test('what is found as often as fitted moves nothing, however often', () => {
    const found = [...many('sensor', 50), ...many('wiring', 20)];
    for (const rest of ['input', 'heater', 'recording'] as const) found.push(...many(rest, 10));
    const moved = shares(withRecord(round, foundCounts(found, null), 20));
    for (const cause of causes) expect(moved[cause]).toBeCloseTo(shares(round)[cause], 12);
  });

  test('the rate of no fault never moves, and "nothing found" moves nothing', () => {
    const counts = foundCounts([...many('none', 30), ...many('wiring', 4)], null);
    expect(shares(withRecord(fitted, counts)).none).toBeCloseTo(shares(fitted).none, 12);
    expect(plantStrengths(plant, many('none', 30))).toEqual(fitted);
  });

  test('no cause is ever ruled out by a record', () => {
    const moved = shares(withRecord(fitted, foundCounts(many('sensor', 1000), null)));
    for (const cause of causes) expect(moved[cause]).toBeGreaterThan(0);
  });
});

describe('the owner’s word', () => {
  test('priorFindings makes the fit heavier or lighter', () => {
    const found = many('wiring', 3);
    const wiring = (priorFindings: number): number => shares(plantStrengths({ ...plant, priorFindings }, found)).wiring;
    expect(wiring(5)).toBeGreaterThan(wiring(50));
    expect(wiring(FITTED_WORTH_FINDINGS)).toBeCloseTo(shares(plantStrengths(plant, found)).wiring, 12);
  });

  test('priors in plant.yaml win; what they leave out is split as the record has it', () => {
    const found = many('heater', 30);
    const own = { ...plant, priors: { none: 0.8, sensor: 0.1 } };
    const used = shares(plantStrengths(own, found));
    expect([used.none, used.sensor]).toEqual([expect.closeTo(0.8, 9), expect.closeTo(0.1, 9)]);
    expect(used.heater).toBeGreaterThan(shares(plantStrengths(own)).heater);
    const { byCause } = plantRecordShares(own, found);
    expect(byCause.filter(({ isSetByPlant }) => isSetByPlant).map(({ cause }) => cause)).toEqual(['sensor']);
  });
});

test('the table tells counts, shares before and shares used', () => {
  const { byCause, nothingFoundCount, priorFindings } = plantRecordShares(plant, [
    ...many('wiring', 2),
    finding('none'),
    finding('input', 3, false),
  ]);
  expect([priorFindings, nothingFoundCount]).toEqual([FITTED_WORTH_FINDINGS, 1]);
  expect(byCause.map(({ cause, foundCount }) => [cause, foundCount])).toEqual([
    ['sensor', 0],
    ['wiring', 2],
    ['input', 1],
    ['heater', 0],
    ['recording', 0],
  ]);
  for (const { fittedShare, foundCount, usedShare } of byCause)
    expect(usedShare).toBeCloseTo((20 * fittedShare + foundCount) / 23, 12);
});

test('a zone is not weighed by what its own log is asked for', () => {
  const zones = [0, 1].map((index) => makeZone({ index, name: `Zone ${index}`, isChangeLogged: false }));
  const wiring = (found: ConfirmedFinding[]): number[] =>
    weighPlant(zones, [], plant, found).map(({ probabilities }) => probabilities.wiring);
  const [without] = wiring([]);
  const since = wiring([finding('wiring', 0, false)]);
  expect(since[0]).toBe(without);
  expect(since[1]).toBeGreaterThan(without!);
  const before = wiring([finding('wiring', 0, true)]);
  expect(before[0]).toBe(before[1]);
  expect(before[0]).toBeGreaterThan(without!);
});
