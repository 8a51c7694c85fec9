import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildProgram } from './build-program.js';
import { buildPageIfOld } from './report/built-page.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * Builds the program as it stands now into a folder of its own, so that a test can start it without a loader and
 * whatever program lies in dist; the page's parts are those in dist, made anew where they are older than their source.
 *
 * @returns The path of its cli.js, and how to delete it.
 */
export async function builtProgram(): Promise<{ readonly cli: string; remove(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'looselead-program-'));
  const dist = join(folder, 'dist');
  await Promise.all([buildProgram(dist), buildPageIfOld()]);
  for (const part of ['page-script.js', 'page.html', 'page.css']) cpSync(join(root, 'dist', part), join(dist, part));
  cpSync(join(root, 'package.json'), join(folder, 'package.json'));
  return { cli: join(dist, 'cli.js'), remove: () => rmSync(folder, { recursive: true }) };
}
