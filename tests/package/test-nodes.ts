// Runs the built program and the quick tests under other versions of Node: npm run test:nodes
// With `-- --all` every test, which takes as long as npm test for each version.
import { spawnSync } from 'node:child_process';
import { delimiter, dirname, join } from 'node:path';
import { demandFreshBuild, reportAgainstGolden, root } from './golden-run.js';
import { otherNodes, withNode } from './other-nodes.js';

demandFreshBuild();
for (const version of otherNodes) {
  const ran = withNode(version, (node) => ({ isGood: programRuns(node) && testsPass(node) }));
  const said = 'skipped' in ran ? ran.skipped : ran.isGood ? 'good' : 'failed, see above';
  console.log(`Node ${version}: ${said}`);
  if (said !== 'good') process.exitCode = 1;
}

function programRuns(node: string): boolean {
  const changed = reportAgainstGolden([node, join(root, 'dist', 'cli.js')], join(root, 'sample-logs'));
  for (const line of changed) console.log(line);
  return changed.length === 0;
}

/** The tests start the program by "node" and by their own binary, so the other one stands first in the path. */
function testsPass(node: string): boolean {
  const config = process.argv.includes('--all') ? 'vitest.config.ts' : 'vitest.quick.config.ts';
  const args = [join(root, 'node_modules/vitest/vitest.mjs'), 'run', '--config', `tests/rules/${config}`];
  const env = { ...process.env, PATH: `${dirname(node)}${delimiter}${process.env['PATH'] ?? ''}` };
  return spawnSync(node, args, { cwd: root, env, stdio: 'inherit' }).status === 0;
}
