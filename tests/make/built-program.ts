import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * Translates the program as it stands now into a folder of its own, so that a test can start it without a loader and
 * whatever lies in dist. Only the page's script is taken from there.
 *
 * @returns The path of its cli.js, and how to delete it. Throws where `npm run build` has never been run.
 */
export async function builtProgram(): Promise<{ readonly cli: string; remove(): void }> {
  const pageScript = join(root, 'dist', 'report', 'page-script.js');
  if (!existsSync(pageScript)) throw new Error('The page script is missing. Run "npm run build" first.');
  const folder = mkdtempSync(join(tmpdir(), 'looselead-program-'));
  const dist = join(folder, 'dist');
  await build({ entryPoints: [join(root, 'src/**/*.ts')], outbase: join(root, 'src'), outdir: dist, format: 'esm' });
  mkdirSync(join(dist, 'report'), { recursive: true });
  for (const part of ['page.html', 'page.css']) cpSync(join(root, 'src', 'report', part), join(dist, 'report', part));
  cpSync(join(root, 'src', 'weigh', 'strengths.json'), join(dist, 'weigh', 'strengths.json'));
  cpSync(pageScript, join(dist, 'report', 'page-script.js'));
  cpSync(join(root, 'package.json'), join(folder, 'package.json'));
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  return { cli: join(dist, 'cli.js'), remove: () => rmSync(folder, { recursive: true }) };
}
