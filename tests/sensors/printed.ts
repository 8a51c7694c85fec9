import { expect } from 'vitest';
import type { Answer } from '../../src/sensors/answer.js';

/** The value of an answer; a refusal fails the test with its sentence. */
export function valueOf<Value>(answer: Answer<Value>): Value {
  if (answer.ok) return answer;
  throw new Error(`refused: ${answer.says}`);
}

/** Half a step of the last printed digit. */
export function halfStep(printed: string): number {
  return 0.5 * 10 ** -(printed.split('.')[1]?.length ?? 0);
}

/** Passes when a value, rounded as the table rounds, is the printed one. */
export function expectPrinted(actual: number, printed: string, where = ''): void {
  const difference = Math.abs(actual - Number(printed));
  expect(difference, `${where} ${actual} against ${printed}`).toBeLessThanOrEqual(halfStep(printed) + 1e-9);
}
