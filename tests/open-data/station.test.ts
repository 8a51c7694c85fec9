import { describe, expect } from 'vitest';
import { learnedCodesOf } from '../../src/detect/shared/readings/learned-codes.js';
import { both, claims, onOpenData, symptomsOf, zoneOf } from './open.js';

/**
 * SensorScope, Grand St Bernard 2007, station 17, raw; the files of de Bruijn, Nguyen, Bucur, Tei, SENSORNETS 2016.
 * Columns by its stbernard-meteo-def.txt. Counts were made on the file itself; no list of faults is known.
 */
const file = 'sensorscope-raw/stbernard-meteo-17.txt';
const names =
  'Station,Year,Month,Day,Hour,Minute,Second,Epoch,Ambient PV,Surface PV,Solar,Humidity,Moisture,Watermark,Rain,Wind,Direction'.split(
    ',',
  );

describe('a station with one dead sensor', () => {
  onOpenData(file, 'the ambient sensor returns to a code, the surface sensor is not stuck', async (path) => {
    const { gathered, findings } = await both(path, { names });
    const ambient = zoneOf(findings, 'Ambient');
    const [code, ...others] = symptomsOf(ambient, 'code-value');
    expect(others).toEqual([]);
    expect(code!.facts).toMatchObject({ valueDegC: -1, sampleCount: 5714 });
    expect(symptomsOf(ambient, 'stuck-reading')).toEqual([]);
    expect(['faulty', 'watch']).toContain(ambient.status);
    const surface = zoneOf(findings, 'Surface');
    expect([...symptomsOf(surface, 'stuck-reading'), ...symptomsOf(surface, 'code-value')]).toEqual([]);

    const zone = gathered.evidence.zones.find((it) => it.name === 'Ambient')!;
    const spans = learnedCodesOf(gathered.evidence)[zone.index]![0]!.spans;
    const spanAt = (start: string) => spans.find(({ startMs }) => startMs === Date.parse(start));
    // The burst of 19 rows with which it begins to stay, and the first long run.
    expect(spanAt('2007-10-06T07:30:33Z')).toMatchObject({ sampleCount: 19 });
    expect(spanAt('2007-10-08T12:36:30Z')).toMatchObject({
      sampleCount: 111,
      endMs: Date.parse('2007-10-08T16:16:29Z'),
    });
    expect(Date.parse(code!.start)).toBeGreaterThan(Date.parse('2007-10-06T00:00Z'));
    expect(Date.parse(code!.start)).toBeLessThanOrEqual(Date.parse('2007-10-06T07:30:33Z'));
  });

  onOpenData(file, 'without names no column is claimed faulty, and the reader is told why', async (path) => {
    const { findings } = await both(path);
    expect(claims(findings)).toEqual([]);
    expect(new Set(findings.zones.map(({ status }) => status))).toEqual(new Set(['insufficient-data']));
    expect(findings.assumptions.join(' ')).toContain('nothing says which columns are temperatures');
    expect(findings.problems.map(({ todo }) => todo).join(' ')).toContain('--names');
    // What was seen stays listed all the same.
    const [code] = symptomsOf(zoneOf(findings, 'Column 9'), 'code-value');
    expect(code!.facts).toMatchObject({ valueDegC: -1, sampleCount: 5714 });
    expect(symptomsOf(zoneOf(findings, 'Column 10'), 'stuck-reading')).toEqual([]);
  });
});
