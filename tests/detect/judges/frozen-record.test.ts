import { expect, test } from 'vitest';
import { frozenRecord } from '../../../src/detect/judges/frozen-record.js';
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
