import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { fuzzWatched } from './watch.js';

// `npm run fuzz -- --cases 100000 --seed 7`: mutated files through every reader. `--only 1234` runs one case again and
// `--keep FOLDER` keeps the files that broke something. Ends with 1 when a promise was broken.
const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '10000' },
    seed: { type: 'string', default: '1' },
    from: { type: 'string', default: '0' },
    children: { type: 'string', default: '2' },
    only: { type: 'string' },
    keep: { type: 'string' },
  },
});
const seed = Number(values.seed);
const from = Number(values.only ?? values.from);
const to = values.only === undefined ? from + Number(values.cases) : from + 1;

const script = fileURLToPath(new URL('./child.ts', import.meta.url));
const startMs = performance.now();
fuzzWatched(script, { seed, from, to, keep: values.keep }, Math.min(Number(values.children), to - from)).then(
  ({ broken, ...counts }) => {
    for (const { number, reader, broken: why } of broken.slice(0, 20))
      process.stdout.write(`case ${number} of seed ${seed}, ${reader}: ${why}\n\n`);
    const seconds = Math.round((performance.now() - startMs) / 1000);
    process.stdout.write(`${JSON.stringify({ seed, ...counts, broken: broken.length, seconds })}\n`);
    process.exitCode = broken.length > 0 ? 1 : 0;
  },
);
