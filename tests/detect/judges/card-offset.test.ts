import { expect, test } from 'vitest';
import { cardOffset } from '../../../src/detect/judges/card-offset.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, type HeatedZone } from '../../make/digests.js';

const onCards = (shifted: (zone: number, h: number) => number): HeatedZone[] =>
  ['A', 'A', 'B', 'B', 'C', 'C'].map((card, zone) => ({ card, offsetDegC: (h) => shifted(zone, h) }));

test('tells the two zones of a card that shift together', () => {
  const evidence = heatedPlant(onCards((zone, h) => (zone < 2 && h > 60 ? 2 : 0)));
  for (const zone of [0, 1]) {
    const [symptom] = ask(cardOffset, evidence, zone).symptoms;
    expect(symptom!.facts['offsetDegC']).toBeCloseTo(2, 1);
    expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(6);
  }
  for (const zone of [2, 3, 4, 5]) expect(ask(cardOffset, evidence, zone).symptoms).toEqual([]);
});

test('is silent when one zone of the card shifts, and when all zones of the plant do', () => {
  for (const shifted of [
    (zone: number, h: number) => (zone === 0 && h > 60 ? 4 : 0),
    (_: number, h: number) => (h > 60 ? 2 : 0),
  ]) {
    const evidence = heatedPlant(onCards(shifted));
    for (const zone of evidence.zones) expect(ask(cardOffset, evidence, zone.index).symptoms).toEqual([]);
  }
});

test('finds zones that move as one where no card is stated, and no others', () => {
  const shift = (h: number) => (h > 60 ? -3 : 0);
  const evidence = heatedPlant([{ offsetDegC: shift }, { offsetDegC: (h) => 0.4 + shift(h) }, {}, {}, {}, {}]);
  for (const zone of [0, 1]) {
    const { facts, startMs } = ask(cardOffset, evidence, zone).symptoms[0]!;
    expect(facts).toMatchObject({ zoneCount: 2, isStatedCount: 0 });
    expect(facts['offsetDegC']).toBeCloseTo(-3, 1);
    expect(hoursOff(startMs, 60)).toBeLessThan(24);
  }
  for (const zone of [2, 3, 4, 5]) expect(ask(cardOffset, evidence, zone).symptoms).toEqual([]);
});

test('two sensors that drift by themselves are no card, nor is half a machine', () => {
  const apart = heatedPlant([
    { offsetDegC: (h) => (h > 60 ? -3 : 0) },
    { offsetDegC: (h) => -Math.max(0, h - 60) / 20 },
    {},
    {},
    {},
    {},
  ]);
  for (const zone of apart.zones) expect(ask(cardOffset, apart, zone.index).symptoms).toEqual([]);
  const half = heatedPlant([2, 2, 2, 0, 0, 0].map((size) => ({ offsetDegC: (h: number) => (h > 60 ? size : 0) })));
  for (const zone of half.zones)
    expect(ask(cardOffset, half, zone.index)).toMatchObject({
      symptoms: [],
      unable: expect.stringMatching(/moved apart .* cannot be told/),
    });
});

test('other machines tell which part of a machine moved, where most of it did', () => {
  const most = [0, 1, 2, 3].map(() => ({ offsetDegC: (h: number) => (h > 60 ? 4 : 0) }));
  const plant = heatedPlant([...most, {}, {}, {}, {}, {}, {}, {}, {}]);
  const onMachines = plant.zones.map((zone) => ({ ...zone, machine: zone.index < 6 ? 'M1' : 'M2' }));
  const evidence = { ...plant, zones: onMachines };
  for (const zone of [0, 3])
    expect(factsOf(cardOffset, evidence, zone)).toMatchObject({ zoneCount: 4, isStatedCount: 0 });
  for (const zone of [4, 5, 6]) expect(ask(cardOffset, evidence, zone).symptoms).toEqual([]);
});

test('cannot tell without cold hours, or where one card holds all', () => {
  const one = heatedPlant([{ card: 'A' }, { card: 'A' }, { card: 'A' }], { days: 2 });
  expect(ask(cardOffset, one).unable).toMatch(/fewer than two zones of other input cards/);
  expect(factsOf(cardOffset, one)).toEqual({});
});

test('neighbours on one card are found amid zones of their own ways, scattered ones are not', () => {
  const draught = (zone: number) => (h: number) => 0.3 * Math.sin((zone + 1) * Math.floor(h / 24));
  const moved = (those: readonly number[]) =>
    heatedPlant(
      Array.from({ length: 8 }, (_, zone) => ({
        offsetDegC: (h: number) => draught(zone)(h) + (those.includes(zone) && h > 80 ? 3 : 0),
      })),
    );
  const neighbours = moved([2, 3, 4]);
  for (const zone of [2, 3, 4]) {
    const { chancePValue, otherSideShare } = factsOf(cardOffset, neighbours, zone);
    expect(chancePValue).toBeLessThan(0.01);
    expect(otherSideShare).toBeLessThan(1 / 3);
  }
  for (const zone of neighbours.zones.filter(({ index }) => index < 2 || index > 4))
    expect(ask(cardOffset, neighbours, zone.index).symptoms).toEqual([]);
  const scattered = moved([0, 3, 6]);
  for (const zone of scattered.zones) expect(ask(cardOffset, scattered, zone.index).symptoms).toEqual([]);
});

test('a machine that keeps warm into the weekend is no card', () => {
  const plant = heatedPlant(
    Array.from({ length: 8 }, (_, zone) => ({ offsetDegC: (h: number) => (zone < 4 ? tail(h) : 0) })),
  );
  const evidence = { ...plant, zones: plant.zones.map((zone) => ({ ...zone, machine: zone.index < 4 ? 'M1' : 'M2' })) };
  for (const zone of evidence.zones) expect(ask(cardOffset, evidence, zone.index).symptoms).toEqual([]);
});

/** Heat left from Friday 22:00 on, °C. */
const tail = (h: number): number => (h < 118 ? 0 : 9 * Math.exp((118 - h) / 9));
