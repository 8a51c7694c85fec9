import { spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = new URL('../../../', import.meta.url);

/** Builds the page script when it is missing or older than its source, so that a test never sees an old one. */
export function buildPageIfOld(): void {
  const source = fileURLToPath(new URL('src/report/', root));
  const newest = Math.max(
    ...readdirSync(source, { recursive: true }).map((file) => statSync(`${source}${String(file)}`).mtimeMs),
  );
  if (builtMs() > newest) return;
  const built = spawnSync(process.execPath, ['--import', 'tsx', 'tests/rules/build-assets.ts'], {
    encoding: 'utf8',
    cwd: fileURLToPath(root),
  });
  if (built.status !== 0) throw new Error(`The page script could not be built:\n${built.stderr}`);
}

function builtMs(): number {
  try {
    return statSync(new URL('dist/report/page.css', root)).mtimeMs;
  } catch {
    return 0;
  }
}
