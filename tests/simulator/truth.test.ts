import { describe, expect, test } from 'vitest';
import { plainFault, smallPlant } from '../make/small-plant.js';
import { plantOfSeed } from '../make/write-plants.js';

describe('truth', () => {
  const faults = [
    plainFault('wire_flex_open', 0, 0.4),
    plainFault('sensor_open', 1, 2.4, {}, { fixedS: 2.6 * 86400, bypassAfterS: null, repairStopS: 1800 }),
  ];
  const plant = smallPlant({ days: 5, everyS: 3, faults });

  test('planned time = run + lost to zones + their restarts + lost to other stops + warming up', () => {
    const [machine] = plant.truth.machines;
    const { plannedMin, ranMin, lostToZonesMin, restartMin, lostToOtherStopsMin, lostWarmingUpMin } = machine!;
    expect(ranMin + lostToZonesMin + restartMin + lostToOtherStopsMin + lostWarmingUpMin).toBeCloseTo(plannedMin, 6);
    expect(lostToZonesMin).toBeCloseTo(
      plant.truth.zones.reduce((sum, zone) => sum + zone.downtimeMin, 0),
      6,
    );
    expect(lostToZonesMin).toBeGreaterThan(60);
    expect(restartMin).toBeGreaterThan(0);
  });

  test('an open of seconds costs its reset, a minute a stop; what is waited after that is restart', () => {
    const blips = plainFault('wire_flex_open', 0, 0.1, { perRunningHour: 3 });
    const { truth } = smallPlant({ days: 3, faults: [blips], machine: { restartS: 240, stopsPerHour: 0 } });
    const { downtimeMin, restartMin, opens } = truth.zones[0]!;
    expect(opens).toBeGreaterThan(20);
    expect(downtimeMin / opens).toBeLessThan(1.3);
    expect(restartMin).toBeGreaterThan(downtimeMin);
  });

  test('the running column agrees with the time run', () => {
    const rows = plant.machines[0]!.running.reduce((sum, runs) => sum + runs, 0);
    expect(Math.abs((rows * 3) / 60 - plant.truth.machines[0]!.ranMin)).toBeLessThan(3);
  });

  test('a repaired open stands for the machine from alarm to reheat, not longer', () => {
    const { onset, fixed, downtimeMin } = plant.truth.zones[1]!;
    const openMin = (Date.parse(fixed!) - Date.parse(onset!)) / 60_000;
    expect(downtimeMin).toBeGreaterThan(0.8 * openMin);
    expect(downtimeMin).toBeLessThan(openMin + 45);
  });

  test('stops of other causes have an alarm each', () => {
    const stops = plant.alarms.filter(({ kind }) => kind === 'machine').map(({ startS }) => startS);
    expect(stops).toEqual(plant.otherStops.map(({ startS }) => startS));
    expect(stops.length).toBeGreaterThan(10);
  });

  test('a fault that never acts is told as drawn, not as a cause', () => {
    const never = plainFault('wire_flex_open', 0, 0.1, { perRunningHour: 1e-9 });
    expect(smallPlant({ days: 1, faults: [never] }).truth.zones[0]).toMatchObject({
      cause: 'none',
      fault: 'none',
      drawn: 'wire_flex_open',
      onset: null,
      opens: 0,
    });
  });

  test('drawn plants hold what a scoring program reads', () => {
    const made = plantOfSeed(42, { cellLimit: 60_000, days: 3 });
    expect(made.truth.meta).toMatchObject({ days: 3, seed: 42 });
    for (const zone of made.truth.zones) {
      expect(['sensor', 'wiring', 'input', 'heater', 'recording', 'none']).toContain(zone.cause);
      expect(zone.cause === 'none').toBe(zone.onset === null);
      expect(zone.downtimeMin).toBeGreaterThanOrEqual(0);
    }
  });
});
