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
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT' || parent === path) throw error;
    if (!(await isFolder(parent))) await makeFolder(parent);
    await makeLast(path); // also where another run made the parent meanwhile
  }
}

async function makeLast(path: string): Promise<void> {
  try {
    await mkdir(path);
  } catch (error) {
    if (!(await isFolder(path))) throw error;
  }
}

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (there) => there.isDirectory(),
    () => false,
  );
}
