import { describe, expect, test } from 'vitest';
import { Random } from '../make/random.js';

const draws = (random: Random, count: number): number[] => Array.from({ length: count }, () => random.next());

describe('Random', () => {
  test('the same seed gives the same numbers, another seed others', () => {
    expect(draws(new Random(7), 50)).toEqual(draws(new Random(7), 50));
    expect(draws(new Random(7), 50)).not.toEqual(draws(new Random(8), 50));
  });

  test('a fork does not depend on how much another fork draws', () => {
    const a = new Random(3);
    const b = new Random(3);
    draws(a.fork('noise'), 1000);
    b.fork('noise');
    expect(draws(a.fork('air'), 5)).toEqual(draws(b.fork('air'), 5));
  });

  test('uniform numbers fill [0, 1) evenly: chi-square over 20 bins stays under its 99.9 % point', () => {
    const bins = new Array<number>(20).fill(0);
    for (const value of draws(new Random(11), 20_000)) bins[Math.floor(value * 20)]!++;
    const chiSquare = bins.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
    // 99.9 % point of chi-square with 19 degrees of freedom: 43.82 (NIST/SEMATECH table 1.3.6.7.4).
    expect(chiSquare).toBeLessThan(43.82);
  });

  test('normal numbers have mean 0, deviation 1 and 95 % within 1.96', () => {
    const random = new Random(5);
    const values = Array.from({ length: 20_000 }, () => random.gauss());
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const deviation = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
    const inside = values.filter((value) => Math.abs(value) < 1.96).length / values.length;
    expect(mean).toBeCloseTo(0, 1);
    expect(deviation).toBeCloseTo(1, 1);
    expect(inside).toBeCloseTo(0.95, 2);
  });

  test('weights are kept: a key with three quarters of the weight comes three times in four', () => {
    const random = new Random(9);
    const picks = Array.from({ length: 8000 }, () => random.weighted({ often: 3, seldom: 1 }));
    expect(picks.filter((key) => key === 'often').length / 8000).toBeCloseTo(0.75, 1);
  });
});
