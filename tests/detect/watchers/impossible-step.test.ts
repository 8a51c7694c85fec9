import { expect, test } from 'vitest';
import { impossibleStep } from '../../../src/detect/watchers/impossible-step.js';
import { makeZone } from '../../make/blocks.js';
import { readings, watch } from '../../make/watch.js';

const everySecond = makeZone({ samplingMs: 1000 });
const everyMinute = makeZone({ samplingMs: 60_000 });
const heatUp = Array.from({ length: 400 }, (_, s) => 20 + 0.4 * s);

test('finds the one second in which the wire opened', () => {
  const values = [...heatUp, ...Array.from({ length: 100 }, (_, i) => (i === 50 ? 850 : 180))];
  const steps = watch(impossibleStep, everySecond, readings(values, 1));
  expect(steps.map(({ facts }) => [facts['fromDegC'], facts['toDegC']])).toEqual([
    [180, 850],
    [850, 180],
  ]);
  expect(steps[0]!.facts['limitDegCPerS']).toBeCloseTo(2.5 * 0.4, 6); // 2.5 × the made heating rate
});

test('stays silent on heat-up and on cooling as fast as the zone itself shows them', () => {
  const cooling = Array.from({ length: 400 }, (_, s) => 20 + 160 * Math.exp(-s / 300));
  expect(watch(impossibleStep, everySecond, readings([...heatUp, ...cooling], 1))).toEqual([]);
});

test('stays silent on a heat-up that a slow log shows as two or three samples', () => {
  const day = [...Array<number>(20).fill(20), 85, 155, 180, ...Array<number>(30).fill(180), 140, 100, 70, 45, 30, 22];
  const values = [...day, ...day, ...day, ...day];
  expect(watch(impossibleStep, everyMinute, readings(values, 60))).toEqual([]);
});

test('stays silent on a heat-up within one sample when full output and set point say so, not otherwise', () => {
  const values = [...Array<number>(20).fill(20), 178, ...Array<number>(20).fill(180)];
  const driven = readings(values, 60, { outputPercent: 100, setpointDegC: 180 });
  const idle = readings(values, 60, { outputPercent: 0, setpointDegC: 180 });
  expect(watch(impossibleStep, everyMinute, driven)).toEqual([]);
  expect(watch(impossibleStep, everyMinute, idle)).toHaveLength(1);
});

test('stays silent on a new set point that a slow log shows as one step, not on the same step while it stands', () => {
  const at = (setpointDegC: number, degC: number) => ({ setpointDegC, degC });
  const rows = [...Array.from({ length: 20 }, () => at(164, 164)), at(181, 183), at(181, 181)];
  const later = [...rows, ...Array.from({ length: 20 }, () => at(181, 181)), at(181, 164), at(181, 181)];
  const told = (of: typeof rows) =>
    watch(
      impossibleStep,
      makeZone({ samplingMs: 180_000 }),
      of.map((row, i) => ({
        ...readings([row.degC], 180, { outputPercent: 40, setpointDegC: row.setpointDegC })[0]!,
        timeMs: i * 180_000,
      })),
    ).map(({ facts }) => facts['jumpDegC']);
  expect(told(rows)).toEqual([]);
  expect(told(later)).toEqual([-17, 17]);
});

test('stays silent on starts and changes of level in a log too slow for both; a short that comes and goes is told', () => {
  const cooling = Array.from({ length: 60 }, (_, i) => 20 + 150 * Math.exp(-(i + 1) / 10));
  const day = [...Array<number>(20).fill(20), 168, ...Array<number>(20).fill(170)];
  const slow = makeZone({ samplingMs: 180_000 });
  const told = (values: readonly number[]) =>
    watch(impossibleStep, slow, readings(values, 180)).map(({ facts }) => facts['jumpDegC']);
  const week = [...day, ...cooling, ...day, ...cooling, ...day, ...cooling];
  expect(told([...week, ...day, ...cooling])).toEqual([]);
  expect(told([...week, ...Array<number>(20).fill(140), ...Array<number>(9).fill(170), ...cooling])).toEqual([]);
  expect(told([...week, ...day, 22, 22, 170, 170, 170, 170, 22, 170]).filter((jump) => jump! < 0)).toHaveLength(2);
});

test('spikes of two samples that climb do not widen the limit for smaller ones', () => {
  const rest = Array<number>(20).fill(180);
  const climbing = [...rest, 200, 220];
  const values = [...climbing, ...climbing, ...climbing, ...climbing, ...climbing, ...rest, 195, ...rest];
  const steps = watch(impossibleStep, everyMinute, readings(values, 60));
  // Two ways out and one back of each climbing spike, and both ways of the small one.
  expect(steps.map(({ facts }) => facts['jumpDegC'])).toEqual([
    ...Array.from({ length: 5 }, () => [20, 20, -40]).flat(),
    15,
    -15,
  ]);
});

test('stays silent on a loop that hunts so fast that a full swing is four samples', () => {
  const swing = [0, 15, 0, -15];
  const values = Array.from({ length: 200 }, (_, i) => 180 + swing[i % 4]!);
  expect(watch(impossibleStep, everyMinute, readings(values, 60))).toEqual([]);
});

test('cannot tell from one reading and says nothing across a hole', () => {
  expect(watch(impossibleStep, everySecond, readings([180], 1))).toEqual([]);
  const [a, b] = readings([20, 180], 3600);
  expect(watch(impossibleStep, everySecond, [a!, b!])).toEqual([]);
});
