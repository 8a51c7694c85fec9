import { expect, test } from 'vitest';
import { readingMirrored } from '../../../src/detect/judges/reading-mirrored.js';
import { ask, factsOf } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import { plantEvidence } from '../../make/plant-evidence.js';
import { plainFault, smallPlant } from '../../make/small-plant.js';
import { DAY_MS, evidenceOf, HOUR_MS, MINUTE_MS, MONDAY_MS, zoneLog, zoneOfLog } from '../../make/zone-log.js';

const SWAPPED_MS = MONDAY_MS + 2 * DAY_MS;
const TERMINALS_DEG_C = 25;
/** From Wednesday on the leads are swapped: terminals less what the tip is above them, and a controller that gives all. */
const mirrored = (s: MadeSample): MadeSample => {
  if (s.timeMs < SWAPPED_MS) return s;
  const minute = ((s.timeMs - MONDAY_MS) % DAY_MS) / MINUTE_MS;
  const isHeating = minute >= 360 && minute < 1320;
  const aboveK = isHeating ? 160 * (1 - Math.exp(-(minute - 360) / 12)) + Math.sin(minute) : 0;
  return { ...s, degC: Number((TERMINALS_DEG_C - aboveK).toFixed(1)), outputPercent: isHeating ? 100 : 0 };
};
const zones = (sensor: string | null) => [0, 1, 2].map((index) => zoneOfLog(index, { sensor }));
const others = [2, 3].map((seed) => zoneLog({ seed }));

test('tells a thermocouple with swapped leads: the reading falls as the zone heats', () => {
  const evidence = evidenceOf([zoneLog({ recorded: mirrored }), ...others], { zones: zones('tc-k') });
  const [symptom] = ask(readingMirrored, evidence).symptoms;
  expect(symptom!.facts['belowRoomDegC']!).toBeGreaterThan(140);
  expect(symptom!.facts['outputPercent']).toBe(100);
  expect(Math.abs(symptom!.startMs - (SWAPPED_MS + 6 * HOUR_MS))).toBeLessThan(HOUR_MS / 2);
  for (const zone of [1, 2]) expect(ask(readingMirrored, evidence, zone).symptoms).toEqual([]);
});

test('tells swapped leads of a made plant, from the day they were put back so', () => {
  const plant = smallPlant({ sensor: 'tc-k', wires: 2, faults: [plainFault('leads_swapped', 0, 0.9)] });
  const evidence = plantEvidence(plant);
  expect(ask(readingMirrored, evidence).symptoms).toHaveLength(1);
  for (const zone of [1, 2, 3]) expect(ask(readingMirrored, evidence, zone).symptoms).toEqual([]);
});

test('is silent on a resistance sensor, on a short that gets there at once, and on a cold hall', () => {
  const rtd = evidenceOf([zoneLog({ recorded: mirrored }), ...others], { zones: zones('pt100') });
  expect(ask(readingMirrored, rtd).symptoms).toEqual([]);
  const shorted = zoneLog({ recorded: (s) => (s.timeMs > SWAPPED_MS + 9 * HOUR_MS ? { ...s, degC: -40 } : s) });
  expect(factsOf(readingMirrored, evidenceOf([shorted, ...others], { zones: zones('tc-k') }))).toEqual({});
  const cold = zoneLog({ recorded: (s) => (s.degC < 30 ? { ...s, degC: s.degC - 30, outputPercent: 0 } : s) });
  expect(factsOf(readingMirrored, evidenceOf([cold, ...others], { zones: zones(null) }))).toEqual({});
});

test('is silent on a dead zone in a room cooler than the machine told when it stood', () => {
  const evidence = evidenceOf(
    [
      zoneLog({ recorded: (s) => ({ ...s, degC: 20 + Math.sin(s.timeMs / 6e5), outputPercent: 100 }) }),
      ...others.map((log) => log.map((s) => ({ ...s, degC: s.degC! + 18 }))),
    ],
    {
      zones: zones('tc-k'),
    },
  );
  expect(ask(readingMirrored, evidence).symptoms).toEqual([]);
});

test('cannot tell where nothing shows that it is heated', () => {
  const zone = zoneOfLog(0, { sensor: 'tc-k', has: { reading: true, setpoint: false, output: false, running: false } });
  expect(ask(readingMirrored, evidenceOf([zoneLog()], { zones: [zone] })).unable).toMatch(/nothing shows/);
});
