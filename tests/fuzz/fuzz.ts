import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { runCase } from './run-case.js';
import { wholeFiles } from './whole-files.js';

// `npm run fuzz -- --cases 100000 --seed 7`: mutated files through every reader. `--only 1234` runs one case again and
// `--keep FOLDER` keeps the files that broke something. Ends with 1 when a promise was broken.
const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '10000' },
    seed: { type: 'string', default: '1' },
    from: { type: 'string', default: '0' },
    only: { type: 'string' },
    keep: { type: 'string' },
  },
});
const seed = Number(values.seed);
const from = Number(values.only ?? values.from);
const to = values.only === undefined ? from + Number(values.cases) : from + 1;

const folder = mkdtempSync(join(tmpdir(), 'looselead-fuzz-'));
const files = wholeFiles();
const count = { ran: 0, refused: 0, broken: 0 };
let slowestMs = 0;
let slowest = -1;
try {
  for (let number = from; number < to; number++) {
    process.send?.(number);
    const startMs = performance.now();
    const { reader, file, bytes, said, broken } = await runCase(files, seed, number, join(folder, 'case'));
    const tookMs = performance.now() - startMs;
    if (tookMs > slowestMs) [slowestMs, slowest] = [tookMs, number];
    if (said === null) count.ran++;
    else count.refused++;
    if (broken === null) continue;
    count.broken++;
    if (count.broken <= 20) process.stdout.write(`case ${number} of seed ${seed}, ${reader}: ${broken}\n\n`);
    if (values.keep !== undefined) {
      mkdirSync(values.keep, { recursive: true });
      writeFileSync(join(values.keep, `${number}-${file}`), bytes);
    }
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
const peakMb = Math.round(process.resourceUsage().maxRSS / 1024);
process.stdout.write(
  `${JSON.stringify({ seed, cases: to - from, ...count, peakMb, slowest, slowestMs: Math.round(slowestMs) })}\n`,
);
process.exitCode = count.broken > 0 ? 1 : 0;
