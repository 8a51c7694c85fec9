import { mkdir, stat } from 'node:fs/promises';
import { dirname } from 'node:path';

/**
 * Makes a folder and those it lies in. (Node's own recursive way never ends where a folder is there but takes none in,
 * as /proc.)
 *
 * @throws What the system says.
 */
export async function makeFolder(path: string): Promise<void> {
  try {
    await mkdir(path);
  } catch (error) {
    if (await isFolder(path)) return;
    const parent = dirname(path);
    const isParentMissing = (error as NodeJS.ErrnoException).code === 'ENOENT' && !(await isFolder(parent));
    if (!isParentMissing || parent === path) throw error;
    await makeFolder(parent);
    await makeFolder(path);
  }
}

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (there) => there.isDirectory(),
    () => false,
  );
}
