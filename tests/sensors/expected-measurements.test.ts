import { describe, expect, test } from 'vitest';
import type { Check, ExpectedValue } from '../../src/model/check.js';
import { expectedMeasurements } from '../../src/sensors/expected-measurements.js';
import type { MeasureOptions } from '../../src/sensors/measure-plan.js';
import { sensorIds, type SensorId } from '../../src/sensors/sensor-types.js';
import { expectPrinted } from './printed.js';

const list = (sensor: SensorId, options: MeasureOptions = {}) => expectedMeasurements(sensor, options);
const find = (checks: readonly Check[], id: string) => {
  const found = checks.find((check) => check.id === id);
  if (!found) throw new Error(`no check ${id} in ${checks.map((check) => check.id).join(', ')}`);
  return found;
};
type Of<Quantity> = Extract<ExpectedValue, { quantity: Quantity }>;
const values = <Quantity extends ExpectedValue['quantity']>(check: Check, quantity: Quantity) =>
  check.expected.filter((value) => value.quantity === quantity) as Of<Quantity>[];

describe('Pt100', () => {
  const options: MeasureOptions = { toleranceClass: 'B', wires: 3, roomDegC: 25, setpointDegC: 150, plusMinusDegC: 0 };

  test('at room and at set point, with the tolerance of the class (IEC 60751 table, rows 25 and 150 °C)', () => {
    const [room, hot] = values(find(list('pt100', options), 'sensor-element'), 'resistance');
    expect([room!.condition, hot!.condition]).toEqual(['room', 'set-point']);
    expectPrinted(room!.expectedOhm!, '109.73');
    expectPrinted(room!.toleranceOhm!, '0.165');
    expectPrinted(room!.toleranceDegC!, '0.425');
    expectPrinted(room!.highOhm! - room!.lowOhm!, '0.330'); // twice 0.165
    expectPrinted(hot!.expectedOhm!, '157.33');
    expectPrinted(hot!.toleranceOhm!, '0.392');
    expectPrinted(hot!.ohmPerDegC!, '0.37351');
  });

  test('the band widens by how well the temperature is known: 2 °C is 0.776 Ω at 25 °C', () => {
    const [room] = values(find(list('pt100', { ...options, plusMinusDegC: 2 }), 'sensor-element'), 'resistance');
    expect(room!.highOhm! - room!.expectedOhm!).toBeCloseTo(0.165 + 2 * 0.38794, 3);
    expectPrinted(room!.toleranceOhm!, '0.165');
  });

  // HyperPhysics wire table: AWG 20 has 10.15 Ω per 1000 ft, so 0.666 Ω in a 10 m pair at 20 °C.
  test('the cable is in the values at the cabinet when it is known, and asked for when not', () => {
    const lead = { wire: { awg: 20 }, lengthM: 10, leadDegC: 20 } as const;
    const known = list('pt100', { ...options, lead });
    const [cabinet] = values(find(known, 'cabinet-element'), 'resistance');
    expectPrinted(cabinet!.cableOhm!, '0.666');
    expectPrinted(cabinet!.expectedOhm!, '110.40');
    expectPrinted(values(find(known, 'cabinet-same-end'), 'resistance')[0]!.expectedOhm!, '0.666');
    const unknown = find(list('pt100', options), 'cabinet-element');
    expect(values(unknown, 'resistance')[0]!.cableOhm).toBeNull();
    expect(unknown.says).toMatch(/Add the ohms/);
  });

  test.each([
    [2, ['1 and 2'], undefined],
    [3, ['1 and 2', '1 and 3'], ['2 and 3']],
    [4, ['1 and 3', '1 and 4', '2 and 3', '2 and 4'], ['1 and 2', '3 and 4']],
  ] as const)('%d wires: every pair of leads has its place', (wires, across, sameEnd) => {
    const checks = list('pt100', { ...options, wires });
    expect(find(checks, 'sensor-element').between).toEqual(across);
    expect(checks.find((check) => check.id === 'sensor-same-end')?.between).toEqual(sameEnd);
    expect(checks.find((check) => check.id === 'cabinet-same-end')?.between).toEqual(sameEnd);
    expect(checks.some((check) => check.id === 'cabinet-cable-loop')).toBe(wires === 2);
    expect(across.length + (sameEnd?.length ?? 0)).toBe((wires * (wires - 1)) / 2);
  });

  test('open at the sensor is the sensor, open only at the cabinet the wiring, good at both the input (common practice)', () => {
    const checks = list('pt100', options);
    const points = (id: string, result: string) =>
      find(checks, id).outcomes.find((one) => one.result === result)?.points;
    expect(points('sensor-element', 'open')).toBe('sensor');
    expect(points('cabinet-element', 'open')).toBe('wiring');
    expect(points('cabinet-element', 'in-band')).toBe('input');
    expect(points('cabinet-to-sheath', 'leaks')).toBe('wiring');
  });

  test('to the sheath: 100 MΩ at ambient (IEC 60751 6.3.1, from memory)', () => {
    expect(values(find(list('pt100'), 'sensor-to-sheath'), 'insulation')[0]!.leastOhm).toBe(100e6);
  });
});

describe('thermocouples', () => {
  test('K with the terminals at 25 °C: nothing at room, 5.138 mV at 150 °C (NIST: 6.138 − 1.000)', () => {
    const checks = list('tc-k', { roomDegC: 25, setpointDegC: 150, plusMinusDegC: 0 });
    const [room, hot] = values(find(checks, 'sensor-voltage'), 'voltage');
    expect(room!.expectedMv).toBe(0);
    expectPrinted(hot!.expectedMv, '5.138');
    expect(hot!.toleranceDegC).toBeCloseTo(2.2, 9); // ASTM E230, standard
    expect(hot!.referenceDegC).toBe(25);
    expect(values(find(checks, 'card-linked'), 'reading')[0]!.expectedDegC).toBe(25);
  });
});

describe('4–20 mA', () => {
  test('with a span: 4 mA + 16 mA × share; without: the measuring range of NAMUR NE 43', () => {
    const span = { lowDegC: 0, highDegC: 200 };
    const [room, hot] = values(
      find(list('ma-4-20', { roomDegC: 25, setpointDegC: 150, span }), 'cabinet-loop-current'),
      'current',
    );
    expect(room!.expectedMa).toBeCloseTo(6, 12);
    expect(hot!.expectedMa).toBeCloseTo(16, 12);
    const [any] = values(find(list('ma-4-20'), 'cabinet-loop-current'), 'current');
    expect(any).toMatchObject({ expectedMa: null, lowMa: 3.8, highMa: 20.5 });
  });
});

describe('every sensor', () => {
  const options: MeasureOptions = { roomDegC: 21, setpointDegC: 180, lead: { wire: { awg: 20 }, lengthM: 10 } };

  test.each(sensorIds)('%s: lockout first, ids unique, live work marked', (id) => {
    const checks = list(id, options);
    expect(checks[0]).toMatchObject({ id: 'lockout', kind: 'caution', power: 'locked-out' });
    expect(new Set(checks.map((check) => check.id)).size).toBe(checks.length);
    for (const check of checks) {
      expect(check.source).not.toBe('');
      expect(check.says).toMatch(/^[A-Z].*\.$/);
      if (check.power === 'live') expect(check.says).toMatch(/authorised people only/);
      expect(check.kind === 'measure' ? check.outcomes.length : 2).toBeGreaterThanOrEqual(2);
      for (const { says } of check.outcomes) expect(says).toMatch(/\.$/);
    }
  });

  test.each(sensorIds)('%s: plain data, finite numbers, the expected value inside its band', (id) => {
    const checks = list(id, options);
    expect(JSON.parse(JSON.stringify(checks))).toEqual(checks);
    for (const value of checks.flatMap((check) => check.expected)) {
      const numbers = Object.values(value).filter((entry) => typeof entry === 'number');
      expect(numbers.every(Number.isFinite), JSON.stringify(value)).toBe(true);
      if (value.quantity === 'resistance' && value.expectedOhm !== null) {
        expect(value.lowOhm!).toBeLessThanOrEqual(value.expectedOhm);
        expect(value.highOhm ?? Infinity).toBeGreaterThanOrEqual(value.expectedOhm);
      }
      if (value.quantity === 'voltage') expect(value.lowMv!).toBeLessThanOrEqual(value.expectedMv);
    }
  });

  test('an assumed room is told', () => {
    expect(find(list('pt100'), 'prepare').says).toMatch(/Room 21\.0 °C, assumed/);
    expect(find(list('pt100', { roomDegC: 18.4, roomFrom: 'soak' }), 'prepare').says).toMatch(
      /Room 18\.4 °C, as the log shows/,
    );
  });

  test('a temperature off the table leaves its value out and keeps the rest', () => {
    const check = find(list('tc-t', { roomDegC: 21, setpointDegC: 500 }), 'sensor-voltage');
    expect(check.expected.map((value) => value.condition)).toEqual(['room']);
  });
});
