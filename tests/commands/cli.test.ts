import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { registerCommands } from '../../src/commands/index.js';
import { summaryText } from '../../src/commands/report/summary.js';
import { emptyFindings, plantFindings } from '../make/report/findings.js';
import { useProgram } from './program.js';

let folder = '';
let saved = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'looselead-cli-'));
  saved = join(folder, 'week-37.json');
  writeFileSync(saved, JSON.stringify(plantFindings()));
});
afterAll(() => rmSync(folder, { recursive: true }));

const { run: looselead } = useProgram({ FORCE_COLOR: '1' });

describe('the program', () => {
  test('alone gives the one line to try first', () => {
    const { status, stdout } = looselead();
    expect(status).toBe(0);
    expect(stdout.split('\n')[0]).toMatch(/looselead report FOLDER/);
  });

  test('names the nearest command for one that is not there', () => {
    const { status, stdout, stderr } = looselead('reprot', 'logs');
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/no command "reprot".*Did you mean "looselead report"/s);
  });

  test('shows a zone of saved findings, without colour where there is no terminal', () => {
    const { status, stdout, stderr } = looselead('zone', 'sealer 1 front jaw', saved);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain('Needs a fitter');
    expect(stdout).not.toContain('\u001B');
    expect(stdout.split('\n').length, 'lines of one screen').toBeLessThan(50);
  });

  test('gives it as JSON, or on one line', () => {
    const json = JSON.parse(looselead('zone', 'sealer 1 front jaw', saved, '--json').stdout) as { zone: string };
    expect(json.zone).toBe('Front jaw');
    expect(looselead('zone', 'sealer 1 front jaw', saved, '--quiet').stdout).toBe(
      'Front jaw on Tray sealer 1: Needs a fitter; wiring 81 %, sensor 13 %\n',
    );
  });

  test.each([
    ['downtime', [], /^Zone faults [\d.]+ h of [\d.]+ h stopped without a plan.*\n$/],
    ['ohms', ['--sensor', 'pt100', '--at', '100C'], /^138\.51 Ω\n$/], // IEC 60751:2008 table 1: 138.51 Ω at 100 °C
    ['ohms', ['--sensor', 'pt100', '--measured', 'OL'], /^Measured OL\..+\n$/],
  ])('%s %j --quiet answers on one line', (command, more, wanted) => {
    const paths = command === 'downtime' ? [saved] : [];
    const { status, stdout, stderr } = looselead(command, ...paths, ...more, '--quiet');
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(wanted);
  });

  test('says on stderr what it cannot do, and nothing on stdout', () => {
    const zone = looselead('zone', 'frnt jaw', saved);
    expect([zone.status, zone.stdout]).toEqual([2, '']);
    expect(zone.stderr).toMatch(/Did you mean "Front jaw"/);
    const nothing = looselead('report', join(folder, 'nowhere'));
    expect([nothing.status, nothing.stdout]).toEqual([2, '']);
    expect(nothing.stderr).toMatch(/^looselead: .*nowhere/);
    expect(nothing.stderr).not.toMatch(/\n +at /);
    expect(looselead('zone', 'jaw', join(folder, 'week-38.json')).stderr).toContain(
      'week-38.json: There is no such file.',
    );
    expect(looselead('zone').stderr).toContain('"looselead zone --help" tells its options and an example.');
    expect(looselead('weekly', join(folder, 'nowhere')).stderr).toMatch(/^There is no folder .*nowhere yet/);
  });

  test('notes what was found, as a sentence, as JSON, or quietly', () => {
    const record = (...more: string[]) =>
      looselead('record', 'Front jaw', '--found', 'wiring', '--history', join(folder, 'history'), ...more);
    expect(record().stdout).toBe('Noted: Front jaw, wiring. No verdict could be checked with it yet.\n');
    expect(JSON.parse(record('--json').stdout)).toMatchObject({ zone: 'Front jaw', found: 'wiring', confirmed: 0 });
    expect(record('--quiet').stdout).toBe('');
    expect(record('--found', 'moon').stderr).toMatch(/--found moon is not known/);
  });
});

describe('every command', () => {
  const program = new Command('looselead');
  registerCommands(program, { needsAttention: false });

  test.each(program.commands.map((command) => [command.name(), command] as const))(
    '%s has help with an example',
    (_name, command) => {
      let help = '';
      command.configureOutput({ writeOut: (text) => (help += text) });
      command.outputHelp();
      expect(help).toMatch(/Examples?:\n +looselead /);
      expect(command.description().length).toBeGreaterThan(20);
    },
  );

  test.each(program.commands.filter((command) => command.name() !== 'completion').map((c) => [c.name(), c] as const))(
    '%s can answer in JSON, or be quiet',
    (_name, command) => {
      expect(command.options.map(({ long }) => long)).toEqual(expect.arrayContaining(['--json', '--quiet']));
    },
  );
});

test('what report prints names who needs a fitter, and counts the rest', () => {
  const files = { htmlFile: 'r.html', jsonFile: 'f.json' };
  const lines = summaryText(plantFindings(), files).split('\n');
  expect(lines.slice(0, 4)).toEqual([
    '2 of 16 zones need a fitter:',
    '  1. Front jaw on Tray sealer 1: wiring 81 %, sensor 13 %',
    '  2. Upper plate 3 on Blister former: sensor 72 %, wiring 17 %',
    '1 to keep an eye on:',
  ]);
  const fixed = plantFindings().zones.map((zone) => (zone.status === 'faulty' ? { ...zone, fixed: zone.onset } : zone));
  const text = summaryText({ ...plantFindings(), zones: fixed }, files);
  expect(text).toMatch(/^None of 16 zones needs a fitter\./);
  expect(text).toContain('2 put right since');
  expect(summaryText(emptyFindings(), files)).toMatch(/^No zone was found/);
});

describe('logs that need a word more', () => {
  const rows = Array.from({ length: 300 }, (_, i) => {
    const time = new Date(Date.UTC(2026, 4, 4, 6, i)).toISOString();
    return `${time},${150 + (i % 3)},${160 + (i % 2)}`;
  });

  test('names for a file without a header reach the report', () => {
    const log = join(folder, 'bare.csv');
    writeFileSync(log, rows.join('\n'));
    const json = join(folder, 'bare.json');
    const more = ['--names', 'Time,Left jaw,Right jaw', '--unit', 'degC'];
    const { status, stderr } = looselead('report', log, '--json', json, '--html', join(folder, 'bare.html'), ...more);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const zones = (JSON.parse(readFileSync(json, 'utf8')) as { zones: { zone: string }[] }).zones;
    expect(zones.map(({ zone }) => zone).sort()).toEqual(['Left jaw', 'Right jaw']);
  });

  test.each([
    ['--timezone', 'Mars/Base', '"--timezone Mars/Base" is not a time zone. Give a name such as Europe/Oslo or UTC.'],
    ['--unit', 'celsius', '"--unit celsius" is not known. Give degC, degF or K.'],
    ['--dates', 'us', '"--dates us" is not known. Give day-first or month-first.'],
  ])('%s %s is refused in a sentence', (option, given, sentence) => {
    const { status, stderr } = looselead('report', folder, option, given);
    expect([status, stderr.trim()]).toEqual([2, `looselead: ${sentence}`]);
  });

  test('a holding time that is none is refused in a sentence', () => {
    const { status, stderr } = looselead('report', folder, '--hold', 'soon');
    expect(status).toBe(2);
    expect(stderr).toMatch(/"--hold soon" is no time\. Give minutes above 0/);
  });

  test('a place that cannot be written is told, and nothing half written stays', () => {
    const log = join(folder, 'named.csv');
    writeFileSync(log, ['Time,Left jaw [degC],Right jaw [degC]', ...rows].join('\n'));
    const { status, stderr } = looselead('report', log, '--out', join(log, 'inside'));
    expect(status).toBe(2);
    expect(stderr).toMatch(/could not be written/);
    expect(stderr).not.toMatch(/\n\s+at /);
    expect(readFileSync(log, 'utf8')).toContain('Left jaw');
  });
});
