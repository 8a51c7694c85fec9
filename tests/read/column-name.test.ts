import { describe, expect, test } from 'vitest';
import { splitName } from '../../src/read/names/column-name.js';

describe('zone and role from a name', () => {
  test.each([
    ['M1 Barrel feed_ACT', 'M1 Barrel feed', 'reading', null],
    ['Zone 1 temp [degC]', 'Zone 1', 'temperature', 'degC'],
    ['TIC101 Actual (°C)', 'TIC101', 'reading', 'degC'],
    ['M1 TIC101.PV', 'M1 TIC101', 'reading', null],
    ['Z3 Istwert', 'Z3', 'reading', null],
    ['Sollwert Zone 3', 'Zone 3', 'setpoint', null],
    ['Zone 1 set temp [degC]', 'Zone 1', 'setpoint', 'degC'],
    ['Zone 1 heat %', 'Zone 1', 'output', 'percent'],
    ['Stellgrad Z4 %', 'Z4', 'output', 'percent'],
    ['Température zone 2 (consigne)', 'zone 2', 'setpoint', null],
    ['Seal bar Ingesteld [degC]', 'Seal bar', 'setpoint', 'degC'],
    ['CO_Line 1_Zone 2 [%]', 'Line 1_Zone 2', 'output', 'percent'],
    ['UpperSeal_L_ACT', 'UpperSeal_L', 'reading', null],
    ['PV_Zone1', 'Zone1', 'reading', null],
    ['Manifold A Er-verdi', 'Manifold A', 'reading', null],
    ['Zone 4.PID.OUT', 'Zone 4', 'output', null],
    ['M1 Speed (cycles/min)', 'M1', 'running', 'other'],
    ['tempF', '', 'temperature', 'degF'],
    ['air_humidity', '', 'other', null],
    ['Front jaw', 'Front jaw', null, null],
    ['Heater 1', 'Heater 1', null, null],
    ['Temperature 1', 'Temperature 1', 'temperature', null],
    ['__proto__', '__proto__', null, null],
  ] as const)('%s', (name, rest, meaning, unit) => {
    const parts = splitName(name);
    expect(parts.rest.replace(/^_+|_+$/g, '')).toBe(rest.replace(/^_+|_+$/g, ''));
    expect([parts.meaning, parts.unit]).toEqual([meaning, unit]);
  });
  test('tenths in the unit', () =>
    expect(splitName('Zone 1 (0.1 °C)')).toMatchObject({ rest: 'Zone 1', unit: 'degC', scale: 0.1 }));
});
