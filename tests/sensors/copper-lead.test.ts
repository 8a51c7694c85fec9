import { describe, expect, test } from 'vitest';
import { awgDiameterMm, copperOhm, parseWire, wireMm2 } from '../../src/sensors/copper-lead.js';
import { readThroughWiring } from '../../src/sensors/rtd-wiring.js';
import { sensorTypes, type RtdSpec } from '../../src/sensors/sensor-types.js';
import { expectPrinted, valueOf } from './printed.js';

const thousandFeetM = 304.8;

describe('copper by gauge at 20 °C', () => {
  // HyperPhysics wire table (Georgia State University), Ω per 1000 ft; per metre and diameters computed, the latter
  // from the AWG definition of ASTM B258 (from memory). Last column: +°C on a Pt100 at 100 °C, 10 m of 2-wire cable.
  test.each([
    [18, 6.385, '6.385', '0.02095', '1.0237', '1.10'],
    [20, 10.15, '10.152', '0.03330', '0.8118', '1.76'],
    [22, 16.14, '16.143', '0.05295', '0.6438', '2.79'],
    [24, 25.67, '25.668', '0.08422', '0.5106', '4.44'],
  ])('AWG %d', (awg, tableOhm, printed, perMetre, diameterMm, shift) => {
    const { leadOhm } = valueOf(copperOhm({ awg }, thousandFeetM));
    // The wire table has 4 digits.
    expect(Math.abs(leadOhm / tableOhm - 1)).toBeLessThan(5e-4);
    expectPrinted(leadOhm, printed);
    // The per-metre figures come from the 4-digit table values, so they carry its rounding.
    expect(Math.abs(valueOf(copperOhm({ awg }, 1)).leadOhm / Number(perMetre) - 1)).toBeLessThan(5e-4);
    expectPrinted(awgDiameterMm(awg), diameterMm);
    const ohm = valueOf(copperOhm({ awg }, 10)).leadOhm;
    const wiring = { wires: 2, lead1Ohm: ohm, lead2Ohm: ohm } as const;
    const { offsetDegC } = valueOf(readThroughWiring(sensorTypes.pt100 as RtdSpec, 100, wiring));
    expectPrinted(offsetDegC, shift);
    const pt1000 = valueOf(readThroughWiring(sensorTypes.pt1000 as RtdSpec, 100, wiring));
    expect(pt1000.offsetDegC / offsetDegC).toBeCloseTo(0.1, 2);
  });
});

test('warmer copper has more: 1 Ω at 20 °C is 1.157 Ω at 60 °C (IEC 60028 coefficient, from memory)', () => {
  const cold = valueOf(copperOhm({ awg: 20 }, 30)).leadOhm;
  const warm = valueOf(copperOhm({ awg: 20 }, 30, 60)).leadOhm;
  expectPrinted(warm / cold, '1.157');
});

test('by cross-section: 1 m of 1 mm² is the resistivity, 17.241 mΩ (IEC 60028)', () => {
  expect(valueOf(copperOhm({ mm2: 1 }, 1)).leadOhm).toBeCloseTo(0.017241, 9);
  expectPrinted(valueOf(wireMm2({ awg: 20 })).mm2, '0.518'); // π/4·0.8118²
});

test('what cannot be is refused', () => {
  expect(copperOhm({ awg: 41 }, 1)).toMatchObject({ ok: false, code: 'no-such-wire' });
  expect(copperOhm({ awg: 20.5 }, 1)).toMatchObject({ ok: false, code: 'no-such-wire' });
  expect(copperOhm({ mm2: 0 }, 1)).toMatchObject({ ok: false, code: 'no-such-wire' });
  expect(copperOhm({ awg: 20 }, -1)).toMatchObject({ ok: false, code: 'not-a-number' });
  expect(copperOhm({ awg: 20 }, NaN)).toMatchObject({ ok: false, code: 'not-a-number' });
  expect(copperOhm({ awg: 20 }, 1, 300)).toMatchObject({ ok: false, code: 'above-range' });
});

test('wires are found however they are written', () => {
  for (const text of ['20', 'AWG 20', '20 awg', '20AWG', '#20', '20 gauge'])
    expect(parseWire(text)).toEqual({ awg: 20 });
  for (const text of ['0.5 mm2', '0,5 mm²', '0.5mm^2']) expect(parseWire(text)).toEqual({ mm2: 0.5 });
  expect(parseWire('2/0')).toEqual({ awg: -1 });
  expect(parseWire('0000')).toEqual({ awg: -3 });
  expect(parseWire('0')).toEqual({ awg: 0 });
  for (const text of ['', 'thick', '20 m', '-4', '0.5']) expect(parseWire(text), text).toBeUndefined();
});
