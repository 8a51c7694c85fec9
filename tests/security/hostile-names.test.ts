import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { safeCsvCell } from '../../src/report/safe-csv.js';
import { builtProgram } from '../make/built-program.js';
import { plainFault, smallPlant } from '../make/small-plant.js';
import { writePlant } from '../make/write-plant.js';

vi.setConfig({ testTimeout: 300_000, hookTimeout: 300_000 });

const zones = ['../../up', '/looselead-evil', '=cmd|x!A1', '@at;=1+1', '\u001B[31mred', '-2+3', 'C:\\evil\\x'];
const machines = ['../M', '=M'];
let program: Awaited<ReturnType<typeof builtProgram>>;
let base = '';
/** Deep inside `base`, so that a path that leads up is seen there. */
let work = '';

beforeAll(async () => {
  program = await builtProgram();
  base = mkdtempSync(join(tmpdir(), 'looselead-names-'));
  work = join(base, 'a', 'b', 'c');
  mkdirSync(work, { recursive: true });
  const logs = join(base, 'logs');
  const faults = [plainFault('sensor_open', 2, 0.5)];
  writePlant(smallPlant({ zones: zones.length, days: 2, everyS: 60, faults }), logs);
  const alarms = join(logs, 'alarms.csv');
  writeFileSync(alarms, readFileSync(alarms, 'utf8').replaceAll('Guard open', '=1+1').replaceAll('Tray jam', '+T=2*2'));
  writeFileSync(join(logs, 'plant.yaml'), plantFile(readFileSync(join(logs, 'temperatures.csv'), 'utf8')));
});
afterAll(() => {
  program.remove();
  rmSync(base, { recursive: true });
});

/** Gives the readings of a log hostile names; JSON strings are YAML strings. */
function plantFile(log: string): string {
  const readings = [...log.split(/\r?\n/)[0]!.matchAll(/[^;]+\.PV/g)].map(([name]) => name);
  expect(readings).toHaveLength(zones.length);
  const lines = zones.map(
    (name, i) =>
      `  - { name: ${JSON.stringify(name)}, machine: ${JSON.stringify(machines[i % 2])}, reading: ${JSON.stringify(readings[i])} }\n`,
  );
  return `costPerHour: 100\nzones:\n${lines.join('')}`;
}

function looselead(...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program.cli, ...args], {
    cwd: work,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}
const namesUnder = (folder: string): string[] => readdirSync(folder, { recursive: true }).map(String).sort();

describe('names from logs and plant.yaml', () => {
  test('are never used as paths: a report writes its own names and nothing else', () => {
    const before = namesUnder(base);
    const { status, stderr } = looselead(
      'report',
      join(base, 'logs'),
      '--history',
      'h',
      '--csv',
      'z.csv',
      '--out',
      'o',
    );
    expect([status, stderr]).toEqual([0, '']);
    for (const zone of zones) looselead('record', zone, '--found', 'wiring', '--history', 'h');
    const added = namesUnder(base).filter((name) => !before.includes(name));
    expect(added.map((name) => name.replace(/run-\d{8}T\d{6}Z-[0-9a-f]{12}/, 'run'))).toEqual(
      [
        '',
        '/h',
        '/h/record.jsonl',
        '/h/run.digest',
        '/h/run.json',
        '/o',
        '/o/findings.json',
        '/o/report.html',
        '/z.csv',
      ]
        .slice(1)
        .map((name) => `a/b/c${name}`),
    );
    expect(existsSync('/looselead-evil')).toBe(false);
    const found = JSON.parse(readFileSync(join(work, 'o', 'findings.json'), 'utf8')) as { zones: { zone: string }[] };
    expect(found.zones.map(({ zone }) => zone).sort()).toEqual([...zones].sort());
  });

  test('move no cursor and change no colour where they are printed', () => {
    const findings = join(work, 'o', 'findings.json');
    for (const args of [
      ['report', join(base, 'logs'), '--out', 'o'],
      ['preview', join(base, 'logs')],
      ['downtime', findings, '--by', 'zone'],
      ['zone', '\u001B[31mred', findings],
      ['zone', '\u001B[31mblue', findings],
    ]) {
      const { stdout, stderr } = looselead(...args);
      expect(`${stdout}${stderr}`.length).toBeGreaterThan(0);
      expect(`${stdout}${stderr}`).not.toContain('\u001B');
    }
  });
});

/** Where a spreadsheet that parts cells at semicolons or tabs would begin a cell, too. */
const isFormula = (cell: string): boolean => /^[=+\-@\t\r\n＝＋－＠]|[;\t\r\n][=+\-@＝＋－＠]/.test(cell);
const isNumber = (cell: string): boolean => /^-?\d+(\.\d+)?$/.test(cell);

describe('every CSV that is written', () => {
  test.each([
    ['report --csv', () => readFileSync(join(work, 'z.csv'), 'utf8')],
    ['downtime --csv', () => looselead('downtime', join(base, 'logs'), '--csv').stdout],
    ['downtime --by zone', () => looselead('downtime', join(base, 'logs'), '--csv', '--by', 'zone').stdout],
    ['downtime --by machine', () => looselead('downtime', join(base, 'logs'), '--csv', '--by', 'machine').stdout],
  ])('%s holds no cell that a spreadsheet would run', (_name, text) => {
    const rows: string[][] = parse(text());
    expect(rows.length).toBeGreaterThan(1);
    const cells = rows.flat();
    expect(cells.filter((cell) => isFormula(cell) && !isNumber(cell))).toEqual([]);
    expect(cells.some((cell) => /^'[=+\-@]/.test(cell))).toBe(true); // there was something to defuse
  });

  // The list of OWASP, "CSV Injection" (community page), and the full-width signs it names.
  test('any text stays one cell, is not run, and is readable', () => {
    const text = fc.string({ unit: fc.constantFrom(...'=+-@\t\r\n;,"\'aZ1 ＝＋－＠') });
    fc.assert(
      fc.property(fc.array(text, { minLength: 1, maxLength: 4 }), (values) => {
        const row = values.map(safeCsvCell).join(',');
        const [cells] = parse(`${row}\r\n`, { relax_column_count: true, skip_empty_lines: false }) as string[][];
        expect(cells).toHaveLength(values.length);
        for (const [i, cell] of cells!.entries()) {
          expect(isFormula(cell)).toBe(false);
          expect(cell.replaceAll("'", '')).toBe(values[i]!.replaceAll("'", ''));
        }
      }),
    );
  });

  test('numbers stay numbers', () => {
    expect([-2.5, 0, 3].map(safeCsvCell)).toEqual(['-2.5', '0', '3']);
  });
});
