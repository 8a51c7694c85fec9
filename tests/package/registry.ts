import { spawnSync } from 'node:child_process';

/** Words with which npm says that it got no answer, or none that helps; anything else is a fault of ours. */
const unreachable = /ENOTFOUND|ECONNREFUSED|ECONNRESET|ETIMEDOUT|EAI_AGAIN|ENETUNREACH|network|E40[1357]|E50\d/;

/**
 * Installs into a folder of its own by npm, which asks the registry that npm is set up for.
 *
 * @returns null, or why the test that needs it must be skipped: the registry does not answer.
 * @throws Error when npm fails for another reason, and always in CI, where a skipped test would go unseen.
 */
export function install(args: readonly string[]): string | null {
  const { status, stderr, stdout } = spawnSync('npm', ['install', ...args, '--no-audit', '--no-fund'], {
    encoding: 'utf8',
  });
  if (status === 0) return null;
  const said = `${stdout}${stderr}`;
  if (process.env['CI'] || !unreachable.test(said)) throw new Error(`npm install ${args.join(' ')} failed:\n${said}`);
  return 'The registry does not answer, so nothing can be installed.';
}
