import { readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { buildPage } from '../build-program.js';

const root = new URL('../../../', import.meta.url);

/** Builds the page script when it is missing or older than its source, so that a test never sees an old one. */
export async function buildPageIfOld(): Promise<void> {
  const source = fileURLToPath(new URL('src/report/', root));
  const newest = Math.max(
    ...readdirSync(source, { recursive: true }).map((file) => statSync(`${source}${String(file)}`).mtimeMs),
  );
  if (builtMs() <= newest) await buildPage(fileURLToPath(new URL('dist/', root)));
}

function builtMs(): number {
  try {
    return statSync(new URL('dist/page.css', root)).mtimeMs;
  } catch {
    return 0;
  }
}
