import { mkdtemp, rm, stat } from 'node:fs/promises';
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { makeFolder } from '../../src/files/make-folder.js';

const root = mkdtempSync(join(tmpdir(), 'looselead-folder-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

test('makes a folder with those it lies in, and leaves one that is there', async () => {
  const path = join(root, 'a', 'b', 'c');
  await makeFolder(path);
  await makeFolder(path);
  expect(statSync(path).isDirectory()).toBe(true);
  await expect(makeFolder('.')).resolves.toBeUndefined();
});

test('a file in the way is an error, at the end of the path and within it', async () => {
  writeFileSync(join(root, 'file'), '');
  await expect(makeFolder(join(root, 'file'))).rejects.toMatchObject({ code: 'EEXIST' });
  await expect(makeFolder(join(root, 'file', 'x'))).rejects.toMatchObject({ code: 'ENOTDIR' });
});

test.skipIf(!existsSync('/proc/self'))(
  'a folder that takes no folder in is an error and no search without end',
  async () => {
    await expect(makeFolder('/proc/looselead/out')).rejects.toMatchObject({ code: 'ENOENT' });
  },
);

test('many at once make the same folders, whoever is first at each', async () => {
  const base = await mkdtemp(join(tmpdir(), 'looselead-folders-'));
  try {
    for (let round = 0; round < 200; round++) {
      const deep = join(base, String(round), 'reports', 'history');
      await Promise.all(Array.from({ length: 8 }, () => makeFolder(deep)));
      expect((await stat(deep)).isDirectory()).toBe(true);
    }
  } finally {
    await rm(base, { recursive: true });
  }
});
