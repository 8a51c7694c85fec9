import { describe, expect, test } from 'vitest';
import { ThermalZone, type ThermalParameters } from '../make/thermal-zone.js';

/** A heater so light and so well joined that bar and heater are one body. */
const oneBody: ThermalParameters = {
  bodyJPerK: 2 * 896,
  heaterJPerK: 0.01,
  contactWPerK: 1e6,
  lossWPerK: 0,
  lossGrowthPerK: 0,
  powerW: 500,
  sensorLagS: 0,
};

describe('ThermalZone', () => {
  test('500 W into 2 kg of aluminium 6061 heats at P/(m·c) = 0.279 °C/s', () => {
    // c = 896 J/(kg·K): aluminium 6061, materials pages, typical value; the rate is arithmetic.
    const zone = new ThermalZone(oneBody, 1, 20);
    for (let s = 0; s < 100; s++) zone.step(500, 20, 1, 0);
    expect((zone.bodyDegC - 20) / 100).toBeCloseTo(500 / (2 * 896), 3);
    expect((zone.bodyDegC - 20) / 100).toBeCloseTo(0.279, 3);
  });

  test.each([
    [1, 0.632],
    [3, 0.95],
    [4.605, 0.99],
  ])('a step of power reaches its share at %s time constants', (multiple, share) => {
    // τ = m·c/(h·A); 63.2 % at τ, 95.0 % at 3τ, 99 % at 4.605τ: lumped body, textbook.
    const lossWPerK = 2;
    const zone = new ThermalZone({ ...oneBody, lossWPerK }, 1, 20);
    const tauS = oneBody.bodyJPerK / lossWPerK;
    for (let s = 0; s < Math.round(multiple * tauS); s++) zone.step(200, 20, 1, 0);
    expect((zone.bodyDegC - 20) / (200 / lossWPerK)).toBeCloseTo(share, 2);
  });

  test('no heat is lost on the way from heater to bar, whatever the step length', () => {
    const parameters: ThermalParameters = { ...oneBody, heaterJPerK: 150, contactWPerK: 8 };
    for (const stepS of [1, 2, 3, 30]) {
      const zone = new ThermalZone(parameters, stepS, 20);
      for (let i = 0; i < 600; i++) zone.step(i < 300 ? 400 : 0, 20, 1, 0);
      const storedJ = 150 * (zone.heaterDegC - 20) + parameters.bodyJPerK * (zone.bodyDegC - 20);
      expect(storedJ / (400 * 300 * stepS)).toBeCloseTo(1, 6);
    }
  });

  test('the sensor is behind the bar by its lag on a steady ramp', () => {
    const zone = new ThermalZone({ ...oneBody, sensorLagS: 12 }, 1, 20);
    for (let s = 0; s < 300; s++) zone.step(500, 20, 1, 0);
    const rateDegCPerS = 500 / oneBody.bodyJPerK;
    expect((zone.bodyDegC - zone.sensorDegC) / rateDegCPerS).toBeCloseTo(12, -0.5);
  });
});
