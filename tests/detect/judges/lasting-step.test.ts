import { expect, test } from 'vitest';
import { lastingStep } from '../../../src/detect/judges/lasting-step.js';
import { ask, factsOf } from '../../make/ask.js';
import type { FaultPlan } from '../../make/faults/fault.js';
import { makePlant } from '../../make/make-plant.js';
import { plantEvidence } from '../../make/plant-evidence.js';
import { plainFault, smallPlantParameters, type SmallPlantWish } from '../../make/small-plant.js';

const onsetDays = 3.3;
const onsetMs = Date.UTC(2026, 8, 7) + onsetDays * 86_400_000;

/** Five zones that are hot day and night, so that no cold soak tells anything. */
const plant = (wish: SmallPlantWish) =>
  plantEvidence(makePlant(smallPlantParameters({ zones: 5, days: 6, everyS: 15, pattern: '24x7', seed: 4, ...wish })));
const jump = (zone: number, finalDegC: number, plan: Partial<FaultPlan> = {}): FaultPlan =>
  plainFault('sensor_drift', zone, onsetDays, { finalDegC, spanS: 3600 }, { shape: 'step', ...plan });

test.each([8, -6])('tells size and time of a jump of %d °C that the loop takes back, and the duty agrees', (degC) => {
  const evidence = plant({ faults: [jump(1, degC)] });
  const [symptom] = ask(lastingStep, evidence, 1).symptoms;
  expect(Math.abs(symptom!.facts['offsetDegC']! - degC)).toBeLessThan(0.1 * Math.abs(degC));
  expect(Math.abs(symptom!.startMs - onsetMs)).toBeLessThanOrEqual(60_000);
  // Newton's law of cooling: the duty goes with T − T_room, within what is stated of sizes by the duty.
  expect(symptom!.facts['hotOffsetDegC']! / degC).toBeGreaterThan(0.7);
  expect(symptom!.facts['hotOffsetDegC']! / degC).toBeLessThan(2);
  for (const zone of [0, 2, 3, 4]) expect(ask(lastingStep, evidence, zone).symptoms).toEqual([]);
});

test('counts the zones of a card that jump in the same moment', () => {
  const evidence = plant({ faults: [jump(2, 8), jump(3, 8)] });
  expect(factsOf(lastingStep, evidence, 2)['togetherCount']).toBe(1);
  expect(factsOf(lastingStep, evidence, 3)['togetherCount']).toBe(1);
});

test('is silent on a jump that is taken back, on a contact that comes and goes and on a heater that loses half', () => {
  const fixedS = (onsetDays + 0.2) * 86_400;
  expect(ask(lastingStep, plant({ faults: [jump(1, 8, { fixedS })] }), 1).symptoms).toEqual([]);
  for (const kind of ['wire_contact', 'heater_half', 'channel_frozen', 'wire_short'] as const) {
    const evidence = plant({ faults: [plainFault(kind, 1, onsetDays)] });
    expect(ask(lastingStep, evidence, 1).symptoms, kind).toEqual([]);
  }
});

test('without output a jump is told that no heater could make, and a smaller one is not', () => {
  const alone: SmallPlantWish = { format: { has: 'pvonly' } };
  expect(ask(lastingStep, plant({ ...alone, faults: [jump(1, 15)] }), 1).symptoms).toHaveLength(1);
  expect(ask(lastingStep, plant({ ...alone, everyS: 60, faults: [jump(1, 3)] }), 1).symptoms).toEqual([]);
});

test('cannot tell where the last digit hides the step', () => {
  const evidence = plant({ everyS: 60, format: { digits: 0 } });
  expect(ask(lastingStep, evidence, 1).unable).toMatch(/last digit/);
});
