import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  emfDegC,
  emfMv,
  emfMvPerDegC,
  publishedInverseDegC,
  terminalMv,
  tipDegC,
} from '../../src/sensors/thermocouple.js';
import { thermocoupleTables, type ThermocoupleLetter } from '../../src/sensors/thermocouple-tables.js';
import { sharedData } from '../make/shared-data.js';
import { expectPrinted, valueOf } from './printed.js';

const letters = ['J', 'K', 'T', 'E'] as const;
const mV = (letter: ThermocoupleLetter, degC: number) => valueOf(emfMv(letter, degC)).mV;
const degC = (letter: ThermocoupleLetter, at: number) => valueOf(emfDegC(letter, at)).degC;

// NIST Monograph 175 / SRD 60. K column and T at −100, −50, 0, 20 (K), 400 seen in printed tables; the rest computed
// from the NIST coefficients outside this project. Columns J, K, T, E.
const rows = [
  [-100, '-4.633', '-3.554', '-3.379', '-5.237'],
  [-50, '-2.431', '-1.889', '-1.819', '-2.787'],
  [0, '0.000', '0.000', '0.000', '0.000'],
  [20, '1.019', '0.798', '0.790', '1.192'],
  [25, '1.277', '1.000', '0.992', '1.495'],
  [50, '2.585', '2.023', '2.036', '3.048'],
  [100, '5.269', '4.096', '4.279', '6.319'],
  [150, '8.010', '6.138', '6.704', '9.789'],
  [200, '10.779', '8.138', '9.288', '13.421'],
  [250, '13.555', '10.153', '12.013', '17.181'],
  [300, '16.327', '12.209', '14.862', '21.036'],
  [400, '21.848', '16.397', '20.872', '28.946'],
  [500, '27.393', '20.644', undefined, '37.005'],
  [600, '33.102', '24.905', undefined, '45.093'],
] as const;

describe('forward', () => {
  test.each(rows)('at %d °C', (at, ...printed) => {
    letters.forEach((letter, column) => {
      const value = printed[column];
      // K at 200 and 600 °C lies just under a half step (8.13848, 24.90547): printed tables differ by a last digit.
      if (value) expect(Math.abs(mV(letter, at) - Number(value)), letter).toBeLessThanOrEqual(0.001);
      else expect(emfMv(letter, at)).toMatchObject({ ok: false, code: 'above-range' });
    });
  });

  test('K just under a half step, summed from the NIST coefficients with another program', () => {
    expectPrinted(mV('K', 200), '8.1384733');
    expectPrinted(mV('K', 600), '24.9054670');
  });

  test('the K formula from 0 °C up gives 2e-9 mV at 0 °C, not exactly 0', () => {
    expect(Math.abs(mV('K', 0))).toBeGreaterThan(0);
    expect(Math.abs(mV('K', 0))).toBeLessThan(5e-9);
  });

  // Slopes in µV/°C at 25, 100, 200, 300 °C, computed from the NIST coefficients outside this project.
  test.each([
    ['J', ['51.75', '54.36', '55.51', '55.35']],
    ['K', ['40.52', '41.37', '39.97', '41.45']],
    ['T', ['40.68', '46.78', '53.15', '58.09']],
    ['E', ['60.95', '67.52', '74.03', '77.91']],
  ] as const)('slope of %s', (letter, printed) => {
    [25, 100, 200, 300].forEach((at, column) => {
      expectPrinted(1000 * valueOf(emfMvPerDegC(letter, at)).mvPerDegC, printed[column]!, `${at} °C`);
    });
  });

  test('refuses outside the range', () => {
    expect(emfMv('K', -270.1)).toMatchObject({ ok: false, code: 'below-range' });
    expect(emfMv('T', 400.1)).toMatchObject({ ok: false, code: 'above-range' });
    expect(emfMv('J', NaN)).toMatchObject({ ok: false, code: 'not-a-number' });
  });
});

describe('inverse', () => {
  test.each(letters)('type %s: inverse(forward) within 1e-6 °C', (letter) => {
    const { inverse } = thermocoupleTables[letter];
    const [lowDegC, highDegC] = [inverse[0]!.lowDegC, inverse.at(-1)!.highDegC];
    fc.assert(
      fc.property(fc.double({ min: lowDegC, max: highDegC, noNaN: true }), (at) => {
        expect(Math.abs(degC(letter, mV(letter, at)) - at)).toBeLessThanOrEqual(1e-6);
      }),
      { seed: 175, numRuns: 1000 },
    );
    const joints = inverse.flatMap((piece) => [piece.lowDegC, piece.highDegC]);
    for (const joint of joints) {
      for (const at of [joint - 1e-3, joint, joint + 1e-3].filter((value) => value >= lowDegC && value <= highDegC)) {
        expect(Math.abs(degC(letter, mV(letter, at)) - at), `${at}`).toBeLessThanOrEqual(1e-6);
      }
    }
  });

  test.each(letters)('type %s: the published inverse stays inside the error NIST states', (letter) => {
    for (const piece of thermocoupleTables[letter].inverse) {
      // The joint itself belongs to the piece below: J reads 0.037 °C high at 760 °C, inside that piece's bounds.
      for (let at = piece.lowDegC + (piece.lowMv < 0 ? 0 : 0.5); at <= piece.highDegC; at += 0.5) {
        const found = publishedInverseDegC(letter, mV(letter, at));
        const errorDegC = valueOf(found).degC - at;
        // Bounds are printed to 0.01 °C.
        expect(errorDegC, `${at} °C`).toBeGreaterThanOrEqual(piece.errorLowDegC - 0.005);
        expect(errorDegC, `${at} °C`).toBeLessThanOrEqual(piece.errorHighDegC + 0.005);
      }
    }
  });

  test('is refused outside the published voltage range, though the forward table goes on to −270 °C', () => {
    expect(emfDegC('K', mV('K', -210))).toMatchObject({ ok: false, code: 'below-range' });
    expect(emfDegC('J', 69.6)).toMatchObject({ ok: false, code: 'above-range' });
    expect(publishedInverseDegC('T', 21)).toMatchObject({ ok: false, code: 'above-range' });
    expect(emfDegC('E', NaN)).toMatchObject({ ok: false, code: 'not-a-number' });
  });
});

describe('cold junction', () => {
  // Physics laboratory page, College of William & Mary, 2020: type T, reference at 22 °C.
  test('worked example, type T with the reference at 22 °C', () => {
    expectPrinted(mV('T', 22), '0.8703');
    expectPrinted(valueOf(terminalMv('T', -200, 22)).mV, '-6.4733');
    expectPrinted(valueOf(terminalMv('T', -100, 22)).mV, '-4.2489');
  });

  test('tip and terminals equally warm give nothing, whatever the type', () => {
    for (const letter of letters) expect(valueOf(terminalMv(letter, 21, 21)).mV).toBe(0);
  });

  test('compensation gives the tip back', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...letters),
        fc.double({ min: -50, max: 390, noNaN: true }),
        fc.double({ min: -20, max: 70, noNaN: true }),
        (letter, tip, reference) => {
          const shown = valueOf(terminalMv(letter, tip, reference)).mV;
          expect(Math.abs(valueOf(tipDegC(letter, shown, reference)).degC - tip)).toBeLessThanOrEqual(1e-6);
        },
      ),
      { seed: 90, numRuns: 500 },
    );
  });
});

describe('tables against a stored copy of NIST SRD 60', () => {
  const file = sharedData('nist-its90.json');
  interface Copy {
    types: Record<
      ThermocoupleLetter,
      {
        forward: { t_min: number; t_max: number; c: number[]; exponential?: object }[];
        inverse: {
          mV_min: number;
          mV_max: number;
          t_min: number;
          t_max: number;
          error_min: number;
          error_max: number;
          d: number[];
        }[];
        check_values_seen_in_a_source: { t: number; mV: number }[];
        check_values_computed_here: { t: number; mV: number }[];
      }
    >;
  }
  const copy = file ? (JSON.parse(readFileSync(file, 'utf8')) as Copy) : undefined;

  test.skipIf(!copy).each(letters)('type %s: coefficients and ranges (skips where shared data is absent)', (letter) => {
    const { forward, inverse } = copy!.types[letter];
    const table = thermocoupleTables[letter];
    expect(table.forward.map((piece) => [piece.lowDegC, piece.highDegC, piece.c, piece.exponential])).toEqual(
      forward.map((piece) => [piece.t_min, piece.t_max, piece.c, piece.exponential]),
    );
    expect(
      table.inverse.map((p) => [p.lowMv, p.highMv, p.lowDegC, p.highDegC, p.errorLowDegC, p.errorHighDegC, p.d]),
    ).toEqual(inverse.map((p) => [p.mV_min, p.mV_max, p.t_min, p.t_max, p.error_min, p.error_max, p.d]));
  });

  test.skipIf(!copy).each(letters)('type %s: check values (skips where shared data is absent)', (letter) => {
    const { check_values_seen_in_a_source: seen, check_values_computed_here: computed } = copy!.types[letter];
    for (const row of seen) expect(Math.abs(mV(letter, row.t) - row.mV), `${row.t} °C`).toBeLessThanOrEqual(0.001);
    for (const row of computed) {
      expect(Math.abs(mV(letter, row.t) - row.mV), `${row.t} °C`).toBeLessThanOrEqual(0.00005 + 1e-9);
    }
  });
});

test('coefficients that faulty copies get wrong (NIST SRD 60)', () => {
  expect(thermocoupleTables.K.inverse[0]!.d.slice(2).every((value) => value < 0)).toBe(true);
  expect(thermocoupleTables.J.inverse[0]!.d[5]).toBe(-0.17256713);
  expect(thermocoupleTables.K.forward[0]!.c[5]).toBeLessThan(0);
  expect(thermocoupleTables.E.forward[1]!.c[1]).toBe(0.05866550871);
  expect(thermocoupleTables.K.forward[1]!.exponential).toEqual({ a0: 0.1185976, a1: -1.183432e-4, a2: 126.9686 });
});
