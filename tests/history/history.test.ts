import { execFileSync } from 'node:child_process';
import { spawn } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { DateTime } from 'luxon';
import { afterAll, describe, expect, test } from 'vitest';
import { encodeDigest } from '../../src/digest/codec.js';
import { emptyZoneDigest } from '../../src/digest/zone-digest.js';
import { temporaryNameOf } from '../../src/files/temporary-name.js';
import { compareWithHistory } from '../../src/history/compare.js';
import { distinctFindings } from '../../src/history/distinct-findings.js';
import { readHistory, saveRun } from '../../src/history/history-folder.js';
import { keyOf } from '../../src/history/stored-run.js';
import { addToRecord, readRecord } from '../../src/history/record-file.js';
import { entriesFromMaintenance, trackRecord } from '../../src/history/track-record.js';
import { weeksOf } from '../../src/history/weeks.js';
import { madeFindings, madeZone } from '../make/made-findings.js';

const folders: string[] = [];
const folder = async () => {
  const path = await mkdtemp(join(tmpdir(), 'looselead-history-'));
  folders.push(path);
  return path;
};
afterAll(() => Promise.all(folders.map((path) => rm(path, { recursive: true, force: true }))));
const stored = (findings: ReturnType<typeof madeFindings>) => ({ key: keyOf(findings), findings });
const nothing = () => new Uint8Array([1, 2, 3]);
const week = (n: number, zones = [madeZone('Zone 1')]) =>
  madeFindings(
    new Date(Date.UTC(2026, 0, 5 + 7 * n)).toISOString(),
    new Date(Date.UTC(2026, 0, 12 + 7 * n)).toISOString(),
    zones,
  );
const faulty = (more = {}) =>
  madeZone('Zone 1', {
    status: 'faulty',
    probabilities: { sensor: 0.8, wiring: 0.1, input: 0, heater: 0, recording: 0, none: 0.1 },
    ...more,
  });

describe('the folder', () => {
  test('keeps runs by window; the same export again replaces, never adds', async () => {
    const path = await folder();
    for (const run of [week(1), week(0), week(0)]) await saveRun(path, run, null, nothing);
    const { runs, problems } = await readHistory(path);
    expect(problems).toEqual([]);
    expect(runs.map(({ findings }) => findings.window.end)).toEqual([week(0).window.end, week(1).window.end]);
  });
  test('a folder that is not there yet is an empty history', async () => {
    expect(await readHistory(join(await folder(), 'none'))).toEqual({ runs: [], problems: [] });
  });
  test('a file cut short is left out and told', async () => {
    const path = await folder();
    await saveRun(path, week(0), null, nothing);
    await saveRun(path, week(1), null, nothing);
    const [name] = (await readdir(path)).sort();
    await writeFile(join(path, name!), (await readFile(join(path, name!), 'utf8')).slice(0, 100));
    const { runs, problems } = await readHistory(path);
    expect(runs).toHaveLength(1);
    expect(problems).toMatchObject([{ code: 'bad-history', file: join(path, name!) }]);
  });
  test.runIf(process.platform !== 'win32')('a pipe under the name of a run is told, not waited for', async () => {
    const path = await folder();
    await saveRun(path, week(0), null, nothing);
    const [name] = await readdir(path);
    const pipe = join(path, name!.replace(/\w+\.json$/, 'aaaaaaaaaaaa.json'));
    execFileSync('mkfifo', [pipe]);
    const { runs, problems } = await readHistory(path);
    expect(runs).toHaveLength(1);
    expect(problems).toMatchObject([{ code: 'bad-history', file: pipe }]);
  });
  test('what a killed run leaves under its temporary name is no run', async () => {
    const path = await folder();
    await saveRun(path, week(0), null, nothing);
    await writeFile(temporaryNameOf(join(path, 'run-1.json')), '{"schema');
    const { runs, problems } = await readHistory(path);
    expect([runs.length, problems.length]).toEqual([1, 0]);
  });
  test('two runs at once leave both whole', async () => {
    const path = await folder();
    await Promise.all([0, 1, 2, 3, 0, 1].map((n) => saveRun(path, week(n), null, nothing)));
    const { runs, problems } = await readHistory(path);
    expect([runs.length, problems.length]).toEqual([4, 0]);
  });
  test('a year of weekly runs of 24 zones stays under 50 MB', async () => {
    const path = await folder();
    const digest = {
      startMs: 0,
      periodMs: 60_000,
      length: 10_080,
      zones: Array.from({ length: 24 }, (_, z) => noisyZone(z)),
    };
    const packed = encodeDigest(digest);
    const symptoms = Array.from({ length: 20 }, (_, i) => ({
      detector: 'open-run',
      start: week(0).window.start,
      end: week(0).window.end,
      count: i,
      facts: { jumpDegC: i },
    }));
    const zones = Array.from({ length: 24 }, (_, i) => madeZone(`Zone ${i}`, { symptoms }));
    for (let n = 0; n < 52; n++) await saveRun(path, week(n, zones), digest, () => packed);
    const names = await readdir(path);
    const sizes = await Promise.all(names.map(async (name) => (await stat(join(path, name))).size));
    expect(sizes.reduce((a, b) => a + b, 0)).toBeLessThan(50e6);
    expect((await readHistory(path)).runs).toHaveLength(52);
  });
});

function noisyZone(seed: number) {
  const zone = emptyZoneDigest(10_080);
  for (let i = 0; i < 10_080; i++) {
    const wave = Math.sin(i * (1.3 + seed) * 12.9898) * 43758.5453;
    const noise = wave - Math.floor(wave) - 0.5;
    zone.readingCount[i] = 60;
    zone.meanDegC[i] = 180 + noise;
    for (const column of [zone.firstDegC, zone.lastDegC]) column[i] = 180 - noise;
    zone.minDegC[i] = 179;
    zone.maxDegC[i] = 181;
    zone.spreadDegC[i] = 0.2;
    zone.outputPercent[i] = 30 + 5 * noise;
    zone.setpointDegC[i] = 180;
    zone.runningShare[i] = 1;
  }
  return zone;
}

test('a process killed while it keeps runs leaves whole files only', async () => {
  const path = await folder();
  const writer = fileURLToPath(new URL('../make/history-writer.ts', import.meta.url));
  for (const afterMs of [40, 90, 150]) {
    const child = spawn(process.execPath, ['--import', 'tsx', writer, path], { stdio: ['ignore', 'pipe', 'inherit'] });
    await new Promise<void>((resolve) => child.stdout.once('data', () => resolve())); // the first run is kept
    await new Promise((resolve) => setTimeout(resolve, afterMs));
    const gone = new Promise<NodeJS.Signals | null>((resolve) =>
      child.once('exit', (_code, signal) => resolve(signal)),
    );
    child.kill('SIGKILL');
    expect(await gone).toBe('SIGKILL');
    const { runs } = await readHistory(path);
    expect(runs.length).toBeGreaterThan(0);
    for (const { findings } of runs) expect(findings.zones).toHaveLength(24);
    const named = (await readdir(path)).filter((name) => /^run-[^.]*\.json$/.test(name));
    expect(named).toHaveLength(runs.length); // every file of a final name can be read
  }
  await saveRun(path, week(0), null, nothing); // and the next run is kept as ever
});

describe('since the last report', () => {
  const change = (last: ReturnType<typeof madeZone>, now: ReturnType<typeof madeZone>) =>
    compareWithHistory(week(1, [now]), [stored(week(0, [last]))]).changes.map((one) => one.change);
  test.each([
    ['new', madeZone('Zone 1'), faulty()],
    ['fixed', faulty(), madeZone('Zone 1')],
    ['still open', faulty(), faulty()],
    ['still open', faulty(), madeZone('Zone 1', { status: 'insufficient-data' })],
    ['worse', faulty({ offsetDegC: -2 }), faulty({ offsetDegC: -3.1 })],
    ['better', faulty({ offsetDegC: 3 }), faulty({ offsetDegC: 1 })],
    ['worse', faulty({ downtimeMinutes: 10 }), faulty({ downtimeMinutes: 90 })],
    ['worse', faulty({ status: 'watch' }), faulty()],
    ['better', faulty(), faulty({ status: 'watch' })],
    ['fixed', faulty(), faulty({ fixed: '2026-01-14T10:00:00Z' })],
    ['fixed', madeZone('Zone 1'), faulty({ fixed: '2026-01-14T10:00:00Z' })],
    ['new', faulty({ fixed: '2026-01-09T10:00:00Z' }), faulty()],
  ])('%s', (said, last, now) => expect(change(last, now)).toEqual([said]));
  test.each([
    [madeZone('Zone 1'), faulty(), 'Zone 1 is faulty; in the last report it had no fault.'],
    [null, faulty(), 'Zone 1 is faulty; it was not in the last report.'],
    [
      madeZone('Zone 1', { status: 'insufficient-data' }),
      faulty({ status: 'watch' }),
      'Zone 1 is one to keep an eye on; the last report could not judge it.',
    ],
    [faulty({ status: 'watch' }), faulty(), 'Zone 1 was one to keep an eye on and is faulty now.'],
    [faulty({ status: 'watch' }), madeZone('Zone 1'), 'Zone 1 was one to keep an eye on and shows no fault any more.'],
    [faulty({ offsetDegC: -2 }), faulty({ offsetDegC: 3.1 }), 'Offset of Zone 1: −2.0 °C then, +3.1 °C now.'],
    [faulty({ offsetDegC: 3 }), faulty({ offsetDegC: -0.04 }), 'Offset of Zone 1: +3.0 °C then, 0.0 °C now.'],
  ])('is said in plain words', (last, now, says) => {
    const [told] = compareWithHistory(week(1, [now]), [stored(week(0, last ? [last] : []))]).changes;
    expect(told!.says).toBe(says);
  });
  test('an offset that moved within its limits is no better and no worse', () => {
    const known = (offsetDegC: number, halfDegC: number) =>
      faulty({
        offsetDegC,
        offsetBasis: {
          ...{ detector: 'slow-drift', from: 'soaks', coldDegC: offsetDegC, hotDegC: null },
          lowDegC: offsetDegC - halfDegC,
          highDegC: offsetDegC + halfDegC,
        },
      });
    expect(change(known(-2.1, 0.8), known(-1.6, 0.9))).toEqual(['still open']);
    expect(change(known(-2.1, 0.2), known(-1.6, 0.2))).toEqual(['better']);
    expect(change(known(-1.6, 0.9), known(-6.7, 0.4))).toEqual(['worse']);
  });
  test('healthy and healthy is not worth a line; the same export is not its own past', () => {
    expect(change(madeZone('Zone 1'), madeZone('Zone 1'))).toEqual([]);
    expect(compareWithHistory(week(0), [stored(week(0))])).toMatchObject({ runs: 1, previousEnd: null, changes: [] });
  });
  test('a repair that was told is not told again: the zone is well, or the next export holds the same repair', () => {
    const repaired = (fixed: string) => faulty({ fixed });
    expect(change(repaired('2026-01-11T10:00:00Z'), madeZone('Zone 1'))).toEqual([]);
    expect(change(repaired('2026-01-11T10:00:00Z'), repaired('2026-01-11T10:04:00Z'))).toEqual([]);
    expect(change(repaired('2026-01-07T10:00:00Z'), repaired('2026-01-14T10:00:00Z'))).toEqual(['fixed']);
  });
  test('a fault that comes back after weeks without is new, and said to be back', () => {
    const runs = [week(0, [faulty()]), week(1), week(2)];
    const [told] = compareWithHistory(week(3, [faulty()]), runs.map(stored)).changes;
    expect(told).toMatchObject({ change: 'new' });
    expect(told!.says).toContain(`again; it had a fault in the report up to ${week(0).window.end.slice(0, 10)}`);
  });
  test('zones of one name on two machines are kept apart', () => {
    const soaks = (offsetDegC: number) => [{ time: '2026-01-06T05:00:00Z', offsetDegC, uncertaintyDegC: 0.1 }];
    const now = week(1, [
      faulty({ machine: 'M1', soaks: soaks(1) }),
      madeZone('Zone 1', { machine: 'M2', soaks: soaks(2) }),
    ]);
    const told = compareWithHistory(now, [stored(week(0, [madeZone('Zone 1', { machine: 'M2' })]))]);
    expect(told.changes.map(({ zone, machine, change: said }) => [zone, machine, said])).toEqual([
      ['Zone 1', 'M1', 'new'],
    ]);
    const curves = told.offsets.map(({ machine, points }) => [machine, points.map(({ offsetDegC }) => offsetDegC)]);
    expect(Object.fromEntries(curves)).toEqual({ M1: [1], M2: [2] });
  });
  test('a soak that two overlapping runs saw is one point of the curve', () => {
    const soak = (time: string, offsetDegC: number) => ({ time, offsetDegC, uncertaintyDegC: 0.1 });
    const earlier = week(0, [
      madeZone('Zone 1', { soaks: [soak('2026-01-06T05:00:00Z', 1), soak('2026-01-11T05:00:00Z', 2)] }),
    ]);
    const now = week(1, [
      madeZone('Zone 1', { soaks: [soak('2026-01-11T05:10:00Z', 2.1), soak('2026-01-13T05:00:00Z', 3)] }),
    ]);
    const [curve] = compareWithHistory(now, [stored(earlier)]).offsets;
    expect(curve!.points.map(({ offsetDegC }) => offsetDegC)).toEqual([1, 2.1, 3]);
  });
});

describe('the trend by week never counts twice', () => {
  const runs = (...windows: [string, string][]) =>
    windows.map(([from, to]) => madeFindings(`${from}T00:00:00Z`, `${to}T00:00:00Z`, []));
  test('weeks side by side', () => {
    expect(
      weeksOf(runs(['2026-01-05', '2026-01-12'], ['2026-01-12', '2026-01-19'])).map(
        ({ week: name, alarms, zoneFaultMinutes, otherMinutes, unknownMinutes }) => [
          name,
          alarms,
          zoneFaultMinutes,
          otherMinutes,
          unknownMinutes,
        ],
      ),
    ).toEqual([
      ['2026-W02', 70, 35, 7, 7],
      ['2026-W03', 70, 35, 7, 7],
    ]);
  });
  test('an export that overlaps by four days', () => {
    expect(
      weeksOf(runs(['2026-01-05', '2026-01-12'], ['2026-01-08', '2026-01-15'])).map(({ alarms }) => alarms),
    ).toEqual([70, 30]);
  });
  test('a week in two halves adds up', () => {
    expect(
      weeksOf(runs(['2026-01-05', '2026-01-08'], ['2026-01-08', '2026-01-12'])).map(({ alarms }) => alarms),
    ).toEqual([70]);
  });
});

describe('weeks and days are those of the plant’s clock (ISO 8601: from Monday)', () => {
  /** A run over whole days of a clock, with ten alarms a day of that clock. */
  const run = (timezone: string, from: string, to: string) => {
    const at = (day: string) => DateTime.fromISO(day, { zone: timezone });
    const days = Array.from({ length: at(to).diff(at(from), 'days').days }, (_, i) => at(from).plus({ days: i }));
    const made = madeFindings(at(from).toUTC().toISO()!, at(to).toUTC().toISO()!, []);
    const byDay = days.map((day) => ({ day: day.toISODate()!, count: 10 }));
    const lost = byDay.map(({ day }) => ({ day, zoneFaultMinutes: 5, otherMinutes: 2, unknownMinutes: 0 }));
    return { ...made, timezone, alarms: { ...made.alarms, byDay }, downtime: { ...made.downtime, byDay: lost } };
  };
  const alarmsByWeek = (...all: ReturnType<typeof run>[]) =>
    weeksOf(all).map(({ week: name, alarms }) => [name, alarms]);

  // 29 March 2026 has 23 h in Oslo, 8 March 2026 in New York; 25 October and 1 November 2026 have 25 h (tz database)
  test.each([
    ['Europe/Oslo', '2026-03-23', '2026-03-30', '2026-04-06', ['2026-W13', '2026-W14']],
    ['Europe/Oslo', '2026-10-19', '2026-10-26', '2026-11-02', ['2026-W43', '2026-W44']],
    ['America/New_York', '2026-03-02', '2026-03-09', '2026-03-16', ['2026-W10', '2026-W11']],
    ['America/New_York', '2026-10-26', '2026-11-02', '2026-11-09', ['2026-W44', '2026-W45']],
    ['Asia/Tokyo', '2025-12-22', '2025-12-29', '2026-01-05', ['2025-W52', '2026-W01']],
  ])('%s, two weeks from %s', (timezone, from, middle, to, [first, second]) => {
    expect(alarmsByWeek(run(timezone, from, middle), run(timezone, middle, to))).toEqual([
      [first, 70],
      [second, 70],
    ]);
  });
  test('a run that ends on the plant’s Sunday midnight counts its zones in the week before', () => {
    const faultyRun = { ...run('Asia/Tokyo', '2026-01-05', '2026-01-12'), zones: [faulty()] };
    expect(weeksOf([faultyRun]).map(({ week: name, zonesFaulty }) => [name, zonesFaulty])).toEqual([['2026-W02', 1]]);
    const western = { ...run('America/New_York', '2026-01-05', '2026-01-12'), zones: [faulty()] };
    expect(weeksOf([western]).map(({ week: name, zonesFaulty }) => [name, zonesFaulty])).toEqual([['2026-W02', 1]]);
  });
  test('a run made on Monday morning speaks of the week before', () => {
    const monday = { ...run('Europe/Oslo', '2026-01-05', '2026-01-12'), zones: [faulty()] };
    const made = { ...monday, window: { start: '2026-01-05T05:00:00.000Z', end: '2026-01-12T05:00:00.000Z' } };
    expect(weeksOf([made]).map(({ week: name, zonesFaulty }) => [name, zonesFaulty])).toEqual([
      ['2026-W02', 1],
      ['2026-W03', null], // five hours of it: no run tells
    ]);
  });
  test('a run over two weeks counts a fault in the weeks it was there', () => {
    const from = (onset: string | null, fixed: string | null) => ({ ...faulty(), onset, fixed });
    const zones = [
      from(null, null),
      from('2026-01-13T00:00:00.000Z', null),
      from('2026-01-06T00:00:00.000Z', '2026-01-08T00:00:00.000Z'),
    ];
    const twoWeeks = { ...run('Europe/Oslo', '2026-01-05', '2026-01-19'), zones };
    expect(weeksOf([twoWeeks]).map(({ week: name, zonesFaulty }) => [name, zonesFaulty])).toEqual([
      ['2026-W02', 2],
      ['2026-W03', 2],
    ]);
  });
  test('of a day that a later run holds only the evening of, the whole one counts', () => {
    const whole = run('Europe/Oslo', '2026-01-05', '2026-01-08');
    const late = run('Europe/Oslo', '2026-01-07', '2026-01-10');
    const [, ...others] = late.alarms.byDay;
    const evening = {
      ...late,
      window: { ...late.window, start: '2026-01-07T17:00:00.000Z' },
      alarms: { ...late.alarms, byDay: [{ day: '2026-01-07', count: 2 }, ...others] },
    };
    expect(alarmsByWeek(whole, evening)).toEqual([['2026-W02', 50]]);
  });
});

describe('track record', () => {
  const run = week(0, [faulty()]);
  const entry = (found: 'sensor' | 'wiring' | 'none', time = '2026-01-14T10:00:00Z') => ({
    zone: 'Zone 1',
    machine: 'M1',
    time,
    found,
    note: '',
  });
  test('what was found confirms or refutes the last verdict before it', () => {
    const { confirmed, right, byCause } = trackRecord(
      [entry('sensor'), entry('wiring', '2026-01-15T10:00:00Z'), entry('none', '2026-01-16T10:00:00Z')],
      [run],
    );
    expect([confirmed, right]).toEqual([3, 1]);
    // exact 95 % limits of 1 in 3: 0.0084 and 0.9057 (Clopper & Pearson 1934; R binom.test(1, 3), from memory)
    expect(byCause).toHaveLength(1);
    expect(byCause[0]!.low).toBeCloseTo(0.0084, 4);
    expect(byCause[0]!.high).toBeCloseTo(0.9057, 4);
  });
  test('a zone nobody called faulty, or a finding before the window, checks nothing', () => {
    expect(
      trackRecord([{ ...entry('sensor'), zone: 'Zone 9' }, entry('sensor', '2025-12-01T00:00:00Z')], [run]).confirmed,
    ).toBe(0);
  });
  test('the maintenance list and the record speak of the same job once', () => {
    const list = entriesFromMaintenance(
      [
        {
          timeMs: Date.parse('2026-01-14T12:00:00Z'),
          zone: 0,
          zoneText: 'Zone 1',
          done: 'replaced',
          found: 'element open',
          cause: 'sensor',
          isReplacement: true,
        },
      ],
      [{ zone: 'Zone 1', machine: 'M1' }],
    );
    const { findings } = distinctFindings([...list, entry('sensor')], [{ zone: 'Zone 1', machine: 'M1' }], 'UTC');
    expect(trackRecord(findings, [run]).confirmed).toBe(1);
  });
  test('the record file grows line by line', async () => {
    const file = join(await folder(), 'sub', 'record.json');
    await addToRecord(file, entry('sensor'));
    await addToRecord(file, entry('wiring'));
    expect((await readRecord(file)).entries.map(({ found }) => found)).toEqual(['sensor', 'wiring']);
  });
});
