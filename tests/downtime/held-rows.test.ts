import { expect, test } from 'vitest';
import { attributeDowntime } from '../../src/downtime/attribute-downtime.js';
import { held, withHeldRows } from '../../src/downtime/held-rows.js';
import { heatedMinutes, heatedSpans, machinesOf } from '../../src/downtime/machine-minutes.js';
import { heatedPlant, sound } from '../make/digests.js';

const minutesOf = (everyMinutes: number, hasRunning: boolean) => {
  const evidence = heatedPlant(sound(5), { days: 6, everyMinutes });
  const zones = evidence.digest.zones.map((zone) =>
    hasRunning ? zone : { ...zone, runningShare: zone.runningShare.map(() => NaN) },
  );
  const { alarms, stops, plant } = evidence;
  const digest = { ...evidence.digest, zones };
  const faults = zones.map(() => []);
  return attributeDowntime({ zones: evidence.zones, digest, alarms, stops, faults, plant }).findings;
};

test.each([2, 5])('a log with a reading every %i minutes loses about as much time as one of every minute', (every) => {
  const [quick, slow] = [minutesOf(1, true), minutesOf(every, true)];
  expect(quick.unknownMinutes).toBeGreaterThan(100);
  expect(Math.abs(slow.unknownMinutes / quick.unknownMinutes - 1)).toBeLessThan(0.15);
  expect(Math.abs(slow.plannedMinutes / quick.plannedMinutes - 1)).toBeLessThan(0.05);
});

test.each([1, 2, 5])('sees when the heats go on and off in a log with a reading every %i minutes', (everyMinutes) => {
  const { zones, digest } = heatedPlant(sound(5), { days: 3, everyMinutes });
  const [machine] = machinesOf(zones);
  const minutes = heatedMinutes(machine!, withHeldRows(digest, zones), 0.5);
  const spans = heatedSpans(minutes, digest, 3_600_000);
  // On from 6 to 22 o'clock.
  expect(spans.map(({ isStartTold, isEndTold }) => [isStartTold, isEndTold])).toEqual(spans.map(() => [true, true]));
  expect(spans.map(({ start, end }) => (end - start) / 3_600_000)).toEqual([16, 16, 16]);
});

test('a value holds for some places, and not where it is known to be none', () => {
  const column = Float32Array.of(1, NaN, NaN, 2, NaN, NaN, NaN);
  expect([...held(column, 2)]).toEqual([1, 1, 1, 2, 2, 2, NaN]);
  expect([...held(column, 2, (place) => place === 4)]).toEqual([1, 1, 1, 2, NaN, NaN, NaN]);
});
