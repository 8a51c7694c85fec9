import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { demandFreshBuild, reportAgainstGolden, root } from './golden-run.js';
import { otherNodes, withNode } from './other-nodes.js';

// Some hundred megabytes are fetched.
vi.setConfig({ testTimeout: 600_000 });
beforeAll(demandFreshBuild);

// The whole quick suite under these versions takes minutes: npm run test:nodes.
describe.skipIf(process.platform === 'win32')('the built program', () => {
  test.for(otherNodes)('reports on the sample logs under Node %s as was reviewed', (version, context) => {
    const ran = withNode(version, (node) => ({
      version: spawnSync(node, ['--version'], { encoding: 'utf8' }).stdout,
      changed: reportAgainstGolden([node, join(root, 'dist', 'cli.js')], join(root, 'sample-logs')),
    }));
    if ('skipped' in ran) return context.skip(ran.skipped);
    expect(ran.version).toMatch(new RegExp(`^v${version}\\.`));
    expect(ran.changed).toEqual([]);
  });
});
