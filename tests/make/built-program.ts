import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildPage, buildProgram } from './build-program.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * Builds the program as it stands now into a folder of its own, so that a test can start it without a loader and
 * whatever lies in dist.
 *
 * @returns The path of its cli.js, and how to delete it.
 */
export async function builtProgram(): Promise<{ readonly cli: string; remove(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'looselead-program-'));
  const dist = join(folder, 'dist');
  await Promise.all([buildProgram(dist), buildPage(dist)]);
  cpSync(join(root, 'package.json'), join(folder, 'package.json'));
  return { cli: join(dist, 'cli.js'), remove: () => rmSync(folder, { recursive: true }) };
}
