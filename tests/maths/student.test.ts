import { expect, test } from 'vitest';
import { studentTwoSided } from '../../src/maths/student.js';

// NIST/SEMATECH e-Handbook 1.3.6.7.2, critical values of Student's t: two-sided chance 0.05 lies beyond these.
test.each([
  [12.706, 1],
  [4.303, 2],
  [3.182, 3],
  [2.776, 4],
  [2.228, 10],
  [2.042, 30],
])('t %f with %i degrees of freedom is passed by 1 in 20', (t, dof) => {
  expect(studentTwoSided(t, dof)).toBeCloseTo(0.05, 4);
  expect(studentTwoSided(-t, dof)).toBe(studentTwoSided(t, dof));
});

test('no distance is passed by all, a huge one by hardly any, half a degree of freedom is none', () => {
  expect(studentTwoSided(0, 7)).toBe(1);
  expect(studentTwoSided(1e9, 40)).toBe(1e-15);
  expect(studentTwoSided(1, 0.5)).toBeNaN();
});
