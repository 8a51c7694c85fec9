import { expect, test } from 'vitest';
import { fitFirstOrderStep } from '../../src/maths/first-order-step.js';
import { Random } from '../make/random.js';

const t = Array.from({ length: 150 }, (_, i) => -20 + i * 2);
const answer = (at: number) => 20 + 60 * -Math.expm1(-Math.max(0, at - 17) / 45);

test('gives back start, change, dead time and time constant', () => {
  const fit = fitFirstOrderStep(t, t.map(answer));
  expect(fit.start).toBeCloseTo(20, 1);
  expect(fit.change).toBeCloseTo(60, 1);
  expect(Math.abs(fit.deadTime - 17)).toBeLessThan(0.5);
  expect(Math.abs(fit.tau - 45)).toBeLessThan(1);
  expect(fit.isResolved).toBe(true);
});

test('bears noise and gaps', () => {
  const random = new Random(14);
  const y = t.map((at, i) => (i % 7 === 0 ? NaN : answer(at) + 0.5 * random.gauss()));
  const fit = fitFirstOrderStep(t, y);
  expect(Math.abs(fit.change - 60)).toBeLessThan(1);
  expect(Math.abs(fit.deadTime - 17)).toBeLessThan(2);
  expect(Math.abs(fit.tau - 45)).toBeLessThan(4);
  expect(fit.residualSd).toBeGreaterThan(0.4);
  expect(fit.residualSd).toBeLessThan(0.6);
});

test('cannot tell from a level or too few points', () => {
  expect(
    fitFirstOrderStep(
      t,
      t.map(() => 5),
    ).isResolved,
  ).toBe(false);
  expect(fitFirstOrderStep([0, 1], [1, 2]).tau).toBeNaN();
});
