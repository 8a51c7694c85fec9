import { expect, test } from 'vitest';
import { frozenRecord } from '../../../src/detect/judges/frozen-record.js';
import { readingState } from '../../../src/model/sample-block.js';
import { ask, factsOf } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import { DAY_MS, evidenceOf, HOUR_MS, MONDAY_MS, zoneLog, zoneOfLog } from '../../make/zone-log.js';

const start = MONDAY_MS + DAY_MS + 10 * HOUR_MS;
const isIn = (s: MadeSample) => s.timeMs >= start && s.timeMs < start + 3 * HOUR_MS;
const frozen = (s: MadeSample, before: MadeSample | undefined): MadeSample =>
  isIn(s) && before ? { ...before, timeMs: s.timeMs } : s;
const missing = (s: MadeSample) => (isIn(s) ? null : s);

test('tells a frozen tag from a frozen file by what else moves', () => {
  const tag = evidenceOf([zoneLog({ recorded: frozen }), zoneLog({ seed: 2 }), zoneLog({ seed: 3 })]);
  const file = evidenceOf([1, 2, 3].map((seed) => zoneLog({ seed, recorded: frozen })));
  expect(factsOf(frozenRecord, tag)).toMatchObject({ tagFrozenCount: 1, fileFrozenCount: 0, gapCount: 0 });
  expect(factsOf(frozenRecord, file)).toMatchObject({ tagFrozenCount: 0, fileFrozenCount: 1, gapCount: 0 });
  expect(ask(frozenRecord, tag, 1).symptoms).toEqual([]);
});

test('tells missing rows of one zone from missing rows of all', () => {
  const own = evidenceOf([zoneLog({ recorded: missing }), zoneLog({ seed: 2 }), zoneLog({ seed: 3 })]);
  const all = evidenceOf([1, 2, 3].map((seed) => zoneLog({ seed, recorded: missing })));
  expect(factsOf(frozenRecord, own)).toMatchObject({ gapCount: 1, ownGapCount: 1 });
  expect(factsOf(frozenRecord, all)).toMatchObject({ gapCount: 1, ownGapCount: 0 });
  expect(factsOf(frozenRecord, all)['gapMinutes']).toBeCloseTo(180.5, 6);
});

test('an output at the stop that its controller allows stands still by right: the channel froze, not the tag', () => {
  const capped = (s: MadeSample): MadeSample => ({ ...s, outputPercent: Math.min(70, s.outputPercent!) });
  const still =
    (outputPercent: number) =>
    (s: MadeSample, before: MadeSample | undefined): MadeSample =>
      isIn(s) && before ? { ...s, degC: before.degC, outputPercent } : capped(s);
  const swinging = (s: MadeSample) => ({ ...s, degC: s.degC + 6 * Math.sin(s.timeMs / 1_200_000) });
  const peers = [2, 3].map((seed) => zoneLog({ seed, recorded: swinging }));
  const tagsAt = (percent: number) =>
    ask(frozenRecord, evidenceOf([zoneLog({ recorded: still(percent) }), ...peers])).symptoms.map(
      ({ facts }) => facts['tagFrozenCount'],
    );
  expect(tagsAt(40)).toEqual([1]);
  expect(tagsAt(70)).toEqual([]);
});

test.each([true, false])(
  'a tag that hangs cold keeps its old zero output while its neighbours heat up, set point %s',
  (setpoint) => {
    const has = { reading: true, setpoint, output: true, running: true };
    const zones = [0, 1, 2].map((index) => zoneOfLog(index, { has }));
    const hangs = (outputPercent: number, midnight: number) =>
      zoneLog({
        recorded: (s, before) =>
          s.timeMs > MONDAY_MS + midnight * DAY_MS && before ? { ...before, timeMs: s.timeMs, outputPercent } : s,
      });
    const tagsAt = (outputPercent: number, midnight: number) => {
      const logs = [hangs(outputPercent, midnight), zoneLog({ seed: 2 }), zoneLog({ seed: 3 })];
      return factsOf(frozenRecord, evidenceOf(logs, { zones }))['tagFrozenCount'] ?? 0;
    };
    expect(tagsAt(0, 2)).toBe(1);
    expect(tagsAt(0, 1)).toBe(1); // and where nothing but this rest shows it cold
    expect(tagsAt(100, 2)).toBe(0); // a live loop that reads cold asks for all the heat there is: its input hangs
  },
);

const nothing = (s: MadeSample): MadeSample => ({
  ...s,
  ...{ degC: NaN, state: readingState.blank, setpointDegC: NaN, outputPercent: NaN },
});
const peers = [zoneLog({ seed: 2 }), zoneLog({ seed: 3 })];

test('cells that are empty in reading, set point and output together are missing rows; a reading alone is not', () => {
  const empty = zoneLog({ recorded: (s) => (isIn(s) ? nothing(s) : s) });
  const facts = factsOf(frozenRecord, evidenceOf([empty, ...peers]));
  expect(facts).toMatchObject({ gapCount: 1, ownGapCount: 1 });
  expect(facts['gapMinutes']).toBeCloseTo(180.5, 6);
  const readingOnly = zoneLog({ recorded: (s) => (isIn(s) ? { ...s, degC: NaN, state: readingState.blank } : s) });
  expect(ask(frozenRecord, evidenceOf([readingOnly, ...peers])).symptoms).toEqual([]);
});

test.each([
  ['rows', () => null],
  ['cells', nothing],
])('what is missing up to the end of the log is told: %s', (_, without) => {
  const lost = (seed: number) => zoneLog({ seed, recorded: (s) => (s.timeMs >= start ? without(s) : s) });
  const { symptoms } = ask(frozenRecord, evidenceOf([lost(1), ...peers]));
  expect(symptoms[0]!.facts).toMatchObject({ gapCount: 1, ownGapCount: 1 });
  expect(Math.abs(symptoms[0]!.startMs - start)).toBeLessThanOrEqual(60_000);
  expect(symptoms[0]!.endMs).toBeGreaterThan(MONDAY_MS + 4 * DAY_MS - 2 * 60_000);
  // All zones of a machine that end at once: its export ended there, or its recorder stopped.
  const all = evidenceOf([1, 2, 3].map(lost));
  expect(ask(frozenRecord, all).symptoms.filter(({ facts }) => facts['ownGapCount']! > 0)).toEqual([]);
  const machines = [0, 1, 2, 3].map((index) => zoneOfLog(index, { machine: index < 2 ? 'A' : 'B' }));
  const other = [lost(1), lost(2), zoneLog({ seed: 3 }), zoneLog({ seed: 4 })];
  if (without(zoneLog()[0]!) === null)
    expect(ask(frozenRecord, evidenceOf(other, { zones: machines })).symptoms).toEqual([]);
});

test('a stale tag in a coarse log, whose reading stood at that value while its loop still worked', () => {
  // In whole degrees and percent a settled reading stands for hours; over night its neighbours cool down.
  const whole = (s: MadeSample): MadeSample => ({
    ...s,
    degC: Math.round(s.degC),
    outputPercent: Math.round(s.outputPercent!),
  });
  const from = MONDAY_MS + 2 * DAY_MS + 20 * HOUR_MS;
  const stale = (s: MadeSample, before: MadeSample | undefined): MadeSample =>
    s.timeMs >= from && s.timeMs < from + 12 * HOUR_MS && before ? { ...before, timeMs: s.timeMs } : whole(s);
  const zones = [0, 1, 2].map((index) => zoneOfLog(index, { resolutionDegC: 1 }));
  const coarse = [2, 3].map((seed) => zoneLog({ seed, recorded: whole }));
  const { symptoms } = ask(frozenRecord, evidenceOf([zoneLog({ recorded: stale }), ...coarse], { zones }));
  expect(symptoms[0]!.facts).toMatchObject({ tagFrozenCount: 1, fileFrozenCount: 0 });
  expect(Math.abs(symptoms[0]!.startMs - from)).toBeLessThan(0.5 * HOUR_MS);
  expect(Math.abs(symptoms[0]!.endMs - from - 12 * HOUR_MS)).toBeLessThan(0.5 * HOUR_MS);
  const healthy = evidenceOf([zoneLog({ recorded: whole }), ...coarse], { zones });
  expect(ask(frozenRecord, healthy).symptoms).toEqual([]);
});

test('zones that are logged one after the other end each with its own log', () => {
  const middle = MONDAY_MS + 2 * DAY_MS;
  const before = zoneLog({ recorded: (s) => (s.timeMs < middle ? s : null) });
  const behind = [2, 3].map((seed) => zoneLog({ seed, recorded: (s) => (s.timeMs > middle + HOUR_MS ? s : null) }));
  expect(ask(frozenRecord, evidenceOf([before, ...behind])).symptoms).toEqual([]);
});
