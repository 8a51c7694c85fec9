import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    reporters: ['default', new URL('./closing-line.ts', import.meta.url).pathname],
    maxWorkers: '100%', // one core is left free else, on two cores half of them
    testTimeout: 240_000, // a hang, not a slow machine,
    hookTimeout: 120_000,
  },
});
