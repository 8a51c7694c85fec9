import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { contentsOf, expectSentence, expectWhole, makeBench, outputsIn, run, temporaryFiles } from './program.js';
import type { Bench } from './program.js';

let bench: Bench;
const disk = mkdtempSync(join(tmpdir(), 'looselead-disk-'));
/** Needs the right to mount. Who has none tests with the limit on file sizes below, which stops a write the same way. */
const hasDisk = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=20m', 'none', disk]).status === 0;

beforeAll(async () => void (bench = await makeBench()));
afterAll(() => {
  if (hasDisk) spawnSync('umount', [disk]);
  rmdirSync(disk);
  bench.remove();
});

/** What an earlier report has left in a folder; makes one where there is none. */
function standing(folder: string): Map<string, string> {
  if (!existsSync(folder)) expect(run(bench, ['report', bench.logs[0], ...outputsIn(folder)]).status).toBe(0);
  return contentsOf(folder);
}

/** Leaves that much room on the small disk. */
function fillBut(freeKb: number): void {
  const filler = join(disk, 'filler');
  rmSync(filler, { force: true });
  const { bavail, bsize } = statfsSync(disk);
  writeFileSync(filler, Buffer.alloc(Math.max(0, bavail * bsize - freeKb * 1000)));
}

/** Everything that was there is there as it was; what is new can be read; nothing is left beside it. */
async function expectUnharmed(folder: string, before: ReadonlyMap<string, string>): Promise<void> {
  const after = contentsOf(folder);
  for (const [path, content] of before) expect([path, after.get(path)]).toEqual([path, content]);
  await expectWhole(folder);
  expect(temporaryFiles(folder)).toEqual([]);
}

describe.skipIf(!hasDisk)('a disk that fills up while a report is written', () => {
  // What no longer fits: the digest (12 kB), the run in the history, the findings (280 kB), the page (1 MB).
  test.each([0, 16, 160, 600])('%i kB free', async (freeKb) => {
    const folder = join(disk, 'reports');
    const before = standing(folder);
    fillBut(freeKb);
    const { status, stderr, stdout } = run(bench, ['report', bench.logs[1], ...outputsIn(folder)]);
    expect([status, stdout]).toEqual([2, '']);
    expectSentence(stderr);
    expect(stderr).toMatch(/^looselead: .*reports.*: It could not be written \(the disk is full\)/);
    await expectUnharmed(folder, before);
  });

  test('standard output on such a disk is told, and not cut in silence', () => {
    const saved = join(bench.folder, 'saved');
    expect(run(bench, ['report', bench.logs[0], '--out', saved]).status).toBe(0);
    fillBut(40);
    const zone = ['zone', 'Zone 1', join(saved, 'findings.json'), '--json'];
    expect(run(bench, zone).stdout.length).toBeGreaterThan(100_000);
    const script = `"$0" "$@" > ${join(disk, 'out.txt')}`;
    const { status, stderr } = run(bench, zone, ['sh', '-c', script, process.execPath]);
    expect(status).toBe(2);
    expectSentence(stderr);
    expect(stderr).toContain('Standard output could not be written (the disk is full)');
  });
});

describe.skipIf(process.platform === 'win32')('files that may not grow beyond a size', () => {
  /** The shell's limit, with its signal caught, makes a write stop in the middle as a full disk does; root is not needed. */
  const limited = (kb: number) => {
    const hook = 'data:text/javascript,process.on("SIGXFSZ",()=>{})';
    return ['bash', '-c', `ulimit -f ${kb}; exec "$0" "$@"`, process.execPath, '--import', hook];
  };

  test.each([4, 100, 500])('%i kB', async (kb) => {
    const folder = join(bench.folder, 'limited');
    const before = standing(folder);
    const { status, stderr } = run(bench, ['report', bench.logs[1], ...outputsIn(folder)], limited(kb));
    expect(status).toBe(2);
    expectSentence(stderr);
    expect(stderr).toMatch(/It could not be written \(files may not grow that large here\)/);
    await expectUnharmed(folder, before);
  });
});

describe.skipIf(process.platform === 'win32')('a device that is always full', () => {
  test('is told, and stays a device', () => {
    const folder = join(bench.folder, 'device');
    const { status, stderr } = run(bench, ['report', bench.logs[0], '--out', folder, '--csv', '/dev/full']);
    expect(status).toBe(2);
    expectSentence(stderr);
    expect(stderr).toContain('/dev/full: It could not be written (the disk is full)');
    expect(spawnSync('test', ['-c', '/dev/full']).status).toBe(0);
  });

  test.each([
    ['--help'],
    ['completion', 'bash'],
    ['preview', 'LOGS'],
    ['downtime', 'LOGS', '--csv'],
    ['report', 'LOGS'],
  ])('behind what %s prints', (...args) => {
    const given = args.map((arg) => (arg === 'LOGS' ? bench.logs[0] : arg));
    if (args[0] === 'report') given.push('--out', join(bench.folder, 'printed'));
    const { status, stderr } = run(bench, given, ['sh', '-c', '"$0" "$@" > /dev/full', process.execPath]);
    expect(status).toBe(2);
    expectSentence(stderr);
  });

  test('a reader that leaves early is no fault', () => {
    const before = ['bash', '-c', '"$0" "$@" | head -1; exit ${PIPESTATUS[0]}', process.execPath];
    const { status, stderr } = run(bench, ['preview', bench.logs[0]], before);
    expect([status, stderr]).toEqual([0, '']);
  });
});
