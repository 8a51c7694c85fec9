/** Times rise; a few may be out of order (own choice). */
const leastRising = 0.95;

/** Whether numbers rise or stand from each to the next, but for a few. */
export function isRising(numbers: readonly number[]): boolean {
  let rises = 0;
  for (let i = 1; i < numbers.length; i++) if (numbers[i]! >= numbers[i - 1]!) rises++;
  return rises >= leastRising * (numbers.length - 1);
}
