import { InvalidArgumentError } from 'commander';

/** Reads the number behind an option of a tool of the tests. Throws commander's own error for anything else. */
export function aNumber(text: string): number {
  const number = Number(text);
  if (text.trim() === '' || !Number.isFinite(number)) throw new InvalidArgumentError('Give a number.');
  return number;
}
