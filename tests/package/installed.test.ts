import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { demandFreshBuild, reportAgainstGolden, root } from './golden-run.js';
import { install } from './registry.js';

interface Packed {
  readonly filename: string;
  readonly files: readonly { readonly path: string }[];
}

// All dependencies are fetched.
vi.setConfig({ testTimeout: 600_000 });

let folder = '';
let packed: Packed;

beforeAll(() => {
  demandFreshBuild();
  folder = mkdtempSync(join(tmpdir(), 'looselead-package-'));
  // Without scripts: other tests read dist while this one runs, and it has just been built.
  const args = ['pack', '--ignore-scripts', '--json', '--pack-destination', folder];
  const { status, stdout, stderr } = spawnSync('npm', args, { cwd: root, encoding: 'utf8' });
  if (status !== 0) throw new Error(`npm pack failed:\n${stderr}`);
  packed = (JSON.parse(stdout) as Packed[])[0]!;
});
afterAll(() => rmSync(folder, { recursive: true }));

test('the package holds the program, the sample logs and what a reader needs, and nothing else', () => {
  const paths = packed.files.map(({ path }) => path);
  const top = [...new Set(paths.map((path) => path.split('/')[0]))].sort();
  expect(top).toEqual(['CHANGELOG.md', 'LICENSE', 'README.md', 'dist', 'package.json', 'sample-logs', 'tests']);
  // Of the tests only the pictures that the README shows.
  expect(
    paths.filter((path) => path.startsWith('tests/') && !/^tests\/browser\/pictures\/.*\.png$/.test(path)),
  ).toEqual([]);
  expect(paths).toEqual(expect.arrayContaining(['dist/cli.js', 'dist/page-script.js', 'sample-logs/plant.yaml']));
});

describe.skipIf(process.platform === 'win32')('installed for all users of a machine, at a place of its own', () => {
  test('it tells its version and reports on the packed sample logs as was reviewed', (context) => {
    const prefix = join(folder, 'prefix');
    const why = install(['--global', '--prefix', prefix, join(folder, packed.filename)]);
    if (why) return context.skip(why);
    const program = join(prefix, 'bin', 'looselead');
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
    expect(spawnSync(program, ['--version'], { encoding: 'utf8' }).stdout.trim()).toBe(version);
    const sampleLogs = join(prefix, 'lib', 'node_modules', 'looselead', 'sample-logs');
    expect(reportAgainstGolden([program], sampleLogs)).toEqual([]);
  });
});
