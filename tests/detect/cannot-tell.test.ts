import { describe, expect, test } from 'vitest';
import { judges } from '../../src/detect/index.js';
import type { Evidence, Need } from '../../src/model/detector.js';
import type { Zone } from '../../src/model/zone.js';
import { makeZone, type MadeSample } from '../make/blocks.js';
import { evidenceOf, MINUTE_MS, MONDAY_MS, zoneLog } from '../make/zone-log.js';

type Column = 'setpoint' | 'output' | 'running';

/** A sample without some of its columns. */
function without(sample: MadeSample, columns: readonly Column[]): MadeSample {
  const { timeMs, degC, setpointDegC, outputPercent, running } = sample;
  return {
    timeMs,
    degC,
    ...(setpointDegC === undefined || columns.includes('setpoint') ? {} : { setpointDegC }),
    ...(outputPercent === undefined || columns.includes('output') ? {} : { outputPercent }),
    ...(running === undefined || columns.includes('running') ? {} : { running }),
  };
}

/** From half past seven, when all is hot, to a quarter to ten at night: no start, no stop for the night. */
const isHotDay = ({ timeMs }: MadeSample) => {
  const minute = (timeMs - MONDAY_MS) / MINUTE_MS;
  return minute >= 450 && minute < 1305;
};

interface Shortage {
  readonly zoneCount?: number;
  readonly columns?: readonly Column[];
  readonly isHotDay?: boolean;
  readonly hasAlarms?: boolean;
}

/** A healthy log that lacks something. */
function healthy({ zoneCount = 4, columns = [], isHotDay: isDay = false, hasAlarms = true }: Shortage): Evidence {
  const logs = Array.from({ length: zoneCount }, (_, i) =>
    zoneLog({ seed: 1 + i, setpointDegC: 175 + 5 * i, days: isDay ? 1 : 4 })
      .filter((sample) => !isDay || isHotDay(sample))
      .map((sample) => without(sample, columns)),
  );
  const has: Zone['has'] = {
    reading: true,
    setpoint: !columns.includes('setpoint'),
    output: !columns.includes('output'),
    running: !columns.includes('running'),
  };
  const zones = logs.map((_, index) => makeZone({ index, samplingMs: 30_000, resolutionDegC: 0.1, has }));
  return evidenceOf(logs, { zones, ...(hasAlarms ? { alarms: [] } : {}) });
}

/** A log that lacks what a detector says it needs. */
const lacking: Readonly<Record<Exclude<Need, 'reading' | 'card'>, Evidence>> = {
  setpoint: healthy({ columns: ['setpoint'] }),
  output: healthy({ columns: ['output'] }),
  running: healthy({ columns: ['running'], hasAlarms: false }),
  soak: healthy({ isHotDay: true }),
  peers: healthy({ zoneCount: 1 }),
  'output-or-peers': healthy({ zoneCount: 1, columns: ['output'] }),
  alarms: healthy({ hasAlarms: false }),
};

/** A day of one hot zone, its reading and nothing else. */
const poorest = healthy({
  zoneCount: 1,
  columns: ['setpoint', 'output', 'running'],
  isHotDay: true,
  hasAlarms: false,
});

/** Seen in the reading alone, at any time: that nothing of the kind is there is an answer. */
const seenInReadingAlone = [
  'sensor-opens',
  'code-value',
  'returning-steps',
  'lasting-step',
  'spikes',
  'scatter-growth',
  'repairs',
];
/** Watches only logs without outputs, where it may see others; where outputs are logged, others look. */
const looksOnlyWithoutOutput = ['peer-residual'];

const unableOf = (id: string, evidence: Evidence) => {
  const judge = judges.find(({ meta }) => meta.id === id)!;
  return judge.judge(evidence, judge.meta.defaults).map(({ unable }) => unable ?? 'told');
};

describe.each(judges.map(({ meta }) => [meta.id, meta.needs] as const))('judge %s', (id, needs) => {
  const told = needs.filter((need): need is keyof typeof lacking => need in lacking);

  test.each(told.map((need) => [need]))('cannot tell without its %s', (need) => {
    if (need === 'peers' && looksOnlyWithoutOutput.includes(id))
      return expect(unableOf(id, poorest)[0]).toMatch(/needed/);
    for (const answer of unableOf(id, lacking[need])) expect(answer, `${id} without ${need}`).toMatch(/^Zone /);
  });

  test('says of a day of one hot reading what it can', () => {
    const [answer] = unableOf(id, poorest);
    if (seenInReadingAlone.includes(id)) expect(answer).toBe('told');
    else expect(answer).toMatch(/^Zone /);
  });
});

test('says how large a change must be to show on a machine that is never cold', () => {
  for (const id of ['slow-drift', 'duty-shift', 'wet-recovery'])
    for (const answer of unableOf(id, lacking.soak)) expect(answer).toMatch(/below [\d.]+ (°C|%)/);
});

test('says how large a step must be to show in whole degrees', () => {
  const log = zoneLog({ days: 1, resolutionDegC: 1 });
  const evidence = evidenceOf([log], { zones: [makeZone({ index: 0, samplingMs: 30_000, resolutionDegC: 1 })] });
  // Three steps of a degree; an ohm in a Pt100 circuit makes 2.6 °C (IEC 60751, slope at 50 °C).
  expect(unableOf('returning-steps', evidence)[0]).toMatch(/below 3\.0 °C.* 1 Ω makes 2\.6 °C/);
});
