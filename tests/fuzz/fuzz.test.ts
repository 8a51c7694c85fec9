import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { runCase } from './run-case.js';
import { wholeFiles } from './whole-files.js';

// A few cases for each reader, so that every run of the tests tries them; `npm run fuzz` runs as many as one likes.
const files = wholeFiles();
const casesEach = 20;

test.each(files.map(({ reader }, index) => [reader, index] as const))(
  'mutated files end in findings or in a sentence: %s',
  async (_, index) => {
    const folder = mkdtempSync(join(tmpdir(), 'looselead-fuzz-'));
    try {
      for (let i = 0; i < casesEach; i++) {
        const number = i * files.length + index;
        const { broken } = await runCase(files, 2, number, folder);
        expect(broken, `case ${number} of seed 2`).toBeNull();
      }
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
