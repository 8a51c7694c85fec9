import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { judges, watchers } from '../../src/detect/index.js';
import { runJudges } from '../../src/detect/run-judges.js';
import { startWatchers } from '../../src/detect/run-watchers.js';
import type { Episode, Evidence, Facts, Outcome } from '../../src/model/detector.js';
import { readingState } from '../../src/model/sample-block.js';
import { makeBlock, makeZone, type MadeSample } from '../make/blocks.js';
import { heatedPlant, rising, sound } from '../make/digests.js';
import { faultyPlant } from '../make/faulty-plant.js';
import { DAY_MS, evidenceOf, HOUR_MS, MONDAY_MS, zoneLog, zoneOfLog } from '../make/zone-log.js';

const headings = [
  'What it sees',
  'How it decides',
  'Settings',
  'When it cannot tell',
  'What looks the same',
  'What to check',
  'Source',
];

/** The last word of a fact's name is its unit, or says that it is a count, a share, a ratio … */
const unitWords =
  /(DegC|Ms|S|Minutes|Hours|Days|Percent|Share|Count|PerDay|PerHour|PerS|Ohm|Watts|W|Ratio|PValue|Code|DegCPerHour|PercentPerDegC)$/;

const detectFolder = new URL('../../src/detect/', import.meta.url);
/** What judges and all they share say, as text. */
const detectText = readdirSync(detectFolder, { recursive: true })
  .map(String)
  .filter((file) => file.endsWith('.ts'))
  .map((file) => readFileSync(new URL(file, detectFolder), 'utf8'))
  .join('\n');

/** Watchers that describe every hour of a healthy zone; judges decide what it means. */
const describesHealthy = new Set(['scatter']);

const all = [
  ...watchers.map(({ meta }) => ({ meta, folder: 'watchers' })),
  ...judges.map(({ meta }) => ({ meta, folder: 'judges' })),
];

const healthyLogs = [1, 2, 3, 4].map((seed) => zoneLog({ seed, setpointDegC: 170 + 5 * seed }));
const healthy = evidenceOf(healthyLogs, { alarms: [] });

const faulty = faultyPlant();

/** Faults of heat and of the reading under a loop, one a zone. */
const heatFaults = heatedPlant([
  { offsetDegC: rising(60, 4) },
  { offsetDegC: (h) => (h > 80 ? -3 : 0) },
  { power: (h) => (h > 70 ? 0.5 : 1) },
  { power: (h) => (h > 82 && h < 90 ? 0 : 1) },
  { isStuckOn: (h) => h > 104 && h < 108 },
  { shownDegC: (h) => (h > 56 && h < 60 ? 24 : null) },
  { offsetDegC: (h) => (h > 92 ? -8 * Math.exp((92 - h) / 8) : 0) },
  ...sound(5),
]);

const factNamesOf = (outcomes: readonly Outcome[]): string[] =>
  outcomes.flatMap(({ symptoms }) => symptoms.flatMap(({ facts }) => Object.keys(facts)));

/** Facts of a detector that the weighing asks for by name, whatever these made plants show. */
function weighedFactNames(id: string): string[] {
  const folder = new URL('../../src/weigh/terms/', import.meta.url);
  const sources = readdirSync(folder).map((name) => readFileSync(new URL(name, folder), 'utf8'));
  const asked = new RegExp(`\\(\\w+, '${id}', '(\\w+)'\\)`, 'g');
  return sources.flatMap((source) => [...source.matchAll(asked)].map((match) => match[1]!));
}

function expectGoodFacts(facts: Facts, of: string): void {
  for (const [name, value] of Object.entries(facts)) {
    expect(Number.isFinite(value), `${of}: ${name} = ${value}`).toBe(true);
    expect(name, of).toMatch(unitWords);
  }
}

function fingerprint({ digest, zones }: Evidence): string {
  return JSON.stringify([zones, digest.zones.map((zone) => [...zone.meanDegC, ...zone.badCount])]);
}

describe.each(all.map((entry) => [entry.meta.id, entry] as const))('detector %s', (id, { meta, folder }) => {
  test('has a page with every heading', () => {
    const file = new URL(`../../src/detect/${folder}/${id}.md`, import.meta.url);
    expect(existsSync(file), `src/detect/${folder}/${id}.md`).toBe(true);
    const page = readFileSync(file, 'utf8');
    expect(page.startsWith(`# ${id}\n`)).toBe(true);
    let from = 0;
    for (const heading of headings) {
      const at = page.indexOf(`\n## ${heading}\n`, from);
      expect(at, `${id}.md: "## ${heading}" in its place`).toBeGreaterThan(0);
      const text = page
        .slice(at + heading.length + 5)
        .split('\n## ')[0]!
        .trim();
      expect(text.length, `${id}.md: "## ${heading}" says something`).toBeGreaterThan(4);
      from = at;
    }
    for (const name of Object.keys(meta.defaults as object)) expect(page, `${id}.md: setting`).toContain(`\`${name}\``);
  });

  test('has a test of its own and a file named as its id', () => {
    expect(existsSync(new URL(`../../src/detect/${folder}/${id}.ts`, import.meta.url))).toBe(true);
    expect(existsSync(new URL(`./${folder}/${id}.test.ts`, import.meta.url)), `${id}.test.ts`).toBe(true);
  });

  test('says what it sees, what it needs and where that comes from', () => {
    expect(meta.sees.length).toBeGreaterThan(15);
    expect(meta.source.length).toBeGreaterThan(10);
    expect(meta.needs.length).toBeGreaterThan(0);
  });
});

test('no two detectors share an id', () => {
  expect(new Set(all.map(({ meta }) => meta.id)).size).toBe(all.length);
});

describe.each(watchers.map((watcher) => [watcher.meta.id, watcher] as const))('watcher %s', (id, watcher) => {
  const watch = (samples: readonly MadeSample[]): readonly Episode[] => {
    const watching = startWatchers([zoneOfLog(0)], [watcher]);
    watching.take(makeBlock(samples));
    const { episodes, problems } = watching.finish();
    expect(problems).toEqual([]);
    return episodes.get(id)![0]!;
  };

  test('is silent on a healthy zone, or describes it where that is its job', () => {
    if (describesHealthy.has(id)) return expect(watch(healthyLogs[0]!).length).toBeGreaterThan(0);
    expect(watch(healthyLogs[0]!)).toEqual([]);
  });

  test('is read by a judge, or its episodes reach nobody', () => {
    const isRead = detectText.includes(`episodes.get('${id}')`);
    expect(isRead, `No judge asks for evidence.episodes.get('${id}').`).toBe(true);
  });

  test('answers a log without samples and one without readings', () => {
    expect(watch([])).toEqual([]);
    const blank = healthyLogs[0]!.map((s) => ({ ...s, degC: NaN, state: readingState.blank }));
    expect(watch(blank).filter((episode) => id !== 'open-runs' && episode.kind !== 'gap')).toEqual([]);
  });

  test('does not change the block', () => {
    const block = makeBlock(healthyLogs[0]!.slice(0, 3000));
    const before = structuredClone(block);
    const watching = startWatchers([zoneOfLog(0)], [watcher]);
    watching.take(block);
    watching.finish();
    expect(block).toEqual(before);
  });

  test('gives finite facts with units, in time order', () => {
    for (const episode of faulty.episodes.get(id)!.flat()) expectGoodFacts(episode.facts, id);
    for (const episodes of faulty.episodes.get(id)!) {
      const starts = episodes.map(({ startMs }) => startMs);
      expect([...starts].sort((a, b) => a - b)).toEqual(starts);
    }
  });

  test('keeps a bounded number of episodes of a hostile log', () => {
    const levels = [180, 3276.7, 20, 180, 180, 40];
    const states = [readingState.good, readingState.aboveScale, readingState.good, readingState.blank];
    const samples = Array.from({ length: 120_000 }, (_, i) => ({
      timeMs: MONDAY_MS + i * 30_000 * (i % 5 === 0 ? 1 : 1) + (i % 2) * 10_000,
      degC: levels[i % levels.length]!,
      state: states[i % states.length]!,
    }));
    expect(watch(samples).length).toBeLessThanOrEqual(20_000);
  });
});

describe.each(judges.map((judge) => [judge.meta.id, judge] as const))('judge %s', (id, judge) => {
  const ask = (evidence: Evidence) => judge.judge(evidence, judge.meta.defaults);

  test('answers once per zone, in zone order, with its own id', () => {
    for (const evidence of [healthy, faulty]) {
      const outcomes = ask(evidence);
      expect(outcomes.map(({ zone }) => zone)).toEqual(evidence.zones.map(({ index }) => index));
      for (const outcome of outcomes) {
        expect(outcome.detector).toBe(id);
        for (const symptom of outcome.symptoms) expect(symptom.detector).toBe(id);
      }
    }
  });

  test('is silent on healthy zones', () => {
    const told = ask(healthy).flatMap(({ symptoms }) => symptoms);
    expect(told).toEqual([]);
  });

  test('changes nothing and answers the same twice', () => {
    const before = fingerprint(faulty);
    const first = ask(faulty);
    expect(ask({ ...faulty })).toEqual(first);
    expect(fingerprint(faulty)).toBe(before);
  });

  test('cannot tell of an empty log, nor of one that is all gaps', () => {
    const zones = [makeZone({ index: 0 }), makeZone({ index: 1 })];
    const empty = evidenceOf([[], []], { zones });
    for (const outcome of ask(empty)) {
      expect(outcome.unable, `${id} on an empty log`).toMatch(/Zone/);
      expect(outcome.symptoms).toEqual([]);
    }
    const nobody = evidenceOf([], { zones: [] });
    expect(ask(nobody)).toEqual([]);
  });

  test('gives finite facts with units and proper times', () => {
    for (const { symptoms } of ask(faulty)) {
      for (const symptom of symptoms) {
        expectGoodFacts(symptom.facts, id);
        expect(symptom.endMs).toBeGreaterThanOrEqual(symptom.startMs);
        expect(symptom.count).toBeGreaterThan(0);
      }
    }
  });

  test('has every fact on its page', () => {
    const page = readFileSync(new URL(`../../src/detect/judges/${id}.md`, import.meta.url), 'utf8');
    const stated = new Set([...factNamesOf(ask(faulty)), ...factNamesOf(ask(heatFaults)), ...weighedFactNames(id)]);
    for (const name of stated) expect(page, `${id}.md: fact`).toContain(`\`${name}\``);
  });

  test('says why it cannot tell in a sentence that names the zone', () => {
    for (const evidence of [healthy, faulty]) {
      for (const { unable, zone } of ask(evidence)) {
        if (unable !== undefined) expect(unable).toContain(evidence.zones[zone]!.name);
      }
    }
  });
});

test('a judge that throws becomes a note, and the others still answer', () => {
  const broken = {
    ...judges[0]!,
    judge: () => {
      throw new Error('out of range');
    },
  };
  const { outcomes, problems } = runJudges(healthy, [broken, judges[1]!]);
  expect(problems).toHaveLength(1);
  expect(problems[0]).toMatchObject({ code: 'detector-failed' });
  expect(problems[0]!.what).toContain('out of range');
  expect(outcomes).toHaveLength(2 * healthy.zones.length);
  expect(outcomes[0]!.unable).toMatch(/Zone 1/);
});

test('a watcher that throws becomes a note, and the others still watch', () => {
  const broken = {
    ...watchers[0]!,
    take: () => {
      throw new Error('no room');
    },
  };
  const watching = startWatchers([zoneOfLog(0)], [broken, watchers[1]!]);
  const jump = [180, 180, 180, 400, 400, 400].map((degC, i) => ({ timeMs: MONDAY_MS + i * 30_000, degC }));
  for (const samples of [jump, []]) watching.take(makeBlock(samples));
  const { episodes, problems } = watching.finish();
  expect(problems.map(({ code }) => code)).toEqual(['detector-failed']);
  expect(problems[0]!.what).toMatch(/open-runs failed on zone Zone 1/);
  expect(episodes.get('open-runs')![0]).toEqual([]);
  expect(episodes.get('impossible-step')![0]).toHaveLength(1);
});

test('settings given by id replace the defaults, key by key', () => {
  const jump = [180, 180, 180, 200, 200, 200].map((degC, i) => ({ timeMs: MONDAY_MS + i * 30_000, degC }));
  const count = (settings: Record<string, Record<string, number>>) => {
    const watching = startWatchers([zoneOfLog(0)], [watchers[1]!], settings);
    watching.take(makeBlock(jump));
    return watching.finish().episodes.get('impossible-step')![0]!.length;
  };
  expect([count({}), count({ 'impossible-step': { smallestJumpDegC: 30 } })]).toEqual([1, 0]);
});

test('the made faulty plant is long enough for every hour of the day', () => {
  expect(faulty.digest.length * faulty.digest.periodMs).toBeGreaterThan(3 * DAY_MS - HOUR_MS);
});
