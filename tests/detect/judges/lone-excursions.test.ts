import { expect, test } from 'vitest';
import { loneExcursions } from '../../../src/detect/judges/lone-excursions.js';
import { ask, factsOf } from '../../make/ask.js';
import { DAY_MS, evidenceOf, MINUTE_MS, MONDAY_MS, zoneLog, zoneOfLog } from '../../make/zone-log.js';

const EVERY_S = 60;
/** A contact of 2 Ω on a Pt100, about 5 °C, closed again after 23 of every 97 minutes, from the third day on. */
const contact = (ms: number) => (ms > MONDAY_MS + 2 * DAY_MS && (ms / MINUTE_MS) % 97 < 23 ? 5.5 : 0);
const log = (seed: number, offsetDegC?: (ms: number) => number) =>
  zoneLog({ seed, everyS: EVERY_S, ...(offsetDegC ? { offsetDegC } : {}) });
const zones = [0, 1, 2, 3].map((index) => zoneOfLog(index, { samplingMs: EVERY_S * 1000, sensor: 'pt100', wires: 3 }));
const others = [2, 3, 4].map((seed) => log(seed));

test('tells a contact that the loop pulls back within a sample, from when it began', () => {
  const evidence = evidenceOf([log(1, contact), ...others], { zones });
  const facts = factsOf(loneExcursions, evidence);
  expect(facts['excursionCount']!).toBeGreaterThan(10);
  expect(facts['beforeCount']).toBe(0);
  expect(facts['upShare']!).toBeGreaterThan(0.3);
  expect(facts['upShare']!).toBeLessThan(0.7);
  // The loop takes part of the step back before it is logged: never more than was made.
  expect(facts['medianStepDegC']!).toBeGreaterThan(1.5);
  expect(facts['medianStepDegC']!).toBeLessThan(6);
  // IEC 60751 at 180 °C: 0.3696 Ω per °C (slope of the table).
  expect(facts['medianStepOhm']! / facts['medianStepDegC']!).toBeCloseTo(0.3696, 2);
  expect(facts['loopAnswerPercent']!).toBeGreaterThan(0);
  const [symptom] = ask(loneExcursions, evidence).symptoms;
  expect(symptom!.startMs).toBeGreaterThan(MONDAY_MS + 2 * DAY_MS);
  for (const zone of [1, 2, 3]) expect(ask(loneExcursions, evidence, zone).symptoms).toEqual([]);
});

test('counts days and the answer of the loop in a log with a reading every two minutes, too', () => {
  const slowly = (seed: number) =>
    log(seed, seed === 1 ? contact : undefined).filter((sample) => (sample.timeMs / MINUTE_MS) % 2 === 0);
  const slow = zones.map((zone) => ({ ...zone, samplingMs: 120_000 }));
  const days = (count: number) =>
    evidenceOf(
      [1, 2, 3, 4].map((seed) => slowly(seed).slice(0, count * 720)),
      { zones: slow },
    );
  // One day's shift is hot and settled for more than the twelve hours that are needed.
  expect(ask(loneExcursions, days(1))).not.toHaveProperty('unable');
  const [symptom] = ask(loneExcursions, days(4)).symptoms;
  const daysSince = (MONDAY_MS + 4 * DAY_MS - symptom!.startMs) / DAY_MS;
  expect(symptom!.facts['excursionsPerDay']! / (symptom!.facts['excursionCount']! / daysSince)).toBeCloseTo(1, 2);
  expect(symptom!.facts['loopAnswerPercent']!).toBeGreaterThan(0);
});

test('cannot tell when the other zones are off', () => {
  const off = others.map((samples) =>
    samples.map((sample) =>
      sample.timeMs > MONDAY_MS + 2 * DAY_MS ? { ...sample, degC: 22, setpointDegC: 0 } : sample,
    ),
  );
  expect(ask(loneExcursions, evidenceOf([log(1, contact), ...off], { zones })).unable).toMatch(/no other zone/);
});

test('a stop behind a jump is none of its causes, one right before it may be', () => {
  const stopsFromJump = (afterMinutes: number) => (seed: number) =>
    log(seed, seed === 1 ? contact : undefined).map((sample) => {
      const isStopped = [0, 23].some((jump) => {
        const sinceMinutes = (sample.timeMs / MINUTE_MS - jump - afterMinutes) % 97;
        return sinceMinutes >= 0 && sinceMinutes < 3;
      });
      return isStopped ? { ...sample, running: 0 } : sample;
    });
  const behind = evidenceOf([1, 2, 3, 4].map(stopsFromJump(2)), { zones });
  expect(factsOf(loneExcursions, behind)['excursionCount']!).toBeGreaterThan(10);
  const before = evidenceOf([1, 2, 3, 4].map(stopsFromJump(-3)), { zones });
  expect(ask(loneExcursions, before).symptoms).toEqual([]);
});

test('is silent when the whole machine moves so, when a zone always did, and when it only ever goes one way', () => {
  const shared = evidenceOf(
    [1, 2, 3, 4].map((seed) => log(seed, contact)),
    { zones },
  );
  expect(ask(loneExcursions, shared).symptoms).toEqual([]);
  const always = evidenceOf([log(1, (ms) => ((ms / MINUTE_MS) % 97 < 23 ? 5.5 : 0)), ...others], { zones });
  expect(ask(loneExcursions, always).symptoms).toEqual([]);
  const oneWay = log(1).map((sample, i) =>
    sample.timeMs > MONDAY_MS + 2 * DAY_MS && i % 97 === 0 ? { ...sample, degC: sample.degC! + 5 } : sample,
  );
  expect(ask(loneExcursions, evidenceOf([oneWay, ...others], { zones })).symptoms).toEqual([]);
});

test('cannot tell from a slow log or from a machine with one zone', () => {
  expect(ask(loneExcursions, evidenceOf([log(1)], { zones: [zones[0]!] })).unable).toMatch(/no other zone/);
  const slow = zones.map((zone) => ({ ...zone, samplingMs: 300_000 }));
  expect(ask(loneExcursions, evidenceOf([log(1), ...others], { zones: slow })).unable).toMatch(/logged every 300 s/);
});
