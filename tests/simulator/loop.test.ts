import { describe, expect, test } from 'vitest';
import type { Plant } from '../make/made-plant.js';
import { plainFault, smallPlant, type SmallPlantWish } from '../make/small-plant.js';

const dayS = 86400;
/** Round the clock, nothing but the loop: no stops, no washing, no load, no neighbours, still air. */
const quiet: SmallPlantWish = {
  pattern: '24x7',
  zones: 2,
  days: 2,
  machine: { stopsPerHour: 0, longStopsPerDay: 0, washDownsPerDay: 0, breaksPerShift: 0, speedChangesPerShift: 0 },
  zone: { loadWPerK: 0, neighbourWPerK: 0, cycleShare: 0 },
};

function meanOver(plant: Plant, values: Float64Array, fromS: number, toS: number): number {
  const rows = [...plant.timeS.keys()].filter((row) => plant.timeS[row]! >= fromS && plant.timeS[row]! < toS);
  return rows.reduce((sum, row) => sum + values[row]!, 0) / rows.length;
}

describe('the closed loop', () => {
  const driftDegC = 8;
  const drift = plainFault('sensor_drift', 0, 1, { finalDegC: driftDegC, spanS: 3600 }, { shape: 'step' });
  const plant = smallPlant({ ...quiet, faults: [drift] });
  const zone = plant.zones[0]!;
  const [before, after] = [
    [0.6 * dayS, 0.95 * dayS],
    [1.5 * dayS, 1.95 * dayS],
  ] as const;

  test('holds the reading, not the truth, under drift', () => {
    expect(meanOver(plant, zone.readingDegC, ...before)).toBeCloseTo(150, 0);
    expect(meanOver(plant, zone.readingDegC, ...after)).toBeCloseTo(150, 0);
    const truthMovedK = meanOver(plant, zone.trueDegC, ...after) - meanOver(plant, zone.trueDegC, ...before);
    expect(truthMovedK).toBeCloseTo(-driftDegC, 0);
  });

  test('shows the drift in the steady duty: change = drift × loss ÷ power', () => {
    const { thermal } = plant.parameters.zones[0]!;
    const aboveAirK = 150 - 21;
    // The slope of the loss at working temperature, growth with temperature included.
    const lossSlopeWPerK = thermal.lossWPerK * (1 + 2 * thermal.lossGrowthPerK * aboveAirK);
    const expectedPercent = (-driftDegC * lossSlopeWPerK * 100) / thermal.powerW;
    const movedPercent = meanOver(plant, zone.outputPercent, ...after) - meanOver(plant, zone.outputPercent, ...before);
    expect(expectedPercent).toBeLessThan(-1.5);
    expect(Math.abs(movedPercent - expectedPercent)).toBeLessThan(0.4);
  });

  test('steady duty × power is the loss to the air', () => {
    const healthy = plant.zones[1]!;
    const { thermal, airOffsetDegC } = plant.parameters.zones[1]!;
    const enclosureK = plant.parameters.air.enclosureShare * 128;
    const aboveAirK = meanOver(plant, healthy.trueDegC, ...after) - 21 - enclosureK - airOffsetDegC;
    const lossW = thermal.lossWPerK * aboveAirK * (1 + thermal.lossGrowthPerK * aboveAirK);
    const heatW = (meanOver(plant, healthy.outputPercent, ...after) / 100) * thermal.powerW;
    expect(Math.abs(heatW - lossW) / lossW).toBeLessThan(0.05);
  });

  test('every kind of controller holds the set point', () => {
    for (const kind of ['pid', 'time-proportioned', 'on-off'] as const) {
      const [sample] = smallPlant(quiet).parameters.zones;
      const made = smallPlant({
        ...quiet,
        days: 1,
        zone: { ...quiet.zone, controller: { ...sample!.controller, kind } },
      });
      const reading = meanOver(made, made.zones[0]!.readingDegC, 0.5 * dayS, dayS);
      expect(Math.abs(reading - 150), kind).toBeLessThan(kind === 'on-off' ? 2 : 0.3);
    }
  });
});
