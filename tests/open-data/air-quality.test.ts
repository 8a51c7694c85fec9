import { describe, expect } from 'vitest';
import { readingState } from '../../src/model/sample-block.js';
import { both, claims, onOpenData, symptomsOf } from './open.js';

/** Air Quality, De Vito et al., UCI Machine Learning Repository: -200 stands for a missing value (the source's convention). */
describe('a station that writes -200 where it has no value', () => {
  onOpenData('uci-air-quality/AirQualityUCI.csv', 'a code of the recording, and no fault', async (path) => {
    const { gathered, findings } = await both(path);
    const [zone] = findings.zones;
    const [code, ...others] = symptomsOf(zone!, 'code-value');
    expect(others).toEqual([]);
    expect(code!.facts).toMatchObject({ valueDegC: -200, sampleCount: 366, spanCount: 16, isInAllColumnsCount: 1 });
    expect(code!.start).toBe('2004-04-01T14:00:00.000Z');
    // 76 hourly rows from 2005-02-08 17:00: 75 hours from the first to the last.
    const runs = gathered.evidence.episodes.get('open-runs')![0]!;
    const longest = runs.reduce((a, b) => (b.endMs - b.startMs > a.endMs - a.startMs ? b : a));
    expect(longest.facts).toMatchObject({ sampleCount: 76, stateCode: readingState.noValue });
    expect(longest.startMs).toBe(Date.parse('2005-02-08T17:00Z'));
    expect(claims(findings)).toEqual([]);
    expect(symptomsOf(zone!, 'sensor-opens')).toEqual([]);
  });
});
