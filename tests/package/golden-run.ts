import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Findings } from '../../src/model/findings.js';
import { differences } from '../golden/differences.js';
import { goldenFile, goldenOf } from '../golden/golden-findings.js';

export const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * Runs `report` on sample logs and holds its findings against the reviewed ones.
 *
 * @param command The program as it is started, such as ["node", "dist/cli.js"].
 * @returns What differs, a line each; what it said where it did not run.
 */
export function reportAgainstGolden(command: readonly string[], sampleLogs: string): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'looselead-golden-'));
  try {
    const [program, ...before] = command;
    const args = [...before, 'report', sampleLogs, '--out', folder, '--quiet'];
    const { status, stderr } = spawnSync(program!, args, { encoding: 'utf8' });
    if (status !== 0 || stderr !== '') return [`exit ${status}: ${stderr}`];
    if (!/<\/html>\s*$/.test(readFileSync(join(folder, 'report.html'), 'utf8'))) return ['the page is not whole'];
    const findings = JSON.parse(readFileSync(join(folder, 'findings.json'), 'utf8')) as Findings;
    return differences(JSON.parse(readFileSync(goldenFile, 'utf8')), goldenOf(findings));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** @throws Error when src was changed after the last build, because what is in dist is then something else. */
export function demandFreshBuild(): void {
  const newest = (folder: string, ending: string): number =>
    Math.max(
      0,
      ...readdirSync(join(root, folder), { recursive: true })
        .map(String)
        .filter((name) => name.endsWith(ending))
        .map((name) => statSync(join(root, folder, name)).mtimeMs),
    );
  if (newest('dist', '.js') < newest('src', '.ts'))
    throw new Error('dist is older than src. Run "npm run build" first; "npm run check:all" does it by itself.');
}
