import { describe, expect, test } from 'vitest';
import type { Symptom } from '../../src/model/detector.js';
import type { Term, ZoneEvidence } from '../../src/weigh/term.js';
import { faultSpan } from '../../src/weigh/verdict.js';
import { makeZone } from '../make/blocks.js';

const hour = 3_600_000;
const zone = makeZone({ name: 'Front jaw', isChangeLogged: false });
const loud: Term = { id: 'loud', says: 'loud.', detector: 'made', for: ['sensor'], against: [], value: () => 1 };
const symptom = (detector: string, from: number, to: number, facts: Symptom['facts'] = {}): Symptom => ({
  ...{ detector, zone: 0, startMs: from * hour, endMs: to * hour, strength: 1, count: 1, facts },
});

const evidenceOf = (made: readonly Symptom[], repairs: readonly Symptom[] = []): ZoneEvidence => ({
  ...{ zone, others: [] },
  outcomes: new Map([
    ['made', { detector: 'made', zone: 0, symptoms: made }],
    ['repairs', { detector: 'repairs', zone: 0, symptoms: repairs }],
  ]),
});
const fixedMsOf = (evidence: ZoneEvidence): number => {
  const probabilities = { sensor: 0.9, wiring: 0, input: 0, heater: 0, recording: 0, none: 0.1 };
  const note = { term: 'loud', says: 'loud.', value: 1, adds: { sensor: 4 } };
  return faultSpan(evidence, probabilities, [note], [loud]).fixedMs;
};

/** Faults as hours from–to; each ends as a repair would end it. The log ends at `endHour`. */
function fixedHour(faults: readonly (readonly [number, number])[], endHour: number, listedCount = 0): number {
  const repairs = faults.map(([from, to], i) => {
    const after = faults[i + 1]?.[1] ?? endHour;
    const facts = {
      listedCount,
      opensBeforeCount: 1,
      beforeHours: to - (faults[i - 1]?.[1] ?? 0),
      afterHours: after - to,
    };
    return symptom('repairs', from, to, facts);
  });
  const made = faults.map(([from, to]) => symptom('made', from, to));
  return fixedMsOf(evidenceOf(made, repairs)) / hour;
}

// Silence of three mean gaps: e⁻³, 5 %, of a Poisson process (from memory).
describe('a fault is put right', () => {
  test('when it ended for the first time', () => {
    expect(fixedHour([[100, 101]], 110)).toBe(101);
  });

  test('not yet, when it came back each week before and is silent for four days', () => {
    const weekly = [
      [100, 101],
      [268, 269],
      [436, 437],
    ] as const;
    expect(fixedHour(weekly, 437 + 96)).toBeNaN();
    expect(fixedHour(weekly, 437 + 3 * 168)).toBe(437);
  });

  test('when the maintenance list says so, whatever was before', () => {
    expect(
      fixedHour(
        [
          [100, 101],
          [268, 269],
        ],
        280,
        1,
      ),
    ).toBe(269);
  });

  test('when a part that cannot mend itself works again for a shift', () => {
    const dead = (settledHoursSince: number) => evidenceOf([symptom('made', 100, 102, { settledHoursSince })]);
    expect(fixedMsOf(dead(2))).toBeNaN();
    expect(fixedMsOf(dead(9)) / hour).toBe(102);
    const seldom = { ...symptom('made', 100, 160, { settledHoursSince: 40 }), count: 3 };
    expect(fixedMsOf(evidenceOf([seldom])), 'comes back every 20 h').toBeNaN();
  });
});
