/**
 * Chance that Student's t lies further from zero than `t`, to either side: the finite sums for whole degrees of freedom
 * (Abramowitz & Stegun 26.7.3 and 26.7.4). Not below 1e-15, where the sum no longer tells.
 *
 * @param dof Degrees of freedom, a whole number from 1. @returns NaN for what is outside. Never throws.
 */
export function studentTwoSided(t: number, dof: number): number {
  if (Number.isNaN(t) || !(dof >= 1) || !Number.isInteger(dof)) return NaN;
  const angle = Math.atan(Math.abs(t) / Math.sqrt(dof));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const isOdd = dof % 2 === 1;
  let term = isOdd ? cosine : 1;
  let sum = dof === 1 ? 0 : term;
  for (let k = isOdd ? 3 : 2; k <= dof - 2; k += 2) {
    term *= (cosine * cosine * (k - 1)) / k;
    sum += term;
  }
  const within = isOdd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
  return Math.max(1e-15, 1 - within);
}
