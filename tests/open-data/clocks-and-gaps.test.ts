import { describe, expect } from 'vitest';
import { lookAt } from '../../src/commands/preview/preview-facts.js';
import { both, claims, onOpenData, symptomsOf } from './open.js';

/** Numenta Anomaly Benchmark, Lavin and Ahmad 2015. Gaps and the clock were counted on the files themselves. */
describe('clocks and gaps', () => {
  onOpenData(
    'nab/machine_temperature_system_failure.csv',
    'the clock set back is told, and no sensor fault claimed',
    async (path) => {
      const { findings } = await both(path);
      // The source calls its anomalies a planned shutdown and a failure of the machine, not of the sensor.
      expect(claims(findings)).toEqual([]);
      expect(findings.problems.find(({ code }) => code === 'clock-jump')).toMatchObject({ line: 10_151, count: 1 });
      expect(findings.problems.find(({ code }) => code === 'repeated-rows')!.what).toContain('12 rows');
    },
  );

  onOpenData('nab/ambient_temperature_system_failure.csv', 'the gaps are told and are no fault', async (path) => {
    const { findings } = await both(path);
    expect(claims(findings)).toEqual([]);
    const [record] = symptomsOf(findings.zones[0]!, 'frozen-record');
    expect(record!.facts).toMatchObject({ longestGapMinutes: 626_400 / 60, ownGapCount: 0 });
    // Of ten holes longer than one and a half steps, one is a single lost row, which is everyday and no gap.
    const [zone] = (await lookAt([path], {})).zones;
    expect(zone).toMatchObject({ samples: 7267, gaps: 9, longestGapMinutes: 626_400 / 60 });
  });
});
