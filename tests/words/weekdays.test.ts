import { expect, test } from 'vitest';
import { weekdaysOf } from '../../src/words/weekdays.js';

test.each([
  ['mon-fri', [1, 2, 3, 4, 5]],
  ['mon - fri', [1, 2, 3, 4, 5]],
  ['Monday to Friday', [1, 2, 3, 4, 5]],
  ['Mo bis Fr', [1, 2, 3, 4, 5]],
  ['mandag–torsdag, lørdag', [1, 2, 3, 4, 6]],
  ['lør og søn', [6, 7]],
  ['lundi au vendredi', [1, 2, 3, 4, 5]],
  ['sáb, dom', [6, 7]],
  ['fri-mon', [1, 5, 6, 7]],
  ['1-5', [1, 2, 3, 4, 5]],
  ['täglich', [1, 2, 3, 4, 5, 6, 7]],
  ['daily', [1, 2, 3, 4, 5, 6, 7]],
])('reads the days of "%s"', (text, days) => {
  expect(weekdaysOf(text)).toEqual(days);
});

test.each(['', 'early', 'morning', 'Frühschicht', 'mon-xyz', 'mon, payday', 'mon-wed-fri', '8'])(
  '"%s" names no days',
  (text) => {
    expect(weekdaysOf(text)).toBeNull();
  },
);
