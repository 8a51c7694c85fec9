import { expect, test } from 'vitest';
import { judges } from '../../src/detect/index.js';
import { runJudges } from '../../src/detect/run-judges.js';
import { weighPlant } from '../../src/weigh/weigh-plant.js';
import { readingState } from '../../src/model/sample-block.js';
import type { Evidence } from '../../src/model/detector.js';
import type { MadeSample } from '../make/blocks.js';
import { evidenceOf, HOUR_MS, MONDAY_MS, zoneLog } from '../make/zone-log.js';

/** Its cells are empty but in some hours of the log. */
const readIn = (fromHour: number, toHour: number, seed: number): MadeSample[] =>
  zoneLog({
    seed,
    recorded: (s) => {
      const hour = (s.timeMs - MONDAY_MS) / HOUR_MS;
      return hour >= fromHour && hour < toHour ? s : { ...s, degC: NaN, state: readingState.blank };
    },
  });
const statuses = (evidence: Evidence) => {
  const { outcomes } = runJudges(evidence, judges);
  const verdicts = weighPlant(evidence.zones, outcomes, { zones: [] });
  return verdicts.map(({ status }) => status);
};

test('a zone with next to no readings, or without any at the end, cannot be judged, and is not called healthy', () => {
  const few = [readIn(0, 0, 1), readIn(90, 96, 2), readIn(0, 72, 3)];
  const evidence = evidenceOf([...few, readIn(0, 90, 4), zoneLog({ seed: 5 })]);
  expect(statuses(evidence)).toEqual([
    ...['insufficient-data', 'insufficient-data', 'insufficient-data', 'healthy', 'healthy'],
  ]);
  const { outcomes } = runJudges(evidence, judges);
  const whyOf = (zone: number) =>
    new Set(outcomes.filter((it) => it.zone === zone && it.symptoms.length === 0).map(({ unable }) => unable));
  expect([0, 1, 2].map(whyOf)).toEqual([
    new Set(['Zone Zone 1: it has no reading in the 96.0 h of the log.']),
    new Set(['Zone Zone 2: it has readings in 6.0 h of the 96.0 h of the log, too few to tell anything.']),
    new Set(['Zone Zone 3: it has no reading in the last 24.0 h of the log, so how it is now cannot be told.']),
  ]);
});

test('a log that is short as a whole is judged from half an hour on', () => {
  const short = (hours: number) =>
    evidenceOf([1, 2, 3].map((seed) => zoneLog({ seed }).filter((s) => s.timeMs < MONDAY_MS + hours * HOUR_MS)));
  expect(statuses(short(1))).toEqual(['healthy', 'healthy', 'healthy']);
  expect(new Set(statuses(short(0.4)))).toEqual(new Set(['insufficient-data']));
});
