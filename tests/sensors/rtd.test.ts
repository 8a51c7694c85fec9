import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rtdDegC, rtdOhm, rtdOhmPerDegC } from '../../src/sensors/rtd.js';
import { sensorTypes, type RtdSpec, type SensorId } from '../../src/sensors/sensor-types.js';
import { sharedData } from '../make/shared-data.js';
import { expectPrinted, valueOf } from './printed.js';

const rtds = (Object.values(sensorTypes) as { kind: string }[]).filter((spec) => spec.kind === 'rtd') as RtdSpec[];
const spec = (id: SensorId) => sensorTypes[id] as RtdSpec;
const pt100 = spec('pt100');
const ohm = (sensor: RtdSpec, degC: number) => valueOf(rtdOhm(sensor, degC)).ohm;
const degC = (sensor: RtdSpec, at: number) => valueOf(rtdDegC(sensor, at)).degC;

// IEC 60751 Pt100 table (reprint of a sensor maker, every 10 °C); rows 25 and 850 °C computed from its equation.
// Columns: °C, printed ohm, equation ohm, dR/dt ohm per °C (computed), °C per ohm (computed).
const pt100Rows = [
  [-200, '18.52', '18.5201', '0.43234', '2.313'],
  [-100, '60.26', '60.2558', '0.40531', '2.467'],
  [-50, '80.31', '80.3063', '0.39713', '2.518'],
  [0, '100.00', '100.0000', '0.39083', '2.5587'],
  [20, '107.79', '107.7935', '0.38852', '2.574'],
  [25, '109.73', '109.7347', '0.38794', '2.5777'],
  [50, '119.40', '119.3971', '0.38505', '2.597'],
  [100, '138.51', '138.5055', '0.37928', '2.6366'],
  [150, '157.33', '157.3251', '0.37351', '2.6773'],
  [200, '175.86', '175.8560', '0.36773', '2.7194'],
  [250, '194.10', '194.0981', '0.36196', '2.7628'],
  [300, '212.05', '212.0515', '0.35618', '2.808'],
  [400, '247.09', '247.0920', '0.34463', '2.902'],
  [500, '280.98', '280.9775', '0.33308', '3.002'],
  [600, '313.71', '313.7080', '0.32153', '3.110'],
  [850, '390.48', '390.4811', '0.29265', '3.417'],
] as const;

describe('Pt100 by IEC 60751', () => {
  test.each(pt100Rows)('%d °C', (at, printedOhm, equationOhm, slope, perOhm) => {
    // At 25 °C the half-way value 109.7347 rounds down, at 100 °C 138.5055 up, as printed.
    expectPrinted(ohm(pt100, at), printedOhm);
    expectPrinted(ohm(pt100, at), equationOhm);
    const { ohmPerDegC } = valueOf(rtdOhmPerDegC(pt100, at));
    expectPrinted(ohmPerDegC, slope);
    expectPrinted(1 / ohmPerDegC, perOhm);
  });

  // Inverse of the printed values, computed independently (exact root above 0 °C).
  test.each([
    ['119.40', '50.0075'],
    ['138.51', '100.0119'],
    ['157.33', '150.0131'],
    ['175.86', '200.0109'],
    ['212.05', '299.9958'],
    ['390.48', '849.9962'],
  ])('%s Ω back to °C', (at, printed) => expectPrinted(degC(pt100, Number(at)), printed));

  test('mean slope 0…100 °C and α from the equation (IEC 60751 scope text, recomputed)', () => {
    expectPrinted((ohm(pt100, 100) - 100) / 100, '0.385055');
    expectPrinted((ohm(pt100, 100) - 100) / 10000, '0.00385055');
  });

  test('−160 °C gives 35.5433 Ω; the 35.34 Ω in one reprint is a misprint', () => {
    expectPrinted(ohm(pt100, -160), '35.5433');
  });

  test('below 0 °C the inverse is iterated: the quadratic alone would read −202.425 at −200 °C', () => {
    const { aPerDegC: a, bPerDegC2: b } = pt100.curve as { aPerDegC: number; bPerDegC2: number };
    const quadratic = (at: number) => (-a + Math.sqrt(a * a - 4 * b * (1 - ohm(pt100, at) / 100))) / (2 * b);
    for (const [at, printed] of [
      [-50, '-50.020'],
      [-100, '-100.208'],
      [-200, '-202.425'],
    ] as const) {
      expectPrinted(quadratic(at), printed); // the error an unwary inverse makes
      expect(degC(pt100, ohm(pt100, at))).toBeCloseTo(at, 9);
    }
  });

  const file = sharedData('worked-examples.json');
  test.skipIf(!file)('the whole printed table, every 10 °C (skips where shared data is absent)', () => {
    const table = JSON.parse(readFileSync(file!, 'utf8'))['iec60751_table_every_10C'] as {
      t: number[];
      ohm_printed: number[];
      ohm_computed: number[];
    };
    expect(table.t).toHaveLength(80);
    table.t.forEach((at, row) => {
      expect(Math.abs(ohm(pt100, at) - table.ohm_printed[row]!), `${at} °C`).toBeLessThanOrEqual(0.005 + 1e-9);
      expect(Math.abs(ohm(pt100, at) - table.ohm_computed[row]!), `${at} °C`).toBeLessThanOrEqual(0.00005 + 1e-9);
    });
  });
});

test('Pt500 and Pt1000 are 5 and 10 times Pt100 (reprint of the IEC table)', () => {
  for (const [at] of pt100Rows) {
    expect(ohm(spec('pt500'), at)).toBeCloseTo(5 * ohm(pt100, at), 9);
    expect(ohm(spec('pt1000'), at)).toBeCloseTo(10 * ohm(pt100, at), 9);
  }
});

// Sensor maker's public RTD table for α 3.916e-3, and what the coefficients (from memory) give: they agree to 0.02 Ω
// as printed, no better, so the table is checked to that and its own rounding.
test.each([
  [0, 100.0, '100.00'],
  [100, 139.16, '139.15'],
  [200, 177.13, '177.13'],
  [300, 213.93, '213.93'],
  [400, 249.56, '249.56'],
  [500, 284.02, '284.02'],
  [600, 317.28, '317.30'],
])('Pt100 α 3.916e-3 at %d °C', (at, printed, computed) => {
  expect(Math.abs(ohm(spec('pt100-3916'), at) - printed)).toBeLessThanOrEqual(0.02 + 0.005);
  expectPrinted(ohm(spec('pt100-3916'), at), computed);
});

test('copper: 9.035 Ω at 0 °C (sensor makers’ tables), 10 Ω at 25 °C, 12.897 Ω at 100 °C (from memory)', () => {
  const cu10 = spec('cu10');
  expectPrinted(ohm(cu10, 0), '9.035');
  expectPrinted(ohm(cu10, 25), '10.00');
  expectPrinted(ohm(cu10, 100), '12.897');
  expectPrinted((ohm(cu10, 100) - 9.035) / (100 * 9.035), '0.0042745'); // α, from memory with it
});

test('nickel: 120 Ω at 0 °C, 200.64 Ω at 100 °C (from memory), α 6.72e-3 (sensor maker’s table list)', () => {
  const ni120 = spec('ni120');
  expectPrinted(ohm(ni120, 0), '120.00');
  expectPrinted(ohm(ni120, 100), '200.64');
  expectPrinted((ohm(ni120, 100) - 120) / 12000, '0.00672');
});

// Public 120 Ω nickel and 10 Ω copper table in a transmitter manual, every row seen there from −50 °C.
const nickelAndCopper = [
  [-50, '86.17', '7.104'],
  [-40, '92.76', '7.490'],
  [-30, '99.41', '7.876'],
  [-20, '106.15', '8.262'],
  [-10, '113.00', '8.649'],
  [0, '120.00', '9.035'],
  [10, '127.17', '9.421'],
  [20, '134.52', '9.807'],
  [30, '142.06', '10.194'],
  [40, '149.79', '10.580'],
  [50, '157.74', '10.966'],
  [60, '165.90', '11.352'],
  [70, '174.25', '11.738'],
  [80, '182.84', '12.125'],
  [90, '191.64', '12.511'],
  [100, '200.64', '12.897'],
  [150, '248.95', '14.828'],
  [200, '303.46', '16.776'],
  [250, '366.53', '18.725'],
] as const;
test.each(nickelAndCopper)('Ni120 and Cu10 at %d °C', (at, nickel, copper) => {
  expectPrinted(ohm(spec('ni120'), at), nickel);
  expectPrinted(ohm(spec('cu10'), at), copper);
});

test('the nickel rows from memory run smoothly: second differences grow and stay small', () => {
  const rows = Array.from({ length: 31 }, (_, row) => ohm(spec('ni120'), -50 + 10 * row));
  const second = rows.slice(2).map((value, row) => value - 2 * rows[row + 1]! + rows[row]!);
  for (const difference of second) {
    expect(difference).toBeGreaterThan(0);
    expect(difference).toBeLessThan(0.45);
  }
});

describe('every RTD', () => {
  test.each(rtds.map((sensor) => [sensor.id, sensor] as const))('%s: inverse(forward) within 1e-6 °C', (_, sensor) => {
    const { lowDegC, highDegC } = sensor.curve;
    fc.assert(
      fc.property(fc.double({ min: lowDegC, max: highDegC, noNaN: true }), (at) => {
        expect(Math.abs(degC(sensor, ohm(sensor, at)) - at)).toBeLessThanOrEqual(1e-6);
      }),
      { seed: 60751, numRuns: 500 },
    );
    for (const end of [lowDegC, highDegC]) expect(degC(sensor, ohm(sensor, end))).toBeCloseTo(end, 9);
  });

  test.each(rtds.map((sensor) => [sensor.id, sensor] as const))('%s: slope is that of the curve', (_, sensor) => {
    const { lowDegC, highDegC } = sensor.curve;
    fc.assert(
      fc.property(fc.double({ min: lowDegC + 1, max: highDegC - 1, noNaN: true }), (at) => {
        const { ohmPerDegC } = valueOf(rtdOhmPerDegC(sensor, at));
        const stepOhm = (ohm(sensor, at + 0.01) - ohm(sensor, at - 0.01)) / 0.02;
        // A corner of a printed table may lie between the two points.
        const slack = sensor.curve.kind === 'table' ? 0.06 : 1e-5;
        expect(Math.abs(stepOhm / ohmPerDegC - 1)).toBeLessThan(slack);
      }),
      { seed: 60752, numRuns: 200 },
    );
  });

  test.each(rtds.map((sensor) => [sensor.id, sensor] as const))('%s: refuses outside its range', (_, sensor) => {
    const { lowDegC, highDegC } = sensor.curve;
    expect(rtdOhm(sensor, lowDegC - 0.01)).toMatchObject({ ok: false, code: 'below-range' });
    expect(rtdOhm(sensor, highDegC + 0.01)).toMatchObject({ ok: false, code: 'above-range' });
    expect(rtdOhm(sensor, NaN)).toMatchObject({ ok: false, code: 'not-a-number' });
    expect(rtdOhmPerDegC(sensor, highDegC + 1)).toMatchObject({ ok: false, code: 'above-range' });
    const span = ohm(sensor, highDegC) - ohm(sensor, lowDegC);
    expect(rtdDegC(sensor, ohm(sensor, lowDegC) - 0.01 * span)).toMatchObject({ ok: false, code: 'below-range' });
    expect(rtdDegC(sensor, ohm(sensor, highDegC) + 0.01 * span)).toMatchObject({ ok: false, code: 'above-range' });
    expect(rtdDegC(sensor, Infinity)).toMatchObject({ ok: false, code: 'not-a-number' });
  });
});

test('a refusal is a sentence with the numbers in it', () => {
  expect(rtdDegC(pt100, 1097)).toEqual({
    ok: false,
    code: 'above-range',
    says: '1097.00 Ω is above 390.48 Ω (850 °C), where the table for Pt100 ends.',
  });
});

test('a short is marked where the equation meets 0 Ω: −242.02 °C (computed from IEC 60751, outside the standard)', () => {
  const short = rtdDegC(pt100, 0);
  expect(short).toMatchObject({ ok: false, code: 'below-range' });
  expectPrinted((short as { shortMarkerDegC: number }).shortMarkerDegC, '-242.02');
});
