import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/**
 * Path of a file of published values or open data that lies beside the repository and is not committed.
 *
 * @param name Path below the `data` folder.
 * @returns undefined where this machine does not have it: skip the test and say so in its name.
 */
export function sharedData(name: string): string | undefined {
  const path = fileURLToPath(new URL(`../../../shared/data/${name}`, import.meta.url));
  return existsSync(path) ? path : undefined;
}
