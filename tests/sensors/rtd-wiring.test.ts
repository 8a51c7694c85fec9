import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rtdDegC, rtdOhm } from '../../src/sensors/rtd.js';
import { parallelOhm, readThroughWiring, seenOhm, type RtdWiring } from '../../src/sensors/rtd-wiring.js';
import { sensorTypes, type RtdSpec } from '../../src/sensors/sensor-types.js';
import { expectPrinted, valueOf } from './printed.js';

const pt100 = sensorTypes.pt100 as RtdSpec;
const pt1000 = sensorTypes.pt1000 as RtdSpec;
const offset = (sensor: RtdSpec, at: number, wiring: RtdWiring) =>
  valueOf(readThroughWiring(sensor, at, wiring)).offsetDegC;

describe('series resistance, 2 wires', () => {
  // Computed outside this project from IEC 60751: exact shift for +0.1 / +1 / +5 / +10 Ω, and for Pt1000 +1 Ω.
  // "≈ +2.6 °C per ohm" is also stated by two trade texts.
  test.each([
    [0, ['0.256', '2.560', '12.82', '25.68'], '0.2559'],
    [25, ['0.258', '2.579', '12.91', '25.88'], '0.2578'],
    [100, ['0.264', '2.638', '13.21', '26.47'], '0.2637'],
    [150, ['0.268', '2.678', '13.41', '26.89'], '0.2677'],
    [200, ['0.272', '2.721', '13.63', '27.31'], '0.2720'],
    [250, ['0.276', '2.764', '13.84', '27.75'], '0.2763'],
  ])('at %d °C', (at, printed, printedPt1000) => {
    [0.1, 1, 5, 10].forEach((lead1Ohm, column) => {
      expectPrinted(offset(pt100, at, { wires: 2, lead1Ohm }), printed[column]!, `+${lead1Ohm} Ω`);
    });
    expectPrinted(offset(pt1000, at, { wires: 2, lead1Ohm: 1 }), printedPt1000, 'Pt1000');
  });

  test('both leads add, and exchanging them changes nothing', () => {
    const wiring = { wires: 2, lead1Ohm: 0.4, lead2Ohm: 0.6 } as const;
    expect(seenOhm(100, wiring)).toBeCloseTo(101, 12);
    expect(seenOhm(100, { ...wiring, swapped: '1-2' })).toBe(seenOhm(100, wiring));
  });

  // IEC 60028 coefficient (from memory); arithmetic: a 1 Ω loop warmed from 20 to 60 °C gains 0.157 Ω ≈ +0.41 °C.
  test('a warmed cable', () => {
    const cold = offset(pt100, 100, { wires: 2, lead1Ohm: 1 });
    const warm = offset(pt100, 100, { wires: 2, lead1Ohm: 1 + 40 * 3.93e-3 });
    expect(warm - cold).toBeCloseTo(0.41, 1);
  });
});

describe('3 wires', () => {
  test('equal leads cancel, however long (circuit arithmetic)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: -150, max: 800, noNaN: true }),
        (ohm, at) => {
          const wiring = { wires: 3, lead1Ohm: ohm, lead2Ohm: ohm, lead3Ohm: ohm } as const;
          expect(Math.abs(offset(pt100, at, wiring))).toBeLessThan(1e-6);
        },
      ),
      { seed: 3, numRuns: 300 },
    );
  });

  test('0.25 °C for 0.1 Ω of mismatch (accuracy note of a bench multimeter manual)', () => {
    expect(offset(pt100, 0, { wires: 3, lead1Ohm: 0.1 })).toBeCloseTo(0.25, 1);
    expectPrinted(offset(pt100, 0, { wires: 3, lead1Ohm: 0.1 }), '0.256'); // exact, as for 2 wires
  });

  test('the single lead reads high, the compensating lead low, the sense lead not at all (circuit arithmetic)', () => {
    expect(offset(pt100, 150, { wires: 3, lead1Ohm: 1 })).toBeCloseTo(2.678, 3);
    expect(offset(pt100, 150, { wires: 3, lead2Ohm: 1 })).toBeCloseTo(-2.676, 3);
    expect(offset(pt100, 150, { wires: 3, lead3Ohm: 50 })).toBeCloseTo(0, 9);
  });

  test('swapped leads: the pair is harmless, single against sense a short, single against compensating below scale', () => {
    const wiring = { wires: 3, lead1Ohm: 0.5, lead2Ohm: 0.5, lead3Ohm: 0.5 } as const;
    expect(seenOhm(138.5, { ...wiring, swapped: '2-3' })).toBeCloseTo(138.5, 9);
    expect(seenOhm(138.5, { ...wiring, swapped: '1-3' })).toBeCloseTo(0, 9);
    expect(seenOhm(138.5, { ...wiring, swapped: '1-2' })).toBeCloseTo(-138.5, 9);
    expect(readThroughWiring(pt100, 100, { ...wiring, swapped: '1-2' })).toMatchObject({
      ok: false,
      code: 'below-range',
    });
    expect(readThroughWiring(pt100, 100, { ...wiring, swapped: '1-3' })).toMatchObject({
      ok: false,
      code: 'below-range',
    });
  });

  // Kirchhoff, worked by hand: 100 Ω with 1 Ω in each lead and 1 kΩ across terminals 1 and 2. Of the current,
  // 1000/1102 runs through the loop: (102 − 2·1)·1000/1102 = 90.744 Ω.
  test('a leak at the terminals takes its share of the current', () => {
    const wiring = { wires: 3, lead1Ohm: 1, lead2Ohm: 1, lead3Ohm: 1, leakOhm: 1000, leakAt: 'terminals' } as const;
    expectPrinted(seenOhm(100, wiring), '90.744');
    expect(seenOhm(100, { ...wiring, leakOhm: 0 })).toBe(0);
  });
});

test('4 wires do not care about leads (circuit arithmetic)', () => {
  const wiring = { wires: 4, lead1Ohm: 5, lead2Ohm: 50, lead3Ohm: 500, lead4Ohm: 0 } as const;
  expect(offset(pt100, 150, wiring)).toBeCloseTo(0, 9);
  expect(seenOhm(150, { ...wiring, swapped: '1-2' })).toBe(150);
  expect(seenOhm(150, { ...wiring, swapped: '2-3' })).toBe(-150);
  expect(seenOhm(150, { ...wiring, swapped: '1-3' })).toBe(0);
});

describe('leak in parallel', () => {
  // Computed outside this project from IEC 60751: Pt100 at 0, 25, 150, 200 °C, Pt1000 at 150, 200 °C.
  const columns = [
    [pt100, 0],
    [pt100, 25],
    [pt100, 150],
    [pt100, 200],
    [pt1000, 150],
    [pt1000, 200],
  ] as const;
  test.each([
    [100e6, ['-0.0003', '-0.0003', '-0.0007', '-0.0008', '-0.0066', '-0.0084']],
    [10e6, ['-0.0026', '-0.0031', '-0.0066', '-0.0084', '-0.066', '-0.084']],
    [1e6, ['-0.026', '-0.031', '-0.066', '-0.084', '-0.662', '-0.839']],
    [100e3, ['-0.256', '-0.310', '-0.662', '-0.839', '-6.52', '-8.25']],
    [10e3, ['-2.53', '-3.07', '-6.52', '-8.25', '-56.8', '-70.7']],
    [1e3, ['-23.2', '-27.9', '-56.8', '-70.7', '-247.8', '-291.4']],
  ])('%d Ω', (leakOhm, printed) => {
    columns.forEach(([sensor, at], column) => {
      expectPrinted(offset(sensor, at, { wires: 4, leakOhm }), printed[column]!, `${sensor.id} ${at} °C`);
    });
  });

  test('worked: Pt100 at 200 °C with 10 kΩ across is 172.817 Ω, read as 191.75 °C', () => {
    const { seenOhm: ohm, readingDegC } = valueOf(readThroughWiring(pt100, 200, { wires: 3, leakOhm: 10e3 }));
    expectPrinted(ohm, '172.817');
    expectPrinted(readingDegC, '191.75');
  });

  test('2 wires: at the element the leads add after the leak, at the terminals before it (by hand)', () => {
    const wiring = { wires: 2, lead1Ohm: 1, lead2Ohm: 1, leakOhm: 1000 } as const;
    expectPrinted(seenOhm(100, { ...wiring, leakAt: 'element' }), '92.9091'); // 2 + 100·1000/1100
    expectPrinted(seenOhm(100, { ...wiring, leakAt: 'terminals' }), '92.5590'); // 102·1000/1102
  });

  test('always lowers the reading, less so with a low-ohm element (computed; instrumentation forum text)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e3, max: 1e8, noNaN: true }),
        fc.double({ min: -40, max: 400, noNaN: true }),
        (leakOhm, at) => {
          const low = readThroughWiring(pt100, at, { wires: 3, leakOhm });
          const high = readThroughWiring(pt1000, at, { wires: 3, leakOhm });
          expect(valueOf(low).offsetDegC).toBeLessThan(0);
          if (high.ok) expect(high.offsetDegC).toBeLessThan(valueOf(low).offsetDegC);
        },
      ),
      { seed: 4, numRuns: 200 },
    );
  });

  test('no leak and a dead short', () => {
    expect(parallelOhm(100, Infinity)).toBe(100);
    expect(parallelOhm(100, 0)).toBe(0);
    expect(parallelOhm(0, 0)).toBe(0);
  });
});

describe('another element than the card is set for', () => {
  // Computed outside this project: the IEC equation carried on below −200 °C, a marker and no temperature.
  test.each([
    [25, '-217.3'],
    [150, '-206.4'],
  ])('Pt100 at %d °C on a Pt1000 input', (at, marker) => {
    const answer = readThroughWiring(pt100, at, { wires: 3 }, pt1000);
    expect(answer).toMatchObject({ ok: false, code: 'below-range' });
    expectPrinted((answer as { shortMarkerDegC: number }).shortMarkerDegC, marker);
  });

  test('Pt1000 at 25 °C on a Pt100 input: 1097 Ω is above the table', () => {
    expectPrinted(valueOf(rtdOhm(pt1000, 25)).ohm, '1097');
    expect(readThroughWiring(pt1000, 25, { wires: 3 }, pt100)).toMatchObject({ ok: false, code: 'above-range' });
  });

  // Computed outside this project from the two printed tables: 139.16 and 177.13 Ω on the 3.851e-3 curve.
  test.each([
    [100, 139.16, '1.73'],
    [200, 177.13, '3.47'],
  ])('an α 3.916e-3 element at %d °C on the 3.851e-3 curve', (at, printedOhm, shift) => {
    expectPrinted(valueOf(rtdDegC(pt100, printedOhm)).degC - at, shift);
    const alpha = sensorTypes['pt100-3916'] as RtdSpec;
    const { offsetDegC } = valueOf(readThroughWiring(alpha, at, { wires: 4 }, pt100));
    // Our coefficients agree with that table to 0.02 Ω, which is 0.055 °C.
    expect(Math.abs(offsetDegC - Number(shift))).toBeLessThan(0.06);
  });
});

test('outside the table there is no reading', () => {
  expect(readThroughWiring(pt100, 900, { wires: 2 })).toMatchObject({ ok: false, code: 'above-range' });
  expect(readThroughWiring(pt100, 840, { wires: 2, lead1Ohm: 20 })).toMatchObject({ ok: false, code: 'above-range' });
  expect(readThroughWiring(pt100, 20, { wires: 3, leakOhm: 0 })).toMatchObject({ ok: false, code: 'below-range' });
});
