import { expect, test } from 'vitest';
import type { LogColumn, TagBatch } from '../../src/model/log-file.js';
import type { SampleBlock } from '../../src/model/sample-block.js';
import type { Zone } from '../../src/model/zone.js';
import { emptyBatch } from '../../src/read/rows/long-reader.js';
import { AlarmFlags } from '../../src/normalise/events/alarm-flags.js';
import { OrderNote } from '../../src/normalise/order-note.js';
import { LearntCodes } from '../../src/normalise/screen.js';
import { TagBlocks, type HoldRule } from '../../src/normalise/tag-blocks.js';
import { ZonePourer } from '../../src/normalise/zone-pourer.js';

const secondMs = 1000;
const minuteMs = 60_000;
const hourMs = 3_600_000;

const tag = (index: number, role: LogColumn['role'], zone: number): LogColumn => ({
  ...{ index, name: `tag ${index}`, role, zones: [zone], unit: role === 'output' ? null : 'degC' },
  ...{ scale: 1, above: 0, why: '' },
});
const tags = [tag(0, 'reading', 0), tag(1, 'setpoint', 0), tag(2, 'reading', 1)];

const rule: HoldRule = {
  ...{ stepMs: 10 * secondMs, holdMs: 24 * hourMs, silenceMs: 10 * minuteMs },
  isChangeLogged: [true, true, true],
};

interface Sample {
  readonly ms: number;
  readonly degC: number;
  readonly setpointDegC: number;
}

/** Pours entries (seconds, tag, value) and gives the samples of both zones. */
function pour(entries: readonly (readonly [number, number, number])[], hold: HoldRule | null): Sample[][] {
  const samples: Sample[][] = [[], []];
  const block = ({ zone, length, timeMs, readingDegC, setpointDegC }: SampleBlock): void => {
    for (let i = 0; i < length; i++)
      samples[zone]!.push({ ms: timeMs[i]!, degC: readingDegC[i]!, setpointDegC: setpointDegC[i]! });
  };
  const zones = [0, 1].map((index): Zone => ({
    ...{ index, name: `Zone ${index}`, machine: 'M', sensor: null, wires: null, card: null, heaterW: null },
    ...{ toleranceClass: null, has: { reading: true, setpoint: true, output: false, running: false } },
    ...{ samplingMs: rule.stepMs, resolutionDegC: 0.1 },
  }));
  const learnt = new LearntCodes();
  const pourers = zones.map((zone) => new ZonePourer(zone, { unit: 'degC', scale: 1 }, { block }, learnt, 150));
  const order = new OrderNote();
  const orders = tags.map(() => order);
  const blocks = new TagBlocks(tags, hold, pourers, orders, new AlarmFlags([]));
  const batch: TagBatch = emptyBatch(entries.length);
  entries.forEach(([seconds, number, value], i) => {
    batch.clockMs[i] = seconds * secondMs;
    batch.tag[i] = number;
    batch.value[i] = value;
    batch.line[i] = i + 2;
  });
  blocks.take(batch, 0, entries.length);
  blocks.finish();
  return samples;
}

/** Zone 1 is written every 30 s from `from` to `to` seconds. */
const lively = (from: number, to: number): [number, number, number][] =>
  Array.from({ length: Math.ceil((to - from) / 30) }, (_, i) => [from + 30 * i, 2, 100 + (i % 2) / 10]);
const longestStepMs = (samples: readonly Sample[]): number =>
  Math.max(...samples.slice(1).map(({ ms }, i) => ms - samples[i]!.ms));

test('a reading that does not change stands as long as the log writes others', () => {
  const [still, moving] = pour([[0, 0, 21.5], ...lively(0, 6 * 3600), [6 * 3600, 0, 21.6]], rule);
  for (const samples of [still!, moving!]) expect(longestStepMs(samples)).toBe(rule.stepMs);
  expect(still!.filter(({ degC }) => degC === 21.5)).toHaveLength(6 * 360);
  expect(still!.at(-1)).toMatchObject({ ms: 6 * hourMs, degC: 21.6 });
});

test('no reading stands longer than the limit', () => {
  const [still] = pour([[0, 0, 21.5], ...lively(0, 30 * 3600)], rule);
  expect(still!.at(-1)!.ms).toBe(rule.holdMs);
  const [short] = pour([[0, 0, 21.5], ...lively(0, 3600)], { ...rule, holdMs: 15 * minuteMs });
  expect(short!.at(-1)!.ms).toBe(15 * minuteMs);
});

test('when nothing is written at all, everything ends, and only what is written again goes on', () => {
  const endMs = (3600 - 30) * secondMs;
  const again = 3 * 3600;
  const [still, moving] = pour([[0, 0, 21.5], ...lively(0, 3600), ...lively(again, again + 3600)], rule);
  expect(still!.at(-1)!.ms).toBe(endMs + rule.silenceMs);
  expect(longestStepMs(moving!)).toBe(again * secondMs - (endMs + rule.silenceMs));
  const [back] = pour([[0, 0, 21.5], ...lively(0, 3600), ...lively(again, again + 600), [again + 600, 0, 22]], rule);
  const gapMs = (again + 600) * secondMs - (endMs + rule.silenceMs);
  expect(longestStepMs(back!)).toBe(gapMs);
});

test('a set point stands for days in a log of changes, and for one day in any other', () => {
  const days: [number, number, number][] = [[0, 1, 180], ...lively(0, 3 * 86_400)];
  const readings = lively(0, 3 * 86_400).map(([s, , value]): [number, number, number] => [s, 0, value]);
  const all = [...days, ...readings].sort((a, b) => a[0] - b[0]);
  const lastSetpoint = (hold: HoldRule | null): number =>
    pour(all, hold)[0]!.findLast(({ setpointDegC }) => setpointDegC === 180)!.ms;
  expect(lastSetpoint(rule)).toBeGreaterThan(3 * 24 * hourMs - minuteMs);
  expect(lastSetpoint(null)).toBe(24 * hourMs);
});

test('a zone of a log that writes every value is not held beside one of changes', () => {
  const ordinary = lively(0, 3600);
  const [changes, plain] = pour([[0, 0, 21.5], [600, 0, 21.6], ...ordinary].sort((a, b) => a[0]! - b[0]!) as never, {
    ...rule,
    isChangeLogged: [true, true, false],
  });
  expect(plain!.map(({ ms }) => ms)).toEqual(ordinary.map(([s]) => s * secondMs));
  // Another log that goes on says nothing of this one.
  expect(changes!.at(-1)!.ms).toBe(600 * secondMs + rule.silenceMs);
});
