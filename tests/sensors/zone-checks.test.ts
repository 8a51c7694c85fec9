import { expect, test } from 'vitest';
import { expectedMeasurements } from '../../src/sensors/expected-measurements.js';
import { sensorIds } from '../../src/sensors/sensor-types.js';
import { zoneChecks } from '../../src/sensors/zone-checks.js';

const bare = { sensor: null, wires: null, toleranceClass: null } as const;

test('words of a plant file give the same list as the values they mean', () => {
  const zone = { sensor: 'PT 100', wires: 2, toleranceClass: 'class A' } as const;
  const site = { roomDegC: 19.5, roomFrom: 'soak', setpointDegC: 180, leadGauge: 'AWG 20', leadLengthM: 10 } as const;
  expect(zoneChecks(zone, site)).toEqual(
    expectedMeasurements('pt100', {
      toleranceClass: 'A',
      wires: 2,
      roomDegC: 19.5,
      roomFrom: 'soak',
      setpointDegC: 180,
      lead: { wire: { awg: 20 }, lengthM: 10 },
    }),
  );
});

test('words that mean nothing count as not stated', () => {
  const odd = { sensor: 'tc-k', wires: null, toleranceClass: 'gold' } as const;
  expect(zoneChecks(odd, { leadGauge: 'thin', leadLengthM: 10 })).toEqual(expectedMeasurements('tc-k'));
  expect(zoneChecks({ ...bare, sensor: 'some sensor' }).map((check) => check.id)).toContain('sensor-type');
});

// IEC 60751: Pt100 is 109.73 Ω at 25 °C, so Pt1000 1097.3 Ω; copper 10.0 Ω at 25 °C (sensor makers’ tables).
test('without a type: lockout first, then how to tell the type, then both ends', () => {
  const checks = zoneChecks(bare, { roomDegC: 25 });
  expect(checks.map((check) => check.id)).toEqual([
    'lockout',
    'prepare',
    'sensor-type',
    'sensor-to-sheath',
    'cabinet-element',
  ]);
  expect(checks[1]!.says).toMatch(/Room 25\.0 °C, as given\./);
  expect(checks[2]!.expected).toEqual([
    {
      ...{ quantity: 'stated', condition: 'room', atDegC: 25 },
      says: expect.stringMatching(
        /^Pt100 109\.7 Ω, .*Pt1000 1097\.3 Ω, .*Cu10 10\.0 Ω, thermocouple a few ohms$/,
      ) as string,
    },
  ]);
});

test('a room off every table still gives the list', () => {
  expect(zoneChecks(bare, { roomDegC: -250 }).length).toBe(5);
  expect(zoneChecks({ ...bare, sensor: 'ni120' }, { roomDegC: -250 })[0]!.id).toBe('lockout');
});

test.each(sensorIds.flatMap((sensor) => ([2, 3, 4] as const).map((wires) => [sensor, wires] as const)))(
  'each outcome of a measurement of %s with %i wires says by which value it is known',
  (sensor, wires) => {
    for (const check of expectedMeasurements(sensor, { wires, setpointDegC: 180 })) {
      const texts = check.outcomes.map(({ says }) => says);
      expect(new Set(texts).size, check.id).toBe(texts.length);
      for (const { result, says } of check.outcomes) {
        if (result === 'high') expect(says, check.id).toMatch(/\bmore\b/i);
        if (result === 'low') expect(says, check.id).toMatch(/\bless\b|\blow\b/i);
      }
    }
  },
);
