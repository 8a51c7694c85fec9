import { expect, test } from 'vitest';
import { judges } from '../../src/detect/index.js';
import { runJudges } from '../../src/detect/run-judges.js';
import { weighPlant } from '../../src/weigh/weigh-plant.js';
import { readingState } from '../../src/model/sample-block.js';
import type { Evidence } from '../../src/model/detector.js';
import type { MadeSample } from '../make/blocks.js';
import { evidenceOf, HOUR_MS, MONDAY_MS, zoneLog } from '../make/zone-log.js';

/** Only the first so many hours of a zone hold readings. */
const first = (hours: number, seed: number): MadeSample[] =>
  zoneLog({
    seed,
    recorded: (s) => (s.timeMs < MONDAY_MS + hours * HOUR_MS ? s : { ...s, degC: NaN, state: readingState.blank }),
  });
const statuses = (evidence: Evidence) => {
  const { outcomes } = runJudges(evidence, judges);
  const verdicts = weighPlant(evidence.zones, outcomes, { zones: [] });
  return verdicts.map(({ status }) => status);
};

test('a zone with next to no readings cannot be judged, and is not called healthy', () => {
  const evidence = evidenceOf([first(0, 1), first(6, 2), first(24, 3), zoneLog({ seed: 4 }), zoneLog({ seed: 5 })]);
  expect(statuses(evidence)).toEqual([...['insufficient-data', 'insufficient-data', 'healthy', 'healthy', 'healthy']]);
  const { outcomes } = runJudges(evidence, judges);
  const unable = outcomes.filter(({ zone, symptoms }) => zone === 1 && symptoms.length === 0).map((it) => it.unable);
  expect(new Set(unable)).toEqual(
    new Set(['Zone Zone 2: it has readings in 6.0 h of the 96.0 h of the log, too few to tell anything.']),
  );
});

test('a log that is short as a whole is judged from half an hour on', () => {
  const short = (hours: number) =>
    evidenceOf([1, 2, 3].map((seed) => zoneLog({ seed }).filter((s) => s.timeMs < MONDAY_MS + hours * HOUR_MS)));
  expect(statuses(short(1))).toEqual(['healthy', 'healthy', 'healthy']);
  expect(new Set(statuses(short(0.4)))).toEqual(new Set(['insufficient-data']));
});
