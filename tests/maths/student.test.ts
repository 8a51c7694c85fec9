import { expect, test } from 'vitest';
import { studentQuantile } from '../../src/maths/student.js';

// NIST/SEMATECH e-Handbook 1.3.6.7.2, critical values of Student's t.
test.each([
  [0.95, 1, 6.314],
  [0.975, 10, 2.228],
  [0.99, 30, 2.457],
  [0.95, 100, 1.66],
])('share %f, %i degrees of freedom', (share, dof, t) => {
  expect(studentQuantile(share, dof)).toBeCloseTo(t, 3);
  expect(studentQuantile(1 - share, dof)).toBeCloseTo(-t, 3);
});

test('the middle and what is outside', () => {
  expect(studentQuantile(0.5, 4)).toBe(0);
  expect(studentQuantile(1, 4)).toBeNaN();
  expect(studentQuantile(0.9, 0)).toBeNaN();
});
