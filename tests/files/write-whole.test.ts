import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { temporaryNameOf } from '../../src/files/temporary-name.js';
import { writeWhole } from '../../src/files/write-whole.js';

const folders: string[] = [];
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'looselead-files-'));
  folders.push(folder);
});
afterAll(() => folders.forEach((path) => rmSync(path, { recursive: true })));

const dayMs = 86_400_000;
/** The name of another run's temporary file: as ours, made by that process. */
const madeBy = (pid: number) => temporaryNameOf(join(folder, 'x')).replace(`-${process.pid}-`, `-${pid}-`);
const leave = (path: string, ageMs = 0) => {
  writeFileSync(path, 'half');
  const atS = (Date.now() - ageMs) / 1000;
  utimesSync(path, atS, atS);
};
/** A number that was a process of this machine and is none any more. */
const deadPid = () => spawnSync(process.execPath, ['--version']).pid;

describe('writing', () => {
  test('makes the folder, replaces what was there, leaves nothing beside it', async () => {
    const file = join(folder, 'a', 'b.txt');
    await writeWhole({ file, content: 'first' });
    await writeWhole({ file, content: new Uint8Array([111, 107]) });
    expect(readFileSync(file, 'utf8')).toBe('ok');
    expect(readdirSync(join(folder, 'a'))).toEqual(['b.txt']);
  });

  test('keeps who may read it, and follows a link', async () => {
    const file = join(folder, 'real.txt');
    writeFileSync(file, 'old');
    chmodSync(file, 0o640);
    symlinkSync(file, join(folder, 'link.txt'));
    await writeWhole({ file: join(folder, 'link.txt'), content: 'new' });
    expect(readFileSync(file, 'utf8')).toBe('new');
    expect(statSync(file).mode & 0o777).toBe(0o640);
  });

  test('when one of several cannot be written, none is replaced', async () => {
    const [good, bad] = [join(folder, 'good.txt'), join(folder, 'folder')];
    writeFileSync(good, 'old');
    mkdirSync(bad);
    const both = writeWhole({ file: good, content: 'new' }, { file: bad, content: 'new' });
    await expect(both).rejects.toMatchObject({
      code: 'write-failed',
      place: { file: bad },
      what: expect.stringContaining('it is a folder') as string,
    });
    expect(readFileSync(good, 'utf8')).toBe('old');
    expect(readdirSync(folder).sort()).toEqual(['folder', 'good.txt']);
  });

  test('what is no file is written to and stays what it is', async () => {
    await writeWhole({ file: '/dev/null', content: 'gone' });
    expect(statSync('/dev/null').isCharacterDevice()).toBe(true);
  });

  test('many at once into one file leave one of them whole', async () => {
    const file = join(folder, 'one.txt');
    const texts = Array.from({ length: 20 }, (_, i) => String(i).repeat(10_000));
    await Promise.all(texts.map((content) => writeWhole({ file, content })));
    expect(texts).toContain(readFileSync(file, 'utf8'));
    expect(readdirSync(folder)).toEqual(['one.txt']);
  });
});

describe('what killed runs left', () => {
  const afterNextWrite = async () => {
    await writeWhole({ file: join(folder, 'out.txt'), content: 'x' });
    return readdirSync(folder).filter((name) => name !== 'out.txt');
  };

  test('is deleted when its process is gone', async () => {
    leave(madeBy(deadPid()));
    expect(await afterNextWrite()).toEqual([]);
  });

  test('stays while its process runs, until it is a day old', async () => {
    const other = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 60000)']);
    try {
      const path = madeBy(other.pid!);
      leave(path, dayMs - 60_000);
      expect(await afterNextWrite()).toHaveLength(1);
      leave(path, dayMs + 60_000);
      expect(await afterNextWrite()).toEqual([]);
    } finally {
      other.kill();
    }
  });

  test('of another machine stays until it is a day old, since its process numbers mean nothing here', async () => {
    const elsewhere = createHash('sha256').update('elsewhere').digest('hex').slice(0, 8);
    const path = madeBy(deadPid()).replace(/looselead-[0-9a-f]{8}/, `looselead-${elsewhere}`);
    leave(path, dayMs - 60_000);
    expect(await afterNextWrite()).toHaveLength(1);
    leave(path, dayMs + 60_000);
    expect(await afterNextWrite()).toEqual([]);
  });

  test('is told by its whole name: files and folders of others stay, however old', async () => {
    const others = ['.looselead-notes.tmp', 'findings.json.123', '.looselead-0011aabb-12-1.tmp.txt'];
    for (const name of others) leave(join(folder, name), 30 * dayMs);
    const ours = madeBy(deadPid());
    mkdirSync(ours);
    utimesSync(ours, 1, 1);
    expect((await afterNextWrite()).sort()).toEqual([...others, ours.slice(folder.length + 1)].sort());
  });
});
