import { describe, expect, test } from 'vitest';
import { platinumDegC, platinumOhm } from '../make/platinum.js';

// IEC 60751 table (every 10 °C) as reprinted by the trade, Pt100, ohm.
const table: readonly (readonly [number, number])[] = [
  [-200, 18.52],
  [-100, 60.26],
  [-50, 80.31],
  [0, 100],
  [20, 107.79],
  [100, 138.51],
  [150, 157.33],
  [200, 175.86],
  [300, 212.05],
  [600, 313.71],
];

describe('platinum curve of the simulator', () => {
  test.each(table)('%s °C is %s Ω', (degC, ohm) => {
    expect(platinumOhm(degC, 100)).toBeCloseTo(ohm, 1.9);
    expect(platinumDegC(platinumOhm(degC, 100), 100)).toBeCloseTo(degC, 6);
  });

  test('1 Ω in series at 150 °C reads 2.677 °C high, 10 kΩ in parallel at 200 °C reads 191.75 °C', () => {
    // Circuit arithmetic on the IEC 60751 equation.
    expect(platinumDegC(platinumOhm(150, 100) + 1, 100) - 150).toBeCloseTo(2.68, 2);
    const wetOhm = 1 / (1 / platinumOhm(200, 100) + 1 / 10_000);
    expect(wetOhm).toBeCloseTo(172.817, 3);
    expect(platinumDegC(wetOhm, 100)).toBeCloseTo(191.75, 2);
  });
});
