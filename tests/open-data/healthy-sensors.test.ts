import { describe, expect } from 'vitest';
import { claims, both, onOpenData } from './open.js';

/** Logs whose sensors are sound by their source: nothing may be claimed of them. */
describe('no sensor is called faulty', () => {
  onOpenData(
    'skab',
    'a water rig with closing valves (Skoltech Anomaly Benchmark, Katser and Kozitsin)',
    async (path) => {
      const { findings } = await both(path);
      expect(findings.zones).toHaveLength(8); // two temperatures in each of four files
      expect(claims(findings)).toEqual([]);
    },
  );

  onOpenData(
    'lbnl-ahu/SZCAV.csv',
    'an air handler in °F with faulty valves and dampers (Granderson et al., Scientific Data 2020)',
    async (path) => {
      const { findings } = await both(path);
      expect(findings.zones).toHaveLength(4);
      expect(claims(findings)).toEqual([]);
      // The outdoor reading is refreshed every quarter of an hour: its steps are none, and no duct is a cold soak.
      expect(findings.zones.flatMap(({ soaks }) => soaks)).toEqual([]);
      const seen = new Set(findings.zones.flatMap(({ symptoms }) => symptoms.map(({ detector }) => detector)));
      expect([...seen]).toEqual(['frozen-record']); // days that are missing by the source
    },
  );

  onOpenData('cooking-pot', 'a pot under control and ten thermocouples in workbooks (Otiato)', async (path) => {
    const { findings } = await both(path);
    expect(findings.sources.map(({ rowsRead }) => rowsRead).sort((a, b) => a - b)).toEqual([
      227, 354, 415, 493, 639, 1057,
    ]);
    expect(claims(findings)).toEqual([]);
  });

  onOpenData(
    'arduino-room',
    'a room in °C and °F (Nieto, Aguilera, Lopez-de-Ipina, Sensors 2021, 21, 6063)',
    async (path) => {
      const { findings } = await both(path);
      expect(findings.zones).toHaveLength(1);
      expect(findings.sources[0]).toMatchObject({ rowsRead: 4759, rowsRejected: 0 });
      expect(claims(findings)).toEqual([]);
    },
  );
});
