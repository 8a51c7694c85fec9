import { describe, expect, test } from 'vitest';
import { checksFor } from '../../src/assemble/checks/checks-for.js';
import { heaterChecks } from '../../src/assemble/checks/heater-checks.js';
import { causes, type Cause, type Probabilities } from '../../src/model/cause.js';
import type { Check, ExpectedValue } from '../../src/model/check.js';
import type { Zone } from '../../src/model/zone.js';

const zone: Zone = {
  ...{ index: 0, name: 'Front jaw', machine: 'M1', sensor: 'pt100', wires: 3, card: '1A', toleranceClass: null },
  ...{ heaterW: 1000, heaterV: 240, samplingMs: 1000, resolutionDegC: 0.1 },
  has: { reading: true, setpoint: true, output: true, running: true },
};

function verdict(shares: Partial<Record<Cause, number>>, status: 'faulty' | 'healthy' = 'faulty') {
  const probabilities = Object.fromEntries(causes.map((cause) => [cause, shares[cause] ?? 0])) as Probabilities;
  return { status, probabilities };
}

const site = { roomDegC: 0, setpointDegC: 100 };
const measured = (checks: readonly Check[]) => checks.filter(({ kind }) => kind === 'measure');
const expectedOf = (checks: readonly Check[], id: string): ExpectedValue =>
  checks.find((check) => check.id === id)!.expected[0]!;

describe('the measurements of a zone', () => {
  test('for a heater verdict the heater comes first; what is unlikely has no measurements of its own', () => {
    const checks = checksFor(zone, verdict({ heater: 0.95, sensor: 0.03 }), site);
    expect(checks[0]).toMatchObject({ id: 'lockout', kind: 'caution' });
    expect(measured(checks)[0]).toMatchObject({ id: 'heater-resistance', where: 'heater', power: 'locked-out' });
    expect(checks.map(({ id }) => id)).not.toContain('card-swap');
    expect(checks.map(({ id }) => id)).not.toContain('prepare');
    const doubted = checksFor(zone, verdict({ heater: 0.85, sensor: 0.1 }), site).map(({ id }) => id);
    expect(doubted.indexOf('sensor-element')).toBeGreaterThan(doubted.indexOf('heater-command'));
    expect(checks.map(({ id }) => id)).not.toContain('recording-display');
  });

  test('a heater that does not go off is asked at its switch first, and not whether its element is whole', () => {
    const signs = { isShared: false, isStuckOn: true };
    const ids = measured(checksFor(zone, verdict({ heater: 0.95 }), site, signs)).map(({ id }) => id);
    expect(ids).toEqual(['heater-switch', 'heater-to-earth', 'heater-current', 'heater-command']);
  });

  test('for an input verdict the swap and the known resistor come first, with ohms by the table', () => {
    const checks = measured(checksFor(zone, verdict({ input: 0.7, sensor: 0.2 }), site));
    expect(checks.slice(0, 2).map(({ id }) => id)).toEqual(['card-swap', 'card-known-resistor']);
    // IEC 60751:2008 table 1: 100.00 Ω at 0 °C, 138.51 Ω at 100 °C.
    const [cold, hot] = checks[1]!.expected;
    expect(cold).toMatchObject({ quantity: 'reading', expectedDegC: 0, appliedOhm: expect.closeTo(100, 2) as number });
    expect(hot).toMatchObject({
      quantity: 'reading',
      expectedDegC: 100,
      appliedOhm: expect.closeTo(138.51, 2) as number,
    });
  });

  test('zones that fail together: what they share first, then a swap with another card', () => {
    const checks = measured(
      checksFor({ ...zone, card: '1A' }, verdict({ input: 0.95 }), site, { isShared: true, isStuckOn: false }),
    );
    expect(checks.slice(0, 2).map(({ id, power }) => [id, power])).toEqual([
      ['card-supply', 'live'],
      ['card-swap', 'locked-out'],
    ]);
    expect(checks[0]!.says).toContain('power on: measure the supply of card 1A');
    expect(checks[1]!.says).toContain('on another card');
    const alone = measured(checksFor({ ...zone, card: '1A' }, verdict({ input: 0.95 }), site));
    expect(alone.map(({ id }) => id)).not.toContain('card-supply');
    expect(alone[0]!.says).toContain('of the same sensor type on card 1A.');
  });

  test('a thermocouple input gets the millivolts of the set point, less those of its terminals', () => {
    const checks = checksFor({ ...zone, sensor: 'tc-k', wires: null }, verdict({ input: 0.9 }), site);
    // NIST Monograph 175, type K: 4.096 mV at 100 °C, terminals at 0 °C.
    expect(expectedOf(checks, 'card-known-voltage')).toMatchObject({
      expectedDegC: 100,
      appliedMv: expect.closeTo(4.096, 3) as number,
    });
  });

  test.each(['pt100', 'tc-k'])('wiring on %s: ohms of the loop, moving, insulation', (sensor) => {
    const checks = measured(checksFor({ ...zone, sensor }, verdict({ wiring: 0.9 }), site));
    const ofWiring = checks.filter(({ outcomes }) => outcomes.some(({ points }) => points === 'wiring'));
    const ids = ofWiring.map(({ id }) => id);
    for (const id of ['cabinet-moving', 'cabinet-to-sheath']) expect(ids).toContain(id);
    expect(ids.some((id) => ['cabinet-loop', 'cabinet-same-end'].includes(id))).toBe(true);
  });

  test('a healthy zone keeps the values of its sensor and input, and nothing else', () => {
    const healthy = checksFor(zone, verdict({ none: 0.5, heater: 0.5 }, 'healthy'), site);
    expect(healthy.some(({ where }) => where === 'heater')).toBe(false);
    expect(measured(healthy).at(-1)!.where).toBe('card');
  });

  test('ids are unique whatever the causes', () => {
    const checks = checksFor(
      zone,
      verdict({ sensor: 0.2, wiring: 0.2, input: 0.2, heater: 0.2, recording: 0.2 }),
      site,
    );
    expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length);
    expect(
      checks.filter(({ power }) => power === 'live').every(({ says }) => /authorised|nothing is opened/i.test(says)),
    ).toBe(true);
  });
});

describe('the circuit of a heater', () => {
  test('ohms and amperes of a rated heater, by Ohm’s law', () => {
    // 1000 W at 240 V: 240² / 1000 = 57.6 Ω and 1000 / 240 = 4.17 A (arithmetic).
    const checks = heaterChecks({ ratedW: 1000, ratedV: 240 });
    const ohms = expectedOf(checks, 'heater-resistance');
    expect(ohms).toMatchObject({ quantity: 'resistance', expectedOhm: expect.closeTo(57.6, 6) as number });
    // Half of a heater of two equal elements in parallel has twice the ohms: outside the band.
    expect(ohms.quantity === 'resistance' && ohms.highOhm! < 2 * 57.6 && ohms.lowOhm! < 57.6).toBe(true);
    expect(expectedOf(checks, 'heater-current')).toMatchObject({ expectedA: expect.closeTo(4.1667, 3) as number });
    expect(expectedOf(checks, 'heater-supply')).toMatchObject({ expectedV: 240, lowV: 216, highV: 264 });
  });

  test('without a rating it says what to read from the nameplate', () => {
    const checks = heaterChecks({ ratedW: null, ratedV: null });
    for (const id of ['heater-resistance', 'heater-current', 'heater-supply']) {
      expect(expectedOf(checks, id)).toMatchObject({
        quantity: 'stated',
        says: expect.stringMatching(/nameplate/) as string,
      });
    }
    expect(expectedOf(heaterChecks({ ratedW: 400, ratedV: null }), 'heater-resistance')).toMatchObject({
      says: 'nameplate volts × volts ÷ 400 W, in ohms',
    });
  });

  test('what needs power comes after what is measured locked out', () => {
    const powers = heaterChecks({ ratedW: null, ratedV: null }).map(({ power }) => power);
    expect(powers).toEqual([...powers].sort((a, b) => (a === b ? 0 : a === 'locked-out' ? -1 : 1)));
  });
});
