import { describe, expect, test } from 'vitest';
import { fromDegC, toDegC } from '../../src/normalise/degrees.js';
import { LearntCodes, ReadingScreen } from '../../src/normalise/screen.js';
import { readingState as state } from '../../src/model/sample-block.js';

const degF = { unit: 'degF', scale: 1 } as const;
const degCelsius = { unit: 'degC', scale: 1 } as const;

function screened(
  raw: readonly number[],
  column: { unit: 'degC' | 'degF'; scale: number } = degCelsius,
  learnt = new LearntCodes(),
  stepMs = 10_000,
): number[] {
  const screen = new ReadingScreen((value) => fromDegC(value, column), learnt, stepMs, 120);
  const out = new Uint8Array(raw.length);
  screen.take(
    raw.length,
    Float64Array.from(raw, (_, i) => i * stepMs),
    Float64Array.from(raw, (value) => toDegC(value, column)),
    null,
    out,
  );
  return [...out];
}

describe('codes, not temperatures', () => {
  // 16-bit ends: two's complement arithmetic; 850 °C: end of IEC 60751; 870 °C: card range end, common practice.
  test.each([850, 870, 3276.7, 32767, 999.9, 9999, 65535])('%s is above scale', (code) => {
    expect(screened([150, 150.2, code, code, 150.1])).toEqual([0, 0, state.aboveScale, state.aboveScale, 0]);
  });
  test.each([-200, -242, -3276.8, -32768])('%s is below scale', (code) => {
    expect(screened([150, 150.2, code, code, 150.1])).toEqual([0, 0, state.belowScale, state.belowScale, 0]);
  });
  test('in °F: 1562, 1598 and -328', () => {
    expect(screened([302, 1562, 302.4, 1598, 302, -328, 302], degF)).toEqual([
      0,
      state.aboveScale,
      0,
      state.aboveScale,
      0,
      state.belowScale,
      0,
    ]);
  });
  test('a zero that no cooling explains is a restart, and below scale when it stays', () => {
    expect(screened([150, 150, 0, 0, 150])).toEqual([0, 0, state.restartZero, state.restartZero, 0]);
    const stays = screened([150, ...new Array<number>(100).fill(0)]);
    expect(stays[1]).toBe(state.restartZero);
    expect(stays.at(-1)).toBe(state.belowScale);
  });
  test('a number in no table is learnt when heat cannot reach it and it repeats exactly, and then holds for other zones', () => {
    const learnt = new LearntCodes();
    expect(screened([150, 150.1, 613.4, 613.4, 613.4, 613.4, 150], degCelsius, learnt)).toEqual([0, 0, 5, 5, 5, 5, 0]);
    expect([...learnt.counts.keys()]).toEqual([613.4]);
    expect(screened([149, 613.4, 149], degCelsius, learnt)).toEqual([0, state.aboveScale, 0]);
  });
});

describe('temperatures, not codes', () => {
  test('a furnace that comes to 850 and stays there', () => {
    const rising = Array.from({ length: 60 }, (_, i) => 700 + Math.min(150, i * 3));
    expect(screened(rising)).toEqual(rising.map(() => 0));
  });
  test('a zone that cools through 0', () => {
    const falling = Array.from({ length: 40 }, (_, i) => 4 - i * 0.2);
    expect(screened(falling)).toEqual(falling.map(() => 0));
  });
  test('a reading that stands still inside the range, even after a jump', () => {
    expect(screened([5, 4.9, -1, -1, -1, -1, -1, -1])).toEqual(new Array(8).fill(0));
  });
  test('the first reading of a log', () => expect(screened([22, 22, 22, 22, 22])).toEqual([0, 0, 0, 0, 0]));
});
