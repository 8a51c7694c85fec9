import { expect, test } from 'vitest';
import { judges } from '../../src/detect/index.js';
import type { causes } from '../../src/model/cause.js';
import type { Outcome } from '../../src/model/detector.js';
import type { Zone } from '../../src/model/zone.js';
import fitted from '../../src/weigh/strengths.json' with { type: 'json' };
import { standsOut, type ZoneEvidence } from '../../src/weigh/term.js';
import { terms } from '../../src/weigh/terms/index.js';

const ids = new Set(judges.map(({ meta }) => meta.id));
const has = { reading: true, setpoint: true, output: true, running: true };
const zone = { index: 0, name: 'Zone 1', machine: 'M1', has } as Zone;
const table = fitted.terms as Record<string, Partial<Record<(typeof causes)[number], number>>>;

test('every term reads a detector that exists, has its own name and a sentence', () => {
  expect(new Set(terms.map(({ id }) => id)).size).toBe(terms.length);
  for (const term of terms) {
    expect(ids, term.id).toContain(term.detector);
    expect(term.says, term.id).toMatch(/^[A-Z].*[.]$/);
    expect(term.for.length + term.against.length, term.id).toBeGreaterThan(0);
    expect(
      term.for.filter((cause) => term.against.includes(cause)),
      term.id,
    ).toEqual([]);
  }
});

test('every term was fitted: one without strengths counts for nothing, so run the fit after adding one', () => {
  expect(terms.map(({ id }) => id).filter((id) => !(id in table))).toEqual([]);
});

test('every fitted strength belongs to a term and has the sign the term allows', () => {
  for (const [id, adds] of Object.entries(table)) {
    const term = terms.find((candidate) => candidate.id === id);
    expect(term, id).toBeDefined();
    for (const [cause, strength] of Object.entries(adds)) {
      const allowed = strength > 0 ? term!.for : term!.against;
      expect(allowed, `${id} ${cause}`).toContain(cause);
    }
  }
});

test('without any outcome no term applies', () => {
  const evidence: ZoneEvidence = { zone, outcomes: new Map(), others: [] };
  for (const term of terms) expect(term.value(evidence) ?? 0, term.id).toBe(0);
});

test('values stay from 0 to 1, whatever the facts', () => {
  const facts = new Proxy({}, { get: () => 1e9 }) as Record<string, number>;
  const outcome = (detector: string): Outcome => ({
    detector,
    zone: 0,
    symptoms: [{ detector, startMs: 0, endMs: 1, count: 1e6, facts }],
  });
  const outcomes = new Map([...ids].map((id) => [id, outcome(id)]));
  for (const term of terms) {
    const value = term.value({ zone, outcomes, others: [] }) ?? 0;
    expect(value >= 0 && value <= 1, `${term.id} ${value}`).toBe(true);
  }
});

test('what other zones show as much does not stand out', () => {
  const withCount = (count: number, others: ZoneEvidence[] = []): ZoneEvidence => ({
    zone,
    outcomes: new Map([
      ['x', { detector: 'x', zone: 0, symptoms: [{ detector: 'x', startMs: 0, endMs: 1, count, facts: {} }] }],
    ]),
    others,
  });
  const count = (evidence: ZoneEvidence): number => evidence.outcomes.get('x')!.symptoms[0]!.count;
  const peers = [1, 2, 3, 4].map((n) => withCount(n));
  expect(standsOut(withCount(64, peers), count)).toBe(1);
  expect(standsOut(withCount(4, peers), count)).toBe(0);
  expect(standsOut(withCount(5), count)).toBe(1);
  // Two of seven others have a fault of their own: that is no matter of the plant yet.
  const plant = [0, 0, 0, 0, 0, 6, 250].map((n) => withCount(n));
  expect(standsOut(withCount(10, plant), count)).toBe(1);
});

test('opens after a repair speak by what was repaired', () => {
  const after = (facts: Record<string, number>): Record<string, number> => {
    const symptoms = [{ detector: 'repairs', startMs: 0, endMs: 1, count: 1, facts }];
    const evidence = { zone, outcomes: new Map([['repairs', { detector: 'repairs', zone: 0, symptoms }]]), others: [] };
    const ofRepairs = terms.filter(({ detector }) => detector === 'repairs');
    return Object.fromEntries(ofRepairs.map((term) => [term.id, term.value(evidence) ?? 0]));
  };
  const goesOn = { burstsAfterCount: 5, afterRatio: 1.1, fewerAfterPValue: 0.6 };
  const ended = { burstsAfterCount: 0, afterRatio: 0, fewerAfterPValue: 1e-5 };
  const none = { 'opens-go-on-with-new-sensor': 0, 'opens-end-with-new-sensor': 0, 'opens-end-with-wiring-repair': 0 };
  expect(after({ replacementCount: 1, wiringRepairCount: 0, ...goesOn })).toEqual({
    ...none,
    'opens-go-on-with-new-sensor': 1,
  });
  expect(after({ replacementCount: 1, wiringRepairCount: 0, ...ended })).toEqual({
    ...none,
    'opens-end-with-new-sensor': 1,
  });
  expect(after({ replacementCount: 0, wiringRepairCount: 1, ...ended })).toEqual({
    ...none,
    'opens-end-with-wiring-repair': 1,
  });
  expect(after({ replacementCount: 0, wiringRepairCount: 0, ...ended })).toEqual(none);
});

/** Values of terms for a zone of which each detector named states the facts given. */
function valuesOf(
  facts: Record<string, Record<string, number>>,
  others: readonly ZoneEvidence[] = [],
  of: Zone = zone,
): (id: string) => number {
  const evidence = evidenceOf(facts, others, of);
  return (id) => terms.find((term) => term.id === id)!.value(evidence) ?? 0;
}

function evidenceOf(
  facts: Record<string, Record<string, number>>,
  others: readonly ZoneEvidence[] = [],
  of: Zone = zone,
): ZoneEvidence {
  const outcomes = Object.entries(facts).map(([detector, own]): [string, Outcome] => [
    detector,
    { detector, zone: 0, symptoms: [{ detector, startMs: 0, endMs: 1, count: 1, facts: own }] },
  ]);
  const quiet = ['cold-soak-offset', 'slow-drift', 'duty-shift'].map((detector): [string, Outcome] => [
    detector,
    { detector, zone: 0, symptoms: [] },
  ]);
  return { zone: of, outcomes: new Map([...quiet, ...outcomes]), others };
}

test('quiet soaks and duty speak of drift, not of faults that come and go', () => {
  expect(valuesOf({})('soaks-quiet')).toBe(1);
  expect(valuesOf({})('duty-quiet')).toBe(1);
  for (const detector of ['sensor-opens', 'returning-steps', 'stuck-reading']) {
    expect(valuesOf({ [detector]: {} })('soaks-quiet'), detector).toBe(0);
    expect(valuesOf({ [detector]: {} })('duty-quiet'), detector).toBe(0);
  }
});

// A leak of 20 kΩ beside a Pt100 reads 0.54 Ω less at 20 °C and 1.53 Ω at 200 °C (IEC 60751: 107.79 Ω and 175.86 Ω).
test('a leak reads low, cold a third of what it is hot; a shifted element and a wrong slope do not', () => {
  const leak = (offsetDegC: number, coldShare: number) =>
    valuesOf({ 'slow-drift': { offsetDegC, coldShare } })('low-as-a-leak');
  const parallelLossOhm = (ohm: number) => ohm - ohm / (1 + ohm / 20_000);
  const share = ((parallelLossOhm(107.79) / parallelLossOhm(175.86)) * 0.367) / 0.39; // °C by the slopes, Ω/K
  expect(leak(-4, share)).toBe(1);
  expect(leak(4, share)).toBe(0);
  expect(leak(-4, 1)).toBe(0);
  expect(leak(-4, 0.03)).toBe(0);
});

test('a small change of duty beside a large one the other way is the neighbour, unless cold soaks moved', () => {
  const neighbour = evidenceOf({ 'duty-shift': { residualPercent: 12 } });
  const of = (facts: Record<string, number>) => valuesOf({ 'duty-shift': facts }, [neighbour])('duty-of-a-neighbour');
  expect(of({ residualPercent: -2 })).toBe(1);
  expect(of({ residualPercent: 2 })).toBe(0);
  expect(of({ residualPercent: -10 })).toBe(0);
  expect(of({ residualPercent: -2, soakChangeDegC: 1, residualDegC: 2 })).toBe(0);
});

test('a still reading with nothing on the move beside it may as well be its tag', () => {
  const stuckWith = (facts: Record<string, number>) => ({
    'stuck-reading': { totalMinutes: 300, jumpedToCount: 0, ...facts },
  });
  const alone = { ...zone, has: { ...has, output: false } };
  expect(valuesOf(stuckWith({}))('still-and-nothing-beside-it')).toBe(0);
  expect(valuesOf(stuckWith({}), [], alone)('still-and-nothing-beside-it')).toBe(1);
  expect(valuesOf(stuckWith({ setpointRangeDegC: 0 }), [], alone)('still-and-nothing-beside-it')).toBe(1);
  expect(valuesOf(stuckWith({ setpointRangeDegC: 20 }), [], alone)('still-and-nothing-beside-it')).toBe(0);
  expect(valuesOf(stuckWith({ jumpedToCount: 1 }), [], alone)('still-and-nothing-beside-it')).toBe(0);
});

test('zones that all stay hot together have no relay each that sticks', () => {
  const hot = { 'output-stuck-on': { aboveMinutes: 600, largestAboveDegC: 60 } };
  const peers = [1, 2, 3].map(() => evidenceOf(hot));
  expect(valuesOf(hot)('climbs-at-zero-output')).toBe(1);
  expect(valuesOf(hot, peers)('climbs-at-zero-output')).toBe(0);
  expect(valuesOf(hot, peers)('far-above-set-point')).toBe(0);
});
