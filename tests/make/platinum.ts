// Platinum resistance thermometer, IEC 60751 clause 4: R(t) = R0·(1 + A·t + B·t² + C·(t − 100)·t³), C = 0 from 0 °C up.
// Written here a second time on purpose: the simulator must not inherit a mistake of the code it tests.
const a = 3.9083e-3;
const b = -5.775e-7;
const c = -4.183e-12;

/** Resistance in ohm of an element with `r0Ohm` at 0 °C. */
export function platinumOhm(degC: number, r0Ohm: number): number {
  const cubic = degC < 0 ? c * (degC - 100) * degC ** 3 : 0;
  return r0Ohm * (1 + a * degC + b * degC * degC + cubic);
}

/** Temperature that a card shows for a resistance; exact from 0 °C up, Newton below. NaN below 0 Ω or above the curve. */
export function platinumDegC(ohm: number, r0Ohm: number): number {
  const ratio = ohm / r0Ohm;
  if (!(ratio >= 0)) return NaN;
  const quadratic = (-a + Math.sqrt(a * a - 4 * b * (1 - ratio))) / (2 * b);
  if (ratio >= 1) return quadratic;
  let degC = quadratic;
  for (let i = 0; i < 6; i++) {
    const slope = r0Ohm * (a + 2 * b * degC + c * (4 * degC ** 3 - 300 * degC * degC));
    degC -= (platinumOhm(degC, r0Ohm) - ohm) / slope;
  }
  return degC;
}
