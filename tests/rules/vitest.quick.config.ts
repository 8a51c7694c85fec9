import { mergeConfig } from 'vitest/config';
import all from './vitest.config.js';

/** Tests that take long: whole plants, a browser, hostile files by the hundred. `npm test` runs them too. */
const slow = [
  'tests/browser/**',
  'tests/simulator/**',
  'tests/open-data/**',
  'tests/golden/**',
  'tests/package/**',
  'tests/security/**',
  'tests/faults/**',
  'tests/fuzz/**',
  'tests/commands/record-shares.test.ts',
  'tests/commands/weekly.test.ts',
  'tests/history/**',
  'tests/detect/look-alikes.test.ts',
  'tests/properties/fewer-columns.test.ts',
  'tests/properties/healthy-look-alikes.test.ts',
  'tests/detect/every-detector.test.ts',
  'tests/detect/judges/**',
  'tests/read/hostile.test.ts',
  'tests/read/round-trip.test.ts',
  'tests/read/open-data.test.ts',
  'tests/report/every-detector-speaks.test.ts',
];

export default mergeConfig(all, {
  test: {
    exclude: [...slow, '**/node_modules/**'],
    env: { QUICK_TESTS: '1' },
    // Loading the program anew for each of 140 files takes as long as half of the tests. `npm test` does load it anew,
    // so a test that rests on what another has left behind is found there.
    isolate: false,
  },
});
