import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DowntimeFindings } from '../../src/model/downtime-findings.js';
import { useProgram } from './program.js';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'looselead-downtime-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const { run } = useProgram();
const downtime = (...args: readonly string[]) => run('downtime', ...args);

/** Two zones over ten hours of one Monday, a row a minute; the machine stands from 10:00 to 10:30 and 12:00 to 12:10. */
function writeLog(name: string, hasRunning: boolean, first = 'Front jaw'): string {
  const clock = (minute: number) => new Date(Date.UTC(2026, 8, 7, 6, minute)).toISOString().slice(0, 19);
  const rows = Array.from({ length: 600 }, (_, i) => {
    const stands = (i >= 240 && i < 270) || (i >= 360 && i < 370);
    const swing = (i % 3) * 0.1;
    return [clock(i), 180 + swing, 180, 30, 180.1 - swing, 180, 30, ...(hasRunning ? [stands ? 0 : 1] : [])].join(',');
  });
  const columns = [first, 'Rear jaw'].flatMap((zone) => [`${zone} PV`, `${zone} SP`, `${zone} OUT`]);
  const head = ['Time', ...columns, ...(hasRunning ? ['Running'] : [])].map((cell) => `"${cell}"`);
  const path = join(folder, name);
  writeFileSync(path, [head.join(','), ...rows, ''].join('\n'));
  return path;
}

function writeAlarms(name: string, zone: string): string {
  const path = join(folder, name);
  writeFileSync(
    path,
    `Start,End,Source,Message\n2026-09-07T10:00:00,2026-09-07T10:20:00,"${zone}",sensor open circuit\n`,
  );
  return path;
}

const json = (...args: readonly string[]): DowntimeFindings =>
  JSON.parse(downtime(...args, '--timezone', 'UTC', '--json').stdout) as DowntimeFindings;

describe('downtime, through the program', () => {
  test('running column and alarm: the zone until its alarm is gone, the restart, and a stop without a cause', () => {
    const found = json(writeLog('run.csv', true), writeAlarms('alarms.csv', 'Front jaw'));
    expect(found.from).toEqual(['running']);
    expect(found.zoneFaultMinutes).toBeCloseTo(20, 6);
    expect(found.restartMinutes).toBeCloseTo(10, 6);
    expect(found.unknownMinutes).toBeCloseTo(10, 6);
    const buckets = found.plannedMinutes + found.zoneFaultMinutes + found.otherMinutes + found.unknownMinutes;
    expect(buckets).toBeCloseTo(found.stoppedMinutes, 6);
  });

  test('no running column: told from the alarm, and said so', () => {
    const log = writeLog('blind.csv', false);
    const alarms = writeAlarms('alarms.csv', 'Front jaw');
    const { status, stdout } = downtime(log, alarms, '--timezone', 'UTC');
    expect(status).toBe(0);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(/No log says when .* ran, so stops are told from alarms/);
    expect(json(log, alarms)).toMatchObject({ from: ['alarms'], zoneFaultMinutes: 20, restartMinutes: 0 });
  });

  test('a stop list names what is planned and what another cause stopped; every minute is in one bucket', () => {
    const stops = join(folder, 'stops.csv');
    const rows = [
      'Start,End,Reason,Planned',
      '2026-09-07T10:00:00,2026-09-07T10:30:00,changeover,yes',
      '2026-09-07T12:00:00,2026-09-07T12:10:00,film jam,no',
    ];
    writeFileSync(stops, [...rows, ''].join('\n'));
    const found = json(writeLog('listed.csv', true), stops);
    expect(found.from).toContain('stop list');
    expect(found.plannedMinutes).toBeCloseTo(30, 6);
    expect(found.otherMinutes).toBeCloseTo(10, 6);
    expect(found.unknownMinutes + found.zoneFaultMinutes).toBe(0);
  });

  test('a shift calendar that is given: what stands outside of it is planned', () => {
    const plant = join(folder, 'shifts.yaml');
    writeFileSync(plant, 'shifts:\n  - { days: mon-fri, from: "06:00", to: "11:00" }\nzones: []\n');
    const found = json(writeLog('shifts.csv', true), '--plant', plant);
    expect(found.unknownMinutes).toBeCloseTo(30, 6); // 10:00 to 10:30, nobody says why
    expect(found.zoneFaultMinutes + found.otherMinutes).toBe(0);
  });

  test.each(['zone', 'machine', 'week'])(
    '--by %s --csv adds up, and has no cell that a spreadsheet would run',
    (by) => {
      const log = writeLog('hostile.csv', true, '=1+1');
      const { status, stdout } = downtime(
        log,
        writeAlarms('hostile-alarms.csv', '=1+1'),
        '--by',
        by,
        '--csv',
        '--timezone',
        'UTC',
      );
      expect(status).toBe(0);
      const [head, ...rows] = parse(stdout) as string[][];
      expect(rows.length).toBeGreaterThan(0);
      if (by === 'zone') expect(rows.flat().some((cell) => cell.includes('=1+1'))).toBe(true);
      expect(rows.flat().filter((cell) => /^[=+@\t\r]|^-(?!\d)/.test(cell))).toEqual([]);
      const minutes = head!.findIndex((name) => /minutes/i.test(name));
      const sum = rows.reduce((total, row) => total + Number(row[minutes]), 0);
      expect(sum).toBeCloseTo(by === 'zone' ? 20 : 40, 0);
    },
  );
});
