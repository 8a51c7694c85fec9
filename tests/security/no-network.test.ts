import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { builtProgram } from '../make/built-program.js';
import { smallPlant } from '../make/small-plant.js';
import { writePlant } from '../make/write-plant.js';

vi.setConfig({ testTimeout: 300_000, hookTimeout: 300_000 });

const hook = fileURLToPath(new URL('./no-network.mjs', import.meta.url));
let program: Awaited<ReturnType<typeof builtProgram>>;
let folder = '';
let logs = '';

beforeAll(async () => {
  program = await builtProgram();
  folder = mkdtempSync(join(tmpdir(), 'looselead-network-'));
  logs = join(folder, 'logs');
  writePlant(smallPlant({ zones: 3, days: 2, everyS: 60 }), logs);
});
afterAll(() => {
  program.remove();
  rmSync(folder, { recursive: true });
});

/** Runs node with the hook in front: what it tried to reach or to start, and what code it made from texts. */
function triedBy(...args: readonly string[]) {
  const [tried, code] = [join(folder, 'tried'), join(folder, 'code')];
  for (const file of [tried, code]) rmSync(file, { force: true });
  const { status, stderr } = spawnSync(process.execPath, ['--import', hook, ...args], {
    encoding: 'utf8',
    env: { ...process.env, TRIED: tried, CODE: code },
  });
  const read = (file: string): string => (existsSync(file) ? readFileSync(file, 'utf8') : '');
  return { status, stderr, tried: read(tried), code: read(code) };
}

describe('the hook sees a try, so that silence means something', () => {
  test.each([
    ['fetch', "fetch('http://127.0.0.1/')"],
    ['net.Socket.connect', "require('net').connect(9, '127.0.0.1')"],
    ['net.Server.listen', "require('net').createServer().listen(0)"],
    ['dns.lookup', "require('dns').lookup('localhost', () => {})"],
    ['dns.promises.resolve4', "require('dns').promises.resolve4('localhost')"],
    ['child_process.spawn', "require('child_process').spawn('true')"],
  ])('%s', (what, code) => {
    expect(triedBy('-e', code).tried).toContain(what);
  });
  test('code made from a text', () => {
    expect(triedBy('-e', "new Function('return 12345')(); eval('54321')").code).toMatch(/return 12345\n54321/);
  });
});

describe('no command opens a socket, asks a name server or starts a program', () => {
  const history = (): string => join(folder, 'history');
  const findings = (): string => join(folder, 'out', 'findings.json');
  const commands: readonly (readonly [string, () => string[]])[] = [
    ['report', () => [logs, '--out', dirname(findings()), '--history', history(), '--csv', join(folder, 'z.csv')]],
    ['preview', () => [logs, '--write-plant', join(folder, 'plant.yaml')]],
    ['downtime', () => [logs, '--csv']],
    ['zone', () => ['Zone 1', findings(), '--why']],
    ['record', () => ['Zone 1', '--found', 'wiring', '--history', history()]],
    ['ohms', () => ['--sensor', 'pt100', '--at', '21C']],
    ['completion', () => ['bash']],
  ];
  test.each(commands)('%s', (command, args) => {
    const { status, tried, stderr, code } = triedBy(program.cli, command, ...args());
    expect(stderr).not.toMatch(/not allowed here|\n +at /);
    expect(status).toBe(0);
    expect(tried).toBe('');
    // The tables of the report are summed by code that arquero makes; nothing in it comes from a log.
    if (command === 'report') expect(code).toContain('return');
    expect(code).not.toMatch(/Zone \d|M1|Guard|Film|jam/);
  });
});

test('the program itself makes no code from texts', () => {
  const source = fileURLToPath(new URL('../../src/', import.meta.url));
  const own = readdirSync(source, { recursive: true })
    .map(String)
    .filter((name) => name.endsWith('.ts'));
  expect(own.length).toBeGreaterThan(200);
  const makes = own.filter((name) =>
    /\beval\(|\bFunction\(|runIn\w*Context/.test(readFileSync(join(source, name), 'utf8')),
  );
  expect(makes).toEqual([]);
});

test('the page forbids network and eval', () => {
  const page = readFileSync(join(folder, 'out', 'report.html'), 'utf8');
  const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(page)?.[1] ?? '';
  expect(policy).toMatch(/default-src 'none'/);
  expect(policy).not.toMatch(/unsafe|https?:|connect-src/);
});
