import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addColumn, partialOut, restWithColumn } from '../../src/maths/added-column.js';
import { fitLinear } from '../../src/maths/linear-model.js';
import { tailColumns } from '../../src/maths/tail-columns.js';
import { Random } from '../make/random.js';

const rows = 40;
const hourMs = 3_600_000;

function madeModel(seed: number) {
  const random = new Random(seed);
  const draw = () => Float64Array.from({ length: rows }, () => random.next() - 0.5);
  let atMs = 0;
  const timeMs = Float64Array.from({ length: rows }, () => (atMs += (0.2 + random.next()) * hourMs));
  const columns = [new Float64Array(rows).fill(1), draw(), draw()];
  return { timeMs, columns, y: draw(), weights: Float64Array.from({ length: rows }, () => 0.1 + random.next()) };
}

describe('addColumn', () => {
  it('gives the coefficient of the whole model (Frisch & Waugh 1933)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const { columns, y, weights } = madeModel(seed);
        const added = Float64Array.from({ length: rows }, (_, i) => Math.sin(i + seed));
        const whole = fitLinear([...columns, added], y, weights);
        expect(addColumn(partialOut(columns, y, weights), added).coefficient).toBeCloseTo(whole.coefficients[3]!, 9);
      }),
      { numRuns: 50 },
    );
  });

  it('says NaN for a column that the model holds already', () => {
    const { columns, y, weights } = madeModel(7);
    expect(addColumn(partialOut(columns, y, weights), columns[1]!).coefficient).toBeNaN();
  });
});

describe('restWithColumn', () => {
  it('gives to the last bit what the model with that column leaves, ridge and all', () => {
    for (let seed = 1; seed <= 50; seed++) {
      const { columns, y, weights } = madeModel(seed);
      const added = columns[1]!.map((value, i) => value + 0.3 * Math.sin(i + seed));
      const ridge = [0, 0.5, 0];
      const whole = partialOut([...columns, added], y, weights, ridge).rest;
      const rest = restWithColumn(partialOut(columns, y, weights, ridge), added);
      expect([...rest, 0]).toEqual([...whole]); // the whole model has a ridge row more, which is empty
    }
  });

  it('leaves what it was for a column that the model holds already', () => {
    const { columns, y, weights } = madeModel(7);
    const part = partialOut(columns, y, weights);
    expect(restWithColumn(part, columns[1]!)).toEqual(part.rest);
  });
});

describe('tailColumns', () => {
  const laws = [
    ['a step', { decayPerMs: 0 }, () => 1],
    ['a decay', { decayPerMs: 1 / (4 * hourMs) }, (behindMs: number) => Math.exp(-behindMs / (4 * hourMs))],
    ['a line', 'line', (behindMs: number) => behindMs],
  ] as const;

  it.each(laws)('tries %s at any time with the answers of addColumn', (_name, law, heightAt) => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.double({ min: 0.2, max: 0.95, noNaN: true }), (seed, share) => {
        const { timeMs, columns, y, weights } = madeModel(seed);
        const part = partialOut(columns, y, weights, [0, 0.5, 0]);
        const onsetMs = share * timeMs[rows - 1]!;
        const from = timeMs.findIndex((at) => at >= onsetMs);
        const column = timeMs.map((at) => (at >= onsetMs ? heightAt(at - onsetMs) : 0));
        const slow = addColumn(part, column, from);
        const quick = tailColumns(part, timeMs, law)(onsetMs, from);
        expect(quick.gain).toBeCloseTo(slow.gain, 8);
        expect(quick.information / slow.information).toBeCloseTo(1, 8);
        expect(quick.coefficient / slow.coefficient).toBeCloseTo(1, 6);
      }),
      { numRuns: 100 },
    );
  });
});
