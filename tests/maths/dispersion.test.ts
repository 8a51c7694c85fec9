import { expect, test } from 'vitest';
import { burstiness, dispersion } from '../../src/maths/dispersion.js';
import { Random } from '../make/random.js';

// Deaths by horse kick, 10 Prussian corps over 20 years (Bortkiewicz 1898): 109 65 22 3 1 corps-years with 0 … 4 deaths;
// mean 0.61, variance 0.61.
test('horse kicks come by chance', () => {
  const counts = [109, 65, 22, 3, 1].flatMap((years, deaths) => new Array<number>(years).fill(deaths));
  const { index, pHigher, count } = dispersion(counts);
  expect(count).toBe(200);
  expect(index).toBeCloseTo(0.611 / 0.61, 3);
  expect(pHigher).toBeGreaterThan(0.3);
  expect(pHigher).toBeLessThan(0.7);
});

test('p of chance counts is small as often as it should be', () => {
  const random = new Random(15);
  const poisson = () => {
    let events = -1;
    for (let sum = 0; sum < 2; sum += random.exponential(1)) events++;
    return events;
  };
  const ps = Array.from({ length: 500 }, () => dispersion(Array.from({ length: 40 }, poisson)).pHigher);
  expect(ps.filter((p) => p < 0.1).length / 500).toBeGreaterThan(0.06); // binomial sd 0.013
  expect(ps.filter((p) => p < 0.1).length / 500).toBeLessThan(0.14);
});

test('bursts stand out', () => {
  expect(dispersion([0, 0, 0, 12, 0, 0, 0, 9, 0, 0]).pHigher).toBeLessThan(1e-6);
});

test('burstiness: a clock −1, chance near 0, bursts above (Goh & Barabási 2008)', () => {
  const random = new Random(16);
  let now = 0;
  const chance = Array.from({ length: 5000 }, () => (now += random.exponential(3)));
  expect(burstiness([0, 5, 10, 15])).toBe(-1);
  expect(Math.abs(burstiness(chance))).toBeLessThan(0.05);
  expect(burstiness([0, 1, 2, 1000, 1001, 1002, 5000, 5001])).toBeGreaterThan(0.3);
});

test('too little data', () => {
  expect(dispersion([3]).index).toBeNaN();
  expect(dispersion([0, 0, 0]).pHigher).toBeNaN();
  expect(burstiness([1, 2])).toBeNaN();
  expect(burstiness([4, 4, 4])).toBeNaN();
});
