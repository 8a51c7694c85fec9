import { copyFile, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const from = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/**
 * Translates the program into a folder, libraries included: a run then opens some twenty files in place of a thousand.
 * What a command imports late stays a file of its own.
 */
export async function buildProgram(folder: string): Promise<void> {
  await build({
    entryPoints: [from('src/cli.ts')],
    outdir: folder,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    // Blanks and licences take time to read at every start; the licences stand in files beside. Short lines keep the
    // places in a stack trace of use.
    minifyWhitespace: true,
    lineLimit: 160,
    legalComments: 'linked',
    // Some libraries are CommonJS and call require, which a module does not have by itself.
    banner: { js: "import{createRequire as requireOf}from'node:module';const require=requireOf(import.meta.url);" },
  });
}

/** Makes the report's page script (vega, vega-lite and our own part in one) and puts the page's parts beside it. */
export async function buildPage(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true });
  await build({
    entryPoints: [from('src/report/page/main.ts')],
    outfile: join(folder, 'page-script.js'),
    bundle: true,
    minify: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    // One line of ASCII: the page's own escapes need not know what is in a library.
    charset: 'ascii',
    legalComments: 'none',
    // The licences of what is bundled ask for their notice wherever a copy goes, a report included.
    banner: {
      js: '/* Contains vega, vega-lite and vega-interpreter (BSD-3-Clause, (c) University of Washington Interactive Data Lab) and d3 (ISC, (c) Mike Bostock). */',
    },
  });
  for (const part of ['page.html', 'page.css']) await copyFile(from(`src/report/${part}`), join(folder, part));
}
