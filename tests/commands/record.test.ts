import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { encodeDigest } from '../../src/digest/codec.js';
import { typedEntry, type TypedFinding } from '../../src/commands/record/record-entry.js';
import { saveRun } from '../../src/history/history-folder.js';
import { addToRecord, recordFileName } from '../../src/history/record-file.js';
import { plantFindings } from '../make/report/findings.js';
import { root, useProgram } from './program.js';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'looselead-record-cli-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const program = useProgram({ COLUMNS: '100' });
const argsOf = (history: string, args: readonly string[]) => ['record', ...args, '--history', history];
const record = (history: string, ...args: readonly string[]) => program.run(...argsOf(history, args));

/** A history folder with one report of the invented plant in it. */
async function history(name: string): Promise<string> {
  const path = join(folder, name);
  await saveRun(path, plantFindings(), null, encodeDigest);
  return path;
}

const dayInWindow = (): string => plantFindings().window.end.slice(0, 10);
const linesOf = (path: string): string[] => readFileSync(join(path, recordFileName), 'utf8').trimEnd().split('\n');

describe('looselead record', () => {
  test('notes a finding under the name of the report, and says how the verdicts stand', async () => {
    const path = await history('add');
    const first = record(path, 'sealer 1 front jaw', '--found', 'Wiring', '--date', dayInWindow(), '--note', 'plug');
    expect([first.status, first.stderr]).toEqual([0, '']);
    expect(first.stdout).toBe(
      'Noted: Front jaw on Tray sealer 1, wiring. Of the one verdict checked so far 1 was right.\n',
    );
    const entry = JSON.parse(linesOf(path)[0]!) as Record<string, string>;
    expect(entry).toMatchObject({ zone: 'Front jaw', machine: 'Tray sealer 1', found: 'wiring', note: 'plug' });
    // noon in Oslo, whose clock is one or two hours ahead of UTC
    expect(entry['time']).toMatch(new RegExp(`^${dayInWindow()}T1[01]:00`));

    const again = record(path, 'Front jaw', '--machine', 'tray sealer 1', '--found', 'wiring', '--date', dayInWindow());
    expect(again.stdout).toMatch(/^Noted before, in line 1: .* nothing was added\.\n$/);
    expect(linesOf(path)).toHaveLength(1);

    const other = record(path, 'sealer 1 front jaw', '--found', 'sensor', '--date', dayInWindow());
    expect(other.status).toBe(0);
    expect(other.stderr).toMatch(
      /record\.jsonl:2: Front jaw was found to be sensor here, but wiring in .*record\.jsonl:1/,
    );
  });

  test('lists what was noted, beside what the report had said', async () => {
    const path = await history('list');
    expect(record(path).stdout).toMatch(/^Nothing has been noted in .*record\.jsonl yet\.\n$/);
    const noted = { time: `${dayInWindow()}T10:00:00.000Z`, note: 'plug dried' };
    const file = join(path, recordFileName);
    await addToRecord(file, { ...noted, zone: 'Front jaw', machine: 'Tray sealer 1', found: 'wiring' });
    await addToRecord(file, { ...noted, zone: 'Upper plate 3', machine: null, found: 'none' });
    const { status, stdout, stderr } = record(path);
    expect([status, stderr]).toEqual([0, '']);
    const [head, first, second] = stdout.split('\n');
    expect(head).toMatch(/^Line +When +Zone +Found +Report said +Note$/);
    expect(first).toMatch(/^ +1 .* Front jaw on Tray sealer 1 +wiring +wiring +plug dried$/);
    expect(second).toMatch(/^ +2 .* Upper plate 3 +\S.* +sensor +plug/);
    expect(stdout).toMatch(/Of 2 verdicts checked so far 1 was right\. To correct an entry/);
    expect(JSON.parse(record(path, '--json').stdout)).toMatchObject({
      entries: [
        { zone: 'Front jaw', found: 'wiring', said: 'wiring', isCounted: true },
        { zone: 'Upper plate 3', found: 'none', said: 'sensor', isCounted: true },
      ],
      confirmed: 2,
      right: 1,
    });
  });

  test('what cannot be meant is refused in a sentence, and nothing is noted', async () => {
    const path = await history('refused');
    const { status, stdout, stderr } = record(path, 'frnt jaw', '--found', 'wiring');
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^looselead: .*no zone "frnt jaw" in the reports kept\. Did you mean "Front jaw"/);
    expect(stderr).not.toMatch(/\n +at /);
    expect(record(path, '--found', 'none').stderr).toMatch(/The zone is missing/);
    expect(() => linesOf(path)).toThrow('ENOENT');
  });

  test('a damaged line is told with its place; the rest is read and more can be noted', async () => {
    const path = await history('damaged');
    writeFileSync(join(path, recordFileName), '{"zone": "Front jaw", "found": "wir');
    const { status, stderr } = record(path, 'former upper plate 3', '--found', 'sensor', '--date', dayInWindow());
    expect(status).toBe(0);
    expect(stderr).toMatch(/record\.jsonl:1: This line of the record is not whole, so it was left out\. Correct it/);
    expect(linesOf(path)).toHaveLength(2);
    expect(JSON.parse(linesOf(path)[1]!)).toMatchObject({ zone: 'Upper plate 3' });
  });

  test('a record that cannot be read is a sentence', async () => {
    const path = await history('no-file');
    mkdirSync(join(path, recordFileName));
    const { status, stderr } = record(path);
    expect(status).toBe(2);
    expect(stderr).toMatch(/^looselead: .*record\.jsonl: The record cannot be read/);
  });

  test('two who note something at once are both kept', async () => {
    const path = await history('both');
    const zones = ['sealer 1 front jaw', 'sealer 2 front jaw', 'former upper plate 3', 'former upper plate 1'];
    const ends = zones.map((zone) => {
      const child = spawn(process.execPath, program.args(...argsOf(path, [zone, '--found', 'wiring'])), {
        cwd: root,
        stdio: 'ignore',
      });
      return new Promise<number | null>((resolve) => child.once('exit', resolve));
    });
    expect(await Promise.all(ends)).toEqual([0, 0, 0, 0]);
    expect(
      linesOf(path)
        .map((line) => (JSON.parse(line) as { zone: string }).zone)
        .sort(),
    ).toEqual(['Front jaw', 'Front jaw', 'Upper plate 1', 'Upper plate 3']);
  });

  test('with no report kept yet, the name is taken as typed, and that is said', () => {
    const path = join(folder, 'new');
    const { status, stdout, stderr } = record(path, 'Zone 7', '--found', 'heater');
    expect([status, stdout]).toEqual([0, 'Noted: Zone 7, heater. No verdict could be checked with it yet.\n']);
    expect(stderr).toMatch(/^No report is kept in .* yet, so the name of the zone could not be checked\.\n$/);
  });
});

describe('what was typed', () => {
  const zones = [
    { zone: 'Front jaw', machine: 'M1' },
    { zone: 'Front jaw', machine: 'M2' },
    { zone: 'Upper plate', machine: 'M2' },
  ];
  const nowMs = Date.parse('2026-03-05T10:00:00Z');
  const typed = (more: Partial<TypedFinding>, timezone = 'Europe/Oslo') =>
    typedEntry({ zone: 'upper plate', found: 'none', ...more }, { zones, timezone }, nowMs);

  test('becomes an entry in the words of the reports', () => {
    const now = { zone: 'Upper plate', machine: 'M2', time: '2026-03-05T10:00:00.000Z', found: 'none', note: '' };
    expect(typed({})).toEqual(now);
    expect(typed({ found: 'Input card' }).found).toBe('input');
    expect(typed({ zone: 'front jaw', machine: 'm2', found: ' Heater ' })).toEqual({
      ...now,
      zone: 'Front jaw',
      found: 'heater',
    });
  });

  test.each([
    ['2026-03-04', 'Europe/Oslo', '2026-03-04T11:00:00.000Z'],
    ['2026-03-04', 'America/Chicago', '2026-03-04T18:00:00.000Z'],
    ['2025-03-30', 'Europe/Oslo', '2025-03-30T10:00:00.000Z'], // noon, on the day the clock goes forward
    ['2026-03-04T07:30', 'Europe/Oslo', '2026-03-04T06:30:00.000Z'],
    ['2026-03-04T07:30Z', 'Europe/Oslo', '2026-03-04T07:30:00.000Z'],
  ])('--date %s on the clock of %s is %s', (date, timezone, time) => {
    expect(typed({ date }, timezone).time).toBe(time);
  });

  test.each([
    [{ zone: 'front jaw' }, /"front jaw" may be any of these: Front jaw on M1, Front jaw on M2\. Write the whole name/],
    [{ machine: 'Press 9' }, /--machine Press 9 has no such zone\. The reports know Upper plate on M2\./],
    [{ found: 'moon' }, /--found moon is not known\. Give --found with one of sensor, wiring/],
    [{ found: undefined }, /What was found is missing\. Give --found/],
    [{ date: 'last week' }, /--date last week is not a date\. Write it as/],
    [{ date: '3' }, /--date 3 is not a date/],
    [{ date: '2062-03-04' }, /--date 2062-03-04 is still to come/],
  ])('%j is refused', (more, sentence) => {
    expect(() => typed(more as Partial<TypedFinding>)).toThrow(sentence);
  });
});
