import { describe, expect, test } from 'vitest';
import { cell, type MadeZone, type Plant } from '../make/made-plant.js';
import { plainFault, smallPlant } from '../make/small-plant.js';

const dayS = 86400;

function rowsOf(plant: Plant, keep: (row: number) => boolean): number[] {
  return [...plant.timeS.keys()].filter(keep);
}
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const bad = (zone: MadeZone, row: number): boolean =>
  zone.state[row] === cell.aboveScale || zone.state[row] === cell.belowScale;
const inputAlarms = (plant: Plant, zone: number): number =>
  plant.alarms.filter((alarm) => alarm.zone === zone && alarm.kind === 'input').length;
/** Rows in which the machine ran, after warm-up. */
const runs = (plant: Plant, row: number): boolean => plant.machines[0]!.running[row] === 1;

/** What each fault leaves in the log: the trade's own table of signs (common practice). */
describe('what each fault leaves behind', () => {
  test('an open element: full scale until replaced, alarm, output zero, the true zone cools', () => {
    const fixedS = 1.55 * dayS;
    const plant = smallPlant({ faults: [plainFault('sensor_open', 1, 1.4, {}, { fixedS, bypassAfterS: null })] });
    const zone = plant.zones[1]!;
    const open = rowsOf(plant, (row) => plant.timeS[row]! > 1.401 * dayS && plant.timeS[row]! < fixedS);
    expect(open.every((row) => zone.state[row] === cell.aboveScale)).toBe(true);
    expect(open.every((row) => zone.outputPercent[row] === 0)).toBe(true);
    expect(zone.trueDegC[open.at(-1)!]!).toBeLessThan(zone.trueDegC[open[0]!]! - 40);
    expect(open.some((row) => runs(plant, row))).toBe(false);
    const truth = plant.truth.zones[1]!;
    expect(truth).toMatchObject({ cause: 'sensor', fault: 'sensor_open', opens: 1, drawn: 'sensor_open' });
    expect(truth.downtimeMin).toBeGreaterThan(100);
  });

  test('a hot open closes on cooling and never opens a cold zone', () => {
    const plant = smallPlant({ faults: [plainFault('sensor_hot_open', 0, 0.5)] });
    const zone = plant.zones[0]!;
    const open = rowsOf(plant, (row) => bad(zone, row));
    expect(plant.truth.zones[0]!.opens).toBeGreaterThan(5);
    expect(open.length).toBeGreaterThan(5);
    expect(open.filter((row) => zone.trueDegC[row]! < 120)).toEqual([]);
  });

  test('a flexing cable opens while the machine moves, in bursts', () => {
    const plant = smallPlant({ everyS: 2, days: 2, faults: [plainFault('wire_flex_open', 2, 0.3)] });
    const zone = plant.zones[2]!;
    const opening = rowsOf(plant, (row) => row > 0 && bad(zone, row) && !bad(zone, row - 1));
    // The row before tells whether the machine moved when the wire opened.
    const moving = opening.filter((row) => runs(plant, row - 1));
    expect(opening.length).toBeGreaterThan(20);
    expect(moving.length / opening.length).toBeGreaterThan(0.55);
    expect(inputAlarms(plant, 2)).toBeGreaterThan(10);
    const gapsS = opening.slice(1).map((row, i) => plant.timeS[row]! - plant.timeS[opening[i]!]!);
    expect(gapsS.filter((gapS) => gapS < 90).length / gapsS.length).toBeGreaterThan(0.4);
  });

  test('a broken wire has short opens first and is open for good after', () => {
    const plant = smallPlant({ everyS: 2, days: 3, faults: [plainFault('wire_broken', 0, 0.4)] });
    const zone = plant.zones[0]!;
    const after = rowsOf(plant, (row) => plant.timeS[row]! > 1.41 * dayS);
    expect(after.every((row) => bad(zone, row))).toBe(true);
    expect(plant.truth.zones[0]!.opens).toBeGreaterThan(10);
  });

  test.each([
    [2, 1, 1],
    [3, 1, 1],
    [3, -1, -1],
  ] as const)('contact resistance on %s wires, leg %s, reads with sign %s', (wires, badLeg, sign) => {
    const base = smallPlant({ days: 1, wires }).parameters.zones[0]!;
    const plant = smallPlant({
      days: 3,
      wires,
      zone: { sensor: { ...base.sensor, wires, badLeg } },
      faults: [plainFault('wire_contact', 0, 0.4)],
    });
    const zone = plant.zones[0]!;
    const shifts = rowsOf(plant, (row) => zone.state[row] === cell.good).map(
      (row) => sign * (zone.readingDegC[row]! - zone.trueDegC[row]!),
    );
    const large = shifts.filter((shift) => shift > 4);
    expect(large.length).toBeGreaterThan(20);
    // 1 Ω is about 2.6 °C at room temperature and 2.68 °C at 150 °C: 4 Ω × 1.6 at most.
    expect(Math.max(...shifts)).toBeLessThan(4 * 1.6 * 1.3 * 2.75);
    expect(shifts.filter((shift) => shift < -4).length).toBeLessThan(large.length / 4);
  });

  test.each(['four-wire', 'thermocouple'])('contact resistance leaves no trace on a %s', (which) => {
    const wish = which === 'four-wire' ? ({ wires: 4 } as const) : ({ sensor: 'tc-k', wires: 2 } as const);
    const plant = smallPlant({ ...wish, days: 2, faults: [plainFault('wire_contact', 0, 0.4)] });
    expect(plant.truth.zones[0]).toMatchObject({ cause: 'none', drawn: 'wire_contact', onset: null });
  });

  test('wet terminals read low, worst after washing, and dry', () => {
    const plant = smallPlant({ days: 3, machine: { washDownsPerDay: 1 }, faults: [plainFault('wire_wet', 0, 0.2)] });
    const zone = plant.zones[0]!;
    const shift = (row: number): number => zone.readingDegC[row]! - zone.trueDegC[row]!;
    const lowest = rowsOf(plant, () => true).reduce((least, row) => (shift(row) < shift(least) ? row : least), 0);
    expect(shift(lowest)).toBeLessThan(-2);
    const later = lowest + Math.round((6 * 3600) / 30);
    expect(Math.abs(shift(later))).toBeLessThan(Math.abs(shift(lowest)) / 2);
    expect(Math.max(...rowsOf(plant, (row) => plant.timeS[row]! > 0.3 * dayS).map(shift))).toBeLessThan(3);
  });

  test('a shorted platinum sensor reads full-scale low; a shorted thermocouple reads the terminals', () => {
    const platinum = smallPlant({ faults: [plainFault('wire_short', 0, 1.4)] });
    const rows = rowsOf(platinum, (row) => platinum.timeS[row]! > 1.41 * dayS);
    expect(rows.every((row) => platinum.zones[0]!.state[row] === cell.belowScale)).toBe(true);
    const couple = smallPlant({ sensor: 'tc-k', wires: 2, faults: [plainFault('wire_short', 0, 1.4)] });
    const readings = rowsOf(couple, (row) => couple.timeS[row]! > 1.41 * dayS).map(
      (row) => couple.zones[0]!.readingDegC[row]!,
    );
    expect(Math.max(...readings)).toBeLessThan(35);
    expect(Math.min(...readings)).toBeGreaterThan(12);
  });

  test('swapped leads turn the reading of a thermocouple round: it sinks as the zone heats; platinum has no poles', () => {
    const faults = [plainFault('leads_swapped', 0, 0.9)];
    const couple = smallPlant({ sensor: 'tc-k', wires: 2, faults });
    const zone = couple.zones[0]!;
    const heated = rowsOf(couple, (row) => couple.timeS[row]! > 1.4 * dayS && zone.outputPercent[row] === 100);
    expect(heated.length).toBeGreaterThan(100);
    const falling = heated.filter((row) => zone.trueDegC[row]! > 60 && !bad(zone, row));
    // The voltage of the tip above the terminals, with the other sign: as far below them as the tip is above.
    for (const row of falling) expect(Math.abs(zone.readingDegC[row]! + zone.trueDegC[row]! - 2 * 24)).toBeLessThan(30);
    expect(falling.length).toBeGreaterThan(3);
    expect(couple.truth.zones[0]).toMatchObject({ cause: 'wiring', fault: 'leads_swapped' });
    expect(Math.min(...smallPlant({ faults }).zones[0]!.readingDegC)).toBeGreaterThan(15);
  });

  test('an input card takes all its zones at the same second and leaves other cards alone', () => {
    const faults = [0, 1].map((zone) => plainFault('card_blips', zone, 0.3));
    const plant = smallPlant({ everyS: 2, days: 2, faults });
    const [a, b, c] = [plant.zones[0]!, plant.zones[1]!, plant.zones[2]!];
    const blips = rowsOf(plant, (row) => bad(a, row));
    expect(blips.length).toBeGreaterThan(10);
    expect(blips).toEqual(rowsOf(plant, (row) => bad(b, row)));
    expect(rowsOf(plant, (row) => bad(c, row))).toEqual([]);
  });

  test('a card that loses some channels at a time takes each zone in its share of the same moments', () => {
    const faults = [0, 1].map((zone) => plainFault('card_blips', zone, 0.3, { zoneShare: 0.6, perHour: 2 }));
    const plant = smallPlant({ everyS: 2, days: 2, faults });
    const starts = plant.zones
      .slice(0, 2)
      .map((zone) => rowsOf(plant, (row) => bad(zone, row) && !bad(zone, Math.max(0, row - 1))));
    const shared = starts[0]!.filter((row) => starts[1]!.includes(row)).length;
    for (const own of starts) {
      expect(shared / own.length).toBeGreaterThan(0.3);
      expect(shared / own.length).toBeLessThan(0.9);
    }
  });

  test('a card reference moves all its zones alike, which the loop turns into a true error', () => {
    const faults = [0, 1].map((zone) => plainFault('card_reference', zone, 1));
    const plant = smallPlant({ days: 2, faults });
    const offsets = plant.zones.map((zone) =>
      mean(
        rowsOf(plant, (row) => plant.timeS[row]! > 1.5 * dayS && runs(plant, row)).map(
          (row) => zone.readingDegC[row]! - zone.trueDegC[row]!,
        ),
      ),
    );
    expect(offsets[0]! - offsets[2]!).toBeCloseTo(5, -0.3);
    expect(offsets[1]! - offsets[3]!).toBeCloseTo(5, -0.3);
  });

  test('a frozen channel does not move at all while output and neighbours do', () => {
    const plant = smallPlant({ faults: [plainFault('channel_frozen', 0, 1.5)] });
    const rows = rowsOf(plant, (row) => plant.timeS[row]! > 1.501 * dayS);
    expect(new Set(rows.map((row) => plant.zones[0]!.readingDegC[row])).size).toBe(1);
    expect(new Set(rows.map((row) => plant.zones[1]!.readingDegC[row])).size).toBeGreaterThan(100);
    expect(new Set(rows.map((row) => plant.zones[0]!.outputPercent[row])).size).toBeGreaterThan(1);
  });

  test('a channel that freezes again and again comes alive between', () => {
    const plant = smallPlant({ faults: [plainFault('channel_frozen', 0, 0.5, {}, { shape: 'again-and-again' })] });
    const { readingDegC } = plant.zones[0]!;
    const still = rowsOf(plant, (row) => row > 0 && plant.timeS[row]! > 0.5 * dayS).map((row) =>
      Number(readingDegC[row] === readingDegC[row - 1]),
    );
    expect(mean(still)).toBeGreaterThan(0.1);
    expect(mean(still)).toBeLessThan(0.9);
  });

  test('a contact that opens with heat shifts the reading hot and never cold', () => {
    const plan = plainFault('wire_contact', 0, 0, { perHour: 20 }, { shape: 'when-hot' });
    const plant = smallPlant({ days: 3, wires: 2, faults: [plan] });
    const zone = plant.zones[0]!;
    const isShifted = (row: number): boolean => zone.readingDegC[row]! - zone.trueDegC[row]! > 4;
    const isGood = (row: number): boolean => zone.state[row] === cell.good;
    const workDegC = zone.setpointDegC.reduce((most, degC) => Math.max(most, degC || 0), 0);
    const [hot, cold] = [
      rowsOf(plant, (row) => isGood(row) && zone.trueDegC[row]! > workDegC - 5),
      rowsOf(plant, (row) => isGood(row) && zone.trueDegC[row]! < workDegC - 60),
    ];
    expect(mean(hot.map((row) => Number(isShifted(row))))).toBeGreaterThan(0.05);
    expect(cold.length).toBeGreaterThan(100);
    expect(cold.filter(isShifted)).toEqual([]);
  });

  test('a card that holds its last value hides the first seconds of an open', () => {
    const base = smallPlant({ days: 1 }).parameters.zones[0]!;
    const made = (holdsLastS: number) =>
      smallPlant({
        everyS: 1,
        days: 1,
        zone: { input: { ...base.input, holdsLastS } },
        faults: [plainFault('wire_flex_open', 0, 0.3)],
      });
    const badRows = (plant: ReturnType<typeof made>) => rowsOf(plant, (row) => bad(plant.zones[0]!, row)).length;
    const [shown, hidden] = [badRows(made(0)), badRows(made(20))];
    expect(shown).toBeGreaterThan(20);
    expect(hidden).toBeLessThan(0.7 * shown);
  });

  test('drift shows nothing while the loop runs and shows in a cold soak', () => {
    const plant = smallPlant({ seed: 4, days: 4, faults: [plainFault('sensor_drift', 0, 0.5, { finalDegC: -6 })] });
    const [drifting, ...peers] = plant.zones;
    const lastDay = (row: number): boolean => plant.timeS[row]! > 3 * dayS;
    const cold = rowsOf(plant, (row) => lastDay(row) && plant.timeS[row]! < 3.2 * dayS);
    const running = rowsOf(plant, (row) => lastDay(row) && runs(plant, row));
    expect(mean(running.map((row) => drifting!.readingDegC[row]!))).toBeCloseTo(150, -0.3);
    const peerDegC = mean(peers.map((peer) => mean(cold.map((row) => peer.readingDegC[row]!))));
    expect(mean(cold.map((row) => drifting!.readingDegC[row]!)) - peerDegC).toBeCloseTo(-6, -0.5);
    expect(plant.truth.zones[0]!.driftC).toBeCloseTo(-6, 5);
    expect(inputAlarms(plant, 0)).toBe(0);
  });

  test('noise spreads one zone only', () => {
    const plant = smallPlant({ days: 3, faults: [plainFault('sensor_noise', 0, 0.5)] });
    const spread = (zone: MadeZone): number => {
      const values = rowsOf(plant, (row) => plant.timeS[row]! > 2 * dayS && runs(plant, row)).map(
        (row) => zone.readingDegC[row]!,
      );
      return Math.sqrt(mean(values.map((value) => (value - mean(values)) ** 2)));
    };
    expect(spread(plant.zones[0]!)).toBeGreaterThan(3 * spread(plant.zones[1]!));
  });

  test('a dead heater: reading falls with output at 100 %', () => {
    const plant = smallPlant({ faults: [plainFault('heater_dead', 0, 1.5)] });
    const zone = plant.zones[0]!;
    const rows = rowsOf(
      plant,
      (row) => plant.timeS[row]! > 1.53 * dayS && plant.timeS[row]! < 1.8 * dayS && zone.setpointDegC[row] !== 0,
    );
    expect(mean(rows.map((row) => zone.outputPercent[row]!))).toBeGreaterThan(95);
    expect(zone.readingDegC[rows.at(-1)!]!).toBeLessThan(100);
    expect(plant.alarms.some((alarm) => alarm.zone === 0 && alarm.kind === 'low')).toBe(true);
  });

  test('half a heater: duty up by 1 ÷ share left, soak offset unchanged', () => {
    const plant = smallPlant({ days: 4, faults: [plainFault('heater_half', 0, 1.9)] });
    const zone = plant.zones[0]!;
    const duty = (fromDay: number, toDay: number): number =>
      mean(
        rowsOf(
          plant,
          (row) => plant.timeS[row]! > fromDay * dayS && plant.timeS[row]! < toDay * dayS && runs(plant, row),
        ).map((row) => zone.outputPercent[row]!),
      );
    expect(duty(2.4, 4) / duty(0.4, 1.85)).toBeGreaterThan(1.5);
    expect(duty(2.4, 4) / duty(0.4, 1.85)).toBeLessThan(2.1);
    const cold = (day: number): number =>
      mean(
        rowsOf(plant, (row) => plant.timeS[row]! > (day + 0.1) * dayS && plant.timeS[row]! < (day + 0.2) * dayS).map(
          (row) => zone.readingDegC[row]! - plant.zones[1]!.readingDegC[row]!,
        ),
      );
    expect(Math.abs(cold(3) - cold(1))).toBeLessThan(0.5);
  });

  test('a stuck relay: reading climbs with output at zero, until the thermostat cuts', () => {
    const plant = smallPlant({ faults: [plainFault('relay_stuck', 0, 1.5)] });
    const zone = plant.zones[0]!;
    const rows = rowsOf(
      plant,
      (row) => plant.timeS[row]! > 1.51 * dayS && plant.timeS[row]! < 1.7 * dayS && zone.setpointDegC[row] !== 0,
    );
    expect(Math.max(...rows.map((row) => zone.readingDegC[row]!))).toBeGreaterThan(180);
    expect(Math.max(...rows.map((row) => zone.trueDegC[row]!))).toBeLessThan(150 + 80 + 12);
    expect(mean(rows.map((row) => zone.outputPercent[row]!))).toBeLessThan(5);
    expect(plant.alarms.some((alarm) => alarm.zone === 0 && alarm.kind === 'high')).toBe(true);
  });

  test('a tag that hangs freezes reading, set point and output together, and only in the recorder', () => {
    const plant = smallPlant({ faults: [plainFault('tag_frozen', 0, 1.4, {}, { fixedS: 1.7 * dayS })] });
    const zone = plant.zones[0]!;
    const rows = rowsOf(plant, (row) => plant.timeS[row]! >= 1.4 * dayS && plant.timeS[row]! < 1.7 * dayS);
    for (const values of [zone.readingDegC, zone.setpointDegC, zone.outputPercent])
      expect(new Set(rows.map((row) => values[row])).size).toBe(1);
    expect(new Set(rows.map((row) => zone.trueDegC[row])).size).toBeGreaterThan(100);
    expect(plant.truth.zones[0]).toMatchObject({ cause: 'recording', fault: 'tag_frozen' });
  });

  test('a healthy plant has no cause, no opens and no input alarm', () => {
    const plant = smallPlant({
      days: 6,
      lookAlikes: [{ kind: 'thick-product', machine: 0, zone: -1, startS: 2.4 * dayS, endS: 2.6 * dayS, size: 1.8 }],
    });
    expect(
      plant.truth.zones.every(({ cause, fault, opens }) => cause === 'none' && fault === 'none' && opens === 0),
    ).toBe(true);
    expect(plant.alarms.some(({ kind }) => kind === 'input')).toBe(false);
    expect(plant.truth.zones[0]!.lookAlikes).toEqual(['thick-product']);
  });
});
