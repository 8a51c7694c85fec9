import { describe, expect, test } from 'vitest';
import { drawPlantParameters } from '../make/draw/draw-plant.js';
import { faultWeights } from '../make/draw/draw-fault.js';
import { faultCauses, type FaultKind } from '../make/faults/fault.js';
import { Random } from '../make/random.js';
import { plantOfSeed } from '../make/write-plants.js';

const plants = Array.from({ length: 400 }, (_, seed) => drawPlantParameters(new Random(seed), { seed }));
const kinds = <T>(values: readonly T[]): Set<T> => new Set(values);

describe('drawn plants are wide', () => {
  test('every fault, layout, time style, level of data and pattern comes up', () => {
    expect(kinds(plants.flatMap(({ faults }) => faults.map(({ kind }) => kind)))).toEqual(
      new Set(Object.keys(faultCauses).filter((kind) => faultWeights[kind as FaultKind] > 0)),
    );
    expect(kinds(plants.map(({ format }) => format.layout)).size).toBe(6);
    expect(kinds(plants.map(({ format }) => format.time)).size).toBe(17);
    expect(kinds(plants.map(({ format }) => format.has))).toEqual(new Set(['full', 'nosp', 'pvonly']));
    expect(kinds(plants.map(({ pattern }) => pattern)).size).toBe(8);
    expect(kinds(plants.map(({ recorder }) => recorder.everyS))).toEqual(new Set([1, 2, 5, 10, 15, 20, 30, 60, 120]));
    expect(kinds(plants.map(({ zones }) => zones[0]!.sensor.kind)).size).toBe(4);
  });

  test('most zones are healthy, and drift comes in both signs and all sizes', () => {
    const zones = plants.reduce((sum, plant) => sum + plant.zones.length, 0);
    const faulty = new Set(plants.flatMap((plant) => plant.faults.map(({ zone }) => `${plant.seed} ${zone}`))).size;
    expect(faulty / zones).toBeGreaterThan(0.2);
    expect(faulty / zones).toBeLessThan(0.5);
    const drifts = plants.flatMap(({ faults }) =>
      faults.filter(({ kind }) => kind === 'sensor_drift').map(({ numbers }) => numbers['finalDegC']!),
    );
    expect(drifts.filter((drift) => drift < 0).length / drifts.length).toBeCloseTo(0.5, 0.5);
    expect(Math.min(...drifts.map(Math.abs))).toBeLessThan(1.2);
    expect(Math.max(...drifts.map(Math.abs))).toBeGreaterThan(20);
  });

  test('every drawn zone can reach its set point with the load on', () => {
    for (const plant of plants) {
      for (const { thermal, setpointsDegC, loadWPerK, controller } of plant.zones) {
        const aboveAirK = Math.max(...setpointsDegC) - 20;
        const neededW = (thermal.lossWPerK * (1 + thermal.lossGrowthPerK * aboveAirK) + loadWPerK) * aboveAirK;
        expect(neededW, `plant ${plant.seed}`).toBeLessThan((0.95 * thermal.powerW * controller.maxPercent) / 100);
      }
    }
  });

  test('zone names are their own, and every card fault hits the whole card', () => {
    for (const { zones, faults, seed } of plants) {
      expect(new Set(zones.map(({ name }) => name)).size, `plant ${seed}`).toBe(zones.length);
      for (const fault of faults.filter(({ kind }) => kind === 'card_blips')) {
        const card = zones[fault.zone]!.card;
        const onCard = zones.flatMap((zone, place) => (zone.card === card ? [place] : []));
        const faulty = new Set(faults.map(({ zone }) => zone));
        expect(onCard.filter((place) => !faulty.has(place))).toEqual([]);
      }
    }
  });

  test('options hold what they name', () => {
    const plant = drawPlantParameters(new Random(1), {
      has: 'pvonly',
      days: 9,
      everyS: 60,
      pattern: '24x7',
      unit: 'F',
      hasPlantFile: true,
      kinds: ['wire_wet'],
      faultShare: 1,
    });
    expect(plant.format).toMatchObject({ has: 'pvonly', unit: 'F', hasPlantFile: true });
    expect(plant).toMatchObject({ days: 9, pattern: '24x7' });
    expect(new Set(plant.faults.map(({ zone }) => zone)).size).toBe(plant.zones.length);
  });
});

test('a drawn healthy plant spends next to none of its planned time waiting for heat', () => {
  for (const seed of [3039, 7001, 7002]) {
    const plant = plantOfSeed(seed, { faultShare: 0, days: 2, everyS: 60, cellLimit: 60_000, pattern: '24x7' });
    for (const { plannedMin, lostToZonesMin, lostWarmingUpMin } of plant.truth.machines) {
      expect((lostToZonesMin + lostWarmingUpMin) / plannedMin, `plant ${seed}`).toBeLessThan(0.1);
    }
  }
});
