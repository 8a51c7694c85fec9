import type { Reporter, TestModule } from 'vitest/node';

/** Ends the run with one plain line that scripts can read: "412 passed, 0 failed, 3 skipped". */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    const count = { passed: 0, failed: unhandledErrors.length, skipped: 0, pending: 0 };
    for (const module of modules) {
      if (module.state() === 'failed' && module.children.size === 0) count.failed++;
      for (const test of module.children.allTests()) count[test.result().state]++;
    }
    process.stdout.write(
      `\n${count.passed} passed, ${count.failed} failed, ${count.skipped + count.pending} skipped\n`,
    );
  }
}
