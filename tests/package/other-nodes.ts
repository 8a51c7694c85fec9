import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { install } from './registry.js';

/** Versions of Node beside the one in use here that must run the program and pass its tests: those under long support. */
export const otherNodes = ['22', '24'] as const;

/**
 * Hands the binary of another Node to `use`; the npm package "node" brings it. It is installed into a folder that is
 * deleted afterwards.
 *
 * @returns What `use` gives, or why it could not be installed.
 */
export function withNode<T>(version: string, use: (node: string) => T): T | { readonly skipped: string } {
  const folder = mkdtempSync(join(tmpdir(), `looselead-node-${version}-`));
  try {
    const why = install(['--prefix', folder, `node@${version}`]);
    if (why) return { skipped: why };
    return use(join(folder, 'node_modules', 'node', 'bin', 'node'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
