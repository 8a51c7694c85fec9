import { expect, test } from 'vitest';
import { parseSensorType, sensorIds, sensorTypes } from '../../src/sensors/sensor-types.js';

test('every id names itself and is found as written', () => {
  for (const id of sensorIds) {
    expect(sensorTypes[id].id).toBe(id);
    expect(parseSensorType(id), id).toBe(id);
    expect(parseSensorType(id.toUpperCase().replaceAll('-', ' ')), id).toBe(id);
    expect(parseSensorType(sensorTypes[id].label), sensorTypes[id].label).toBe(id);
  }
});

test.each([
  ['Pt100', 'pt100'],
  ['PT-100', 'pt100'],
  ['pt 1000', 'pt1000'],
  ['Pt1000 385', 'pt1000'],
  ['RTD Pt500', 'pt500'],
  ['Pt100 α=0.00385', 'pt100'],
  ['Pt100 0.003916', 'pt100-3916'],
  ['Pt1000 (α 3.916e-3)', 'pt1000-3916'],
  ['type K', 'tc-k'],
  ['TC-K', 'tc-k'],
  ['K', 'tc-k'],
  ['j type', 'tc-j'],
  ['Thermocouple T', 'tc-t'],
  ['TC type E', 'tc-e'],
  ['Ni 120', 'ni120'],
  ['Copper 10', 'cu10'],
  ['4-20 mA', 'ma-4-20'],
  ['4..20mA', 'ma-4-20'],
  ['4 to 20 mA', 'ma-4-20'],
])('%s is %s', (text, id) => expect(parseSensorType(text)).toBe(id));

test.each(['', 'RTD', 'Pt10000', 'Pt500 3916', 'type X', 'NTC', '__proto__', 'constructor', 'Pt100 blue'])(
  '"%s" names no sensor',
  (text) => expect(parseSensorType(text)).toBeUndefined(),
);
