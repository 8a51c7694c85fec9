import { describe, expect, it } from 'vitest';
import {
  learnedRates,
  learnMoves,
  startHeatingLimit,
  takeMoves,
  type HeatingLimit,
} from '../../../src/detect/shared/blocks/heating-limit.js';
import type { Strip } from '../../../src/detect/shared/blocks/strip.js';
import { Random } from '../../make/random.js';

const rows = 600;

/** A noisy zone that heats up now and then, sampled unevenly, with bad readings in between. */
function stripOf(random: Random, noiseDegC: number): Strip {
  const timeMs = new Float64Array(rows);
  const degC = new Float64Array(rows);
  let atMs = 0;
  let level = 20;
  for (let i = 0; i < rows; i++) {
    atMs += random.next() < 0.02 ? 60_000 : 500 + 1000 * random.next();
    if (random.next() < 0.2) level += 3 * (random.next() - 0.4);
    timeMs[i] = atMs;
    degC[i] = random.next() < 0.02 ? NaN : level + noiseDegC * random.next();
  }
  const none = new Float64Array(rows).fill(NaN);
  return { timeMs, degC, setpointDegC: none, outputPercent: none, running: none, from: 0, to: rows };
}

function shortestOf({ timeMs }: Strip): number {
  return timeMs.reduce((least, at, i) => (i === 0 ? least : Math.min(least, at - timeMs[i - 1]!)), Infinity);
}

const empty = (stride: number): HeatingLimit => ({ stride, longestMs: 60_000, heating: [], cooling: [] });

describe('learnMoves', () => {
  it('teaches the same when moves that earlier blocks outdo are passed over', () => {
    let raised = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const random = new Random(seed);
      const stride = 1 + Math.floor(10 * random.next());
      const noiseDegC = seed % 2 === 0 ? 0 : 2 * random.next();
      const known = empty(stride);
      learnMoves(known, stripOf(random, noiseDegC));
      const [plain, quick] = [structuredClone(known), structuredClone(known)];
      const strip = stripOf(random, noiseDegC);
      const [all, some] = [empty(stride), empty(stride)];
      learnMoves(all, strip);
      takeMoves(plain, all);
      learnMoves(some, strip, { ...learnedRates(quick), shortestMs: 2 * stride * shortestOf(strip) });
      takeMoves(quick, some);
      expect(quick, `seed ${seed}`).toEqual(plain);
      if (plain.heating[0] !== known.heating[0]) raised++;
    }
    expect(raised).toBeGreaterThan(20); // or there was nothing to learn
  });

  it('learns the third fastest of the moves that heat sustains', () => {
    const zone = startHeatingLimit({ samplingMs: 10_000 } as Parameters<typeof startHeatingLimit>[0]);
    expect(zone.stride).toBe(1);
    const degC = Float64Array.from({ length: 40 }, (_, i) => 20 + 2 * i); // 2 °C in 10 s, all along
    const timeMs = degC.map((_, i) => i * 10_000);
    const none = degC.map(() => NaN);
    learnMoves(zone, { timeMs, degC, setpointDegC: none, outputPercent: none, running: none, from: 0, to: 40 });
    expect(learnedRates(zone)).toEqual({ heatingDegCPerS: 0.2, coolingDegCPerS: 0 });
  });
});
