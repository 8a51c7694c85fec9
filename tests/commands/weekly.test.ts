import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Findings } from '../../src/model/findings.js';
import { root, useProgram } from './program.js';

const program = useProgram();
const args = (more: readonly string[]) => program.args(...more);
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'looselead-weekly-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const dayMinutes = 24 * 60;
/** Monday. */
const start = Date.UTC(2026, 8, 7);
const clock = (minute: number) => new Date(start + minute * 60_000).toISOString().slice(0, 19);

/** By zone: how long each of its six opens a day lasts in each week, in minutes; 0 or no entry = none. */
const opensOfZone: Readonly<Record<string, readonly number[]>> = {
  'Jaw 1': [0, 4],
  'Jaw 2': [2, 12, 12, 12, 12, 12],
  '=Jaw 3': [12, 2, 2, 2, 2, 2],
  'Jaw 4': [4, 4, 4, 4, 4, 4],
  'Jaw 5': [],
  'Jaw 6': [0, 2, 12, 12, 0, 4],
};
const zoneNames = Object.keys(opensOfZone);
/** Jaw 6 gets a new sensor on the third day of its fourth week. */
const repair = { zone: 'Jaw 6', day: 3 * 7 + 2, done: 'Sensor replaced', found: 'element broken' };

/** Minutes that each open of a zone lasts on a day. */
function openMinutes(zone: string, day: number): number {
  const week = Math.floor(day / 7);
  return zone === repair.zone && week === 3 && day >= repair.day ? 0 : (opensOfZone[zone]![week] ?? 0);
}

/** Minutes an open lasts that stands in this minute; each zone's come at times of their own, every four hours. */
function openAt(zone: number, minute: number): boolean {
  const lengthMin = openMinutes(zoneNames[zone]!, Math.floor(minute / dayMinutes));
  return (minute - 35 * zone - 20 + 4 * 60) % (4 * 60) < lengthMin;
}

/** A log and an alarm list over some days, a row a minute; the machine stands while a zone is open. */
function writeDays(name: string, fromDay: number, toDay: number): string[] {
  const rows: string[] = [];
  const alarms: string[] = [];
  for (let minute = fromDay * dayMinutes; minute < toDay * dayMinutes; minute++) {
    const isOpen = zoneNames.map((_, zone) => openAt(zone, minute));
    const cells = zoneNames.flatMap((_, zone) => {
      const swing = ((minute * (zone + 3)) % 7) / 20;
      return [isOpen[zone] ? '####' : (179.8 + swing).toFixed(2), 180, isOpen[zone] ? 0 : (30 + swing * 4).toFixed(1)];
    });
    rows.push([clock(minute), ...cells, isOpen.includes(true) ? 0 : 1].join(','));
    zoneNames.forEach((zone, z) => {
      if (isOpen[z] && !openAt(z, minute - 1)) {
        const end = [...Array(60).keys()].find((more) => !openAt(z, minute + more))!;
        alarms.push(`${clock(minute)},${clock(minute + end)},"${zone}",sensor open circuit`);
      }
    });
  }
  const head = ['Time', ...zoneNames.flatMap((zone) => [`"${zone} PV"`, `"${zone} SP"`, `"${zone} OUT"`]), 'Running'];
  const [log, list] = [join(folder, `${name}.csv`), join(folder, `${name}-alarms.csv`)];
  writeFileSync(log, [head.join(','), ...rows, ''].join('\n'));
  writeFileSync(list, ['Start,End,Source,Message', ...alarms, ''].join('\n'));
  return [log, list];
}

function reportArgs(name: string, days: readonly [number, number], more: readonly string[]): string[] {
  const files = writeDays(name, ...days);
  const out = ['--json', join(folder, `${name}.json`), '--html', join(folder, `${name}.html`)];
  return args(['report', ...files, '--timezone', 'UTC', '--quiet', ...out, ...more]);
}

function report(name: string, days: readonly [number, number], ...more: readonly string[]) {
  const { status, stderr } = spawnSync(process.execPath, reportArgs(name, days, more), { cwd: root, encoding: 'utf8' });
  const findings = () => JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8')) as Findings;
  return { status, stderr, findings };
}

/** Alarms and minutes that the made log holds in a week: each open is one alarm, and stops the machine. */
function madeWeek(week: number) {
  const days = Array.from({ length: 7 }, (_, i) => 7 * week + i);
  const lengths = days.flatMap((day) => zoneNames.map((zone) => openMinutes(zone, day)));
  return {
    alarms: lengths.filter((length) => length > 0).length * 6,
    stoppedMinutes: lengths.reduce((sum, length) => sum + length * 6, 0),
  };
}

describe('weekly runs of one plant, through the program', { timeout: 600_000 }, () => {
  test('new, worse, better, fixed and still open; alarms and minutes by week; exit codes', () => {
    const kept = ['--history', join(folder, 'history'), '--fail-on', 'faulty'];
    const first = report('week-1', [0, 7], ...kept);
    expect([first.status, first.stderr]).toEqual([1, '']);
    expect(first.findings().history).toMatchObject({ runs: 1, previousEnd: null, changes: [] });
    const changes = (findings: Findings) =>
      Object.fromEntries(findings.history!.changes.map(({ zone, change }) => [zone, change]));
    const second = report('week-2', [7, 14], ...kept).findings();
    expect(changes(second)).toEqual({
      'Jaw 1': 'new',
      'Jaw 2': 'worse',
      '=Jaw 3': 'better',
      'Jaw 4': 'still open',
      'Jaw 6': 'new',
    });
    const third = report('week-3', [14, 21], ...kept).findings();
    expect(changes(third)).toMatchObject({ 'Jaw 1': 'fixed', 'Jaw 2': 'still open', 'Jaw 4': 'still open' });
    const weeks = third.history!.weeks;
    expect(weeks.map(({ week }) => week)).toEqual(['2026-W37', '2026-W38', '2026-W39']);
    weeks.forEach(({ alarms, zoneFaultMinutes, otherMinutes, unknownMinutes }, week) => {
      expect(alarms).toBe(madeWeek(week).alarms);
      expect(zoneFaultMinutes + otherMinutes + (unknownMinutes ?? 0)).toBeCloseTo(madeWeek(week).stoppedMinutes, 0);
    });

    // an export over the second half of week 1 and the first of week 2 adds nothing
    const overlapping = report('overlap', [3, 10], ...kept);
    expect(overlapping.status).toBe(1);
    const again = report('week-3', [14, 21], ...kept).findings().history!;
    expect(again.runs).toBe(4);
    expect(again.weeks.map(({ alarms }) => alarms)).toEqual([0, 1, 2].map((week) => madeWeek(week).alarms));
  });

  test('a fault that starts, grows, is repaired and comes back, over six weeks', () => {
    const list = join(folder, 'repairs.csv');
    writeFileSync(
      list,
      `Date,Zone,Done,Found\n${clock(repair.day * dayMinutes)},${repair.zone},${repair.done},${repair.found}\n`,
    );
    const kept = ['--history', join(folder, 'six-weeks'), '--fail-on', 'faulty'];
    const told = Array.from({ length: 6 }, (_, week) => {
      const { findings, stderr } = report(
        `of-six-${week}`,
        [7 * week, 7 * week + 7],
        ...(week < 3 ? [] : [list]),
        ...kept,
      );
      expect(stderr).toBe('');
      return findings();
    });
    const said = told.map(({ history }) => history!.changes.find(({ zone }) => zone === repair.zone));
    expect(said.map((change) => change?.change)).toEqual([undefined, 'new', 'worse', 'fixed', undefined, 'new']);
    expect(said[5]!.says).toContain('again');
    expect(told[3]!.zones.find(({ zone }) => zone === repair.zone)!.fixed).toBe(
      new Date(start + repair.day * dayMinutes * 60_000).toISOString(),
    );
    expect(told[5]!.history!.weeks.map(({ alarms }) => alarms)).toEqual(
      [0, 1, 2, 3, 4, 5].map((week) => madeWeek(week).alarms),
    );
    expect(told[5]!.trackRecord).toMatchObject({ confirmed: 1, right: 1 });
  });

  test('two runs at once with one history leave both, whole', async () => {
    const history = join(folder, 'at-once');
    const ended = (['left', 'right'] as const).map((name, i) => {
      const days = [i, i + 2] as const;
      const child = spawn(process.execPath, reportArgs(name, days, ['--history', history]), { cwd: root });
      return new Promise((resolve) => child.once('exit', resolve));
    });
    expect(await Promise.all(ended)).toEqual([0, 0]);
    const runs = readdirSync(history).filter((name) => /^run-[^.]*\.json$/u.test(name));
    expect(runs).toHaveLength(2);
    expect(report('after', [2, 4], '--history', history).findings().history!.runs).toBe(3);
  });
});

describe('for scripts and work orders', () => {
  test('--fail-on: 0 where nobody is faulty, 2 for a status that is none', () => {
    const log = join(folder, 'well.csv');
    const rows = Array.from(
      { length: 600 },
      (_, i) => `${clock(i)},${180 + (i % 3) / 10},180,30,${181 - (i % 3) / 10},180,30`,
    );
    writeFileSync(log, ['Time,A PV,A SP,A OUT,B PV,B SP,B OUT', ...rows].join('\n'));
    const run = (failOn: string) =>
      spawnSync(
        process.execPath,
        args(['report', log, '--out', join(folder, 'well'), '--quiet', '--fail-on', failOn]),
        {
          cwd: root,
          encoding: 'utf8',
        },
      );
    expect(run('faulty').status).toBe(0);
    const unknown = run('red');
    expect(unknown.status).toBe(2);
    expect(unknown.stderr).toMatch(/red.*faulty.*watch/s);
  });

  test('--fail-on: 1 while a sensor is open, 0 once it was put right', () => {
    const [log, list] = [join(folder, 'mended.csv'), join(folder, 'mended-list.csv')];
    const [broken, mended] = [300, 600];
    const rows = Array.from({ length: 1440 }, (_, i) => {
      const isOpen = i >= broken && i < mended;
      const own = isOpen ? '####,180,0' : `${180 + (i % 3) / 10},180,30`;
      return `${clock(i)},${own},${181 - (i % 3) / 10},180,30,${isOpen ? 0 : 1}`;
    });
    const head = 'Time,A PV,A SP,A OUT,B PV,B SP,B OUT,Running';
    writeFileSync(list, `Date,Zone,Done,Found\n${clock(mended)},A,Sensor replaced,element broken\n`);
    const run = (untilMinute: number, ...more: readonly string[]) => {
      writeFileSync(log, [head, ...rows.slice(0, untilMinute)].join('\n'));
      const out = ['--json', join(folder, 'mended.json'), '--html', join(folder, 'mended.html')];
      const { status } = spawnSync(
        process.execPath,
        args(['report', log, ...more, ...out, '--timezone', 'UTC', '--quiet', '--fail-on', 'faulty']),
        { cwd: root },
      );
      const { zones } = JSON.parse(readFileSync(join(folder, 'mended.json'), 'utf8')) as Findings;
      const zone = zones.find((one) => one.zone === 'A')!;
      return [status, zone.status, zone.fixed];
    };
    expect(run(mended)).toEqual([1, 'faulty', null]);
    const [status, verdict, fixed] = run(1440, list);
    expect([status, verdict]).toEqual([0, 'faulty']);
    // the last row without a reading stands a minute before the repair
    expect(start + mended * 60_000 - Date.parse(String(fixed))).toBeLessThanOrEqual(60_000);
  });

  test('--csv gives one line per zone, and no cell that a spreadsheet would run', () => {
    const csv = join(folder, 'orders.csv');
    expect(report('orders', [0, 3], '--csv', csv).status).toBe(0);
    const [head, ...rows] = parse(readFileSync(csv, 'utf8').replace(/^\uFEFF/u, '')) as string[][];
    expect(rows).toHaveLength(zoneNames.length);
    expect(rows.every((row) => row.length === head!.length)).toBe(true);
    expect(rows.flat().some((cell) => cell.includes('=Jaw 3'))).toBe(true);
    expect(rows.flat().filter((cell) => /^[=+@\t\r]|^-(?!\d)/u.test(cell))).toEqual([]);
  });
});
