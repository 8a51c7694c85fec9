import { lstat, readdir, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { isLeftover, isTemporaryName } from './temporary-name.js';

/**
 * Deletes what killed runs left in a folder under temporary names, and nothing else. Another run may do the same at the
 * same time, so a file that is gone is no error; nor is one that may not be deleted. Never throws.
 */
export async function removeLeftovers(folder: string): Promise<void> {
  const names = await readdir(folder).catch((): string[] => []);
  for (const name of names.filter(isTemporaryName)) {
    const path = join(folder, name);
    const about = await lstat(path).catch(() => null);
    if (about?.isFile() && isLeftover(name, Date.now() - about.mtimeMs)) await unlink(path).catch(() => undefined);
  }
}
