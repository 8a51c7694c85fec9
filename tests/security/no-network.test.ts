import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { plantOfSeed } from '../make/write-plants.js';
import { writePlant } from '../make/write-plant.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const hook = fileURLToPath(new URL('./no-network.mjs', import.meta.url));
let folder = '';
let logs = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'looselead-network-'));
  logs = join(folder, 'logs');
  writePlant(plantOfSeed(7, { days: 2, everyS: 60, cellLimit: 60_000 }), logs);
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Runs node with the hook in front; what it tried to reach, one per line. */
function triedBy(...args: readonly string[]) {
  const tried = join(folder, 'tried');
  rmSync(tried, { force: true });
  const { status, stderr } = spawnSync(process.execPath, ['--import', hook, ...args], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, TRIED: tried },
  });
  return { status, stderr, tried: existsSync(tried) ? readFileSync(tried, 'utf8') : '' };
}

describe('no network', () => {
  test('the hook sees a try, so that silence means something', () => {
    expect(triedBy('-e', "fetch('http://127.0.0.1/')").tried).toContain('fetch');
    expect(triedBy('-e', "require('net').connect(9, '127.0.0.1')").tried).toContain('net.Socket.connect');
  });

  test.each([
    ['report', () => ['--out', join(folder, 'out'), '--history', join(folder, 'history')]],
    ['preview', () => []],
    ['downtime', () => []],
  ])('%s opens no socket and asks no name server', (command, more) => {
    const { status, tried, stderr } = triedBy('--import', 'tsx', 'src/cli.ts', command, logs, ...more());
    expect(stderr).not.toMatch(/not allowed here/);
    expect(status).toBe(0);
    expect(tried).toBe('');
  });

  test('the page forbids it too, and eval with it', () => {
    const page = readFileSync(join(folder, 'out', 'report.html'), 'utf8');
    const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(page)?.[1] ?? '';
    expect(policy).toMatch(/default-src 'none'/);
    expect(policy).not.toMatch(/unsafe-eval|https?:|connect-src/);
  });
});
