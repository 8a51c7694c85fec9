import { expect, test } from 'vitest';
import { isWashDown } from '../../../src/normalise/events/wash-words.js';

test.each([
  'Wash-down',
  'Cleaning shift end',
  'CIP run',
  'Reinigung',
  'Nettoyage fin de poste',
  'limpieza',
  'rengjøring',
])('takes "%s" for a washing', (text) => expect(isWashDown(text)).toBe(true));

test.each(['Changeover', 'sensor replaced', 'jam at infeed', 'Pause', ''])('takes "%s" for none', (text) =>
  expect(isWashDown(text)).toBe(false),
);
