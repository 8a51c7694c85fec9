import { describe, expect, it } from 'vitest';
import { rampHeights } from '../../../src/detect/shared/duty/ramp-heights.js';

const hours = (count: number, stepHours = 0.5) => Float64Array.from({ length: count }, (_, i) => i * stepHours);
const behind = (timeMs: Float64Array, onsetMs: number) => timeMs.findIndex((at) => at >= onsetMs);

function expectRamp(timeMs: Float64Array, power: number, onsetMs: number, endMs: number): void {
  const from = behind(timeMs, onsetMs);
  const column = rampHeights(timeMs, power, endMs)(onsetMs, from);
  const expected = timeMs.subarray(from).map((at) => ((at - onsetMs) / (endMs - onsetMs)) ** power);
  expect(column.subarray(from)).toEqual(expected);
}

describe('rampHeights', () => {
  it('goes from 0 at the onset to 1 at the end with the power of the time between', () => {
    const timeMs = Float64Array.of(0, 2, 4, 6, 8);
    const column = rampHeights(timeMs, 3 / 2, 10)(2, 1);
    expect(column[1]).toBe(0);
    expect(column[3]).toBeCloseTo(Math.SQRT1_2 ** 3, 12); // (4/8)^(3/2), by definition
  });

  it('gives every caller its own rows, power, onset and end, whatever was asked before', () => {
    for (const timeMs of [hours(40), hours(40, 0.25), hours(39)])
      for (const endMs of [25, 30])
        for (const power of [2 / 3, 3 / 2])
          for (const onsetMs of [3, 4.5, 3]) expectRamp(timeMs, power, onsetMs, endMs);
  });

  it('goes on when more onsets are tried than columns are kept', () => {
    const timeMs = hours(600);
    const heights = rampHeights(timeMs, 2 / 3, 310);
    for (const round of [1, 2])
      for (let onset = 0; onset < 300; onset++) {
        const from = behind(timeMs, onset);
        expect(heights(onset, from)[599], `onset ${onset}, round ${round}`).toBe(
          ((299.5 - onset) / (310 - onset)) ** (2 / 3),
        );
      }
  });
});
