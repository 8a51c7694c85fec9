// Makes the report's page script (vega, vega-lite and our own part in one) and puts the page's parts into dist.
import { copyFile, mkdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = new URL('../../', import.meta.url);
const from = (path: string): string => fileURLToPath(new URL(path, root));

await mkdir(from('dist/report'), { recursive: true });
await build({
  entryPoints: [from('src/report/page/main.ts')],
  outfile: from('dist/report/page-script.js'),
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
for (const part of ['page.html', 'page.css']) await copyFile(from(`src/report/${part}`), from(`dist/report/${part}`));
