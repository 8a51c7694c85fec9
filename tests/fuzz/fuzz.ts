import { fileURLToPath } from 'node:url';
import { Command } from 'commander';
import { aNumber } from '../make/a-number.js';
import { fuzzWatched } from './watch.js';

interface Options {
  readonly cases: number;
  readonly seed: number;
  readonly from: number;
  readonly children: number;
  readonly only?: number;
  readonly keep?: string;
}

const { cases, seed, children, only, keep, ...given } = new Command('fuzz')
  .description('mutated files through every reader; ends with 1 when a promise was broken')
  .option('--cases <count>', 'how many files', aNumber, 10_000)
  .option('--seed <number>', 'which files', aNumber, 1)
  .option('--from <number>', 'first case', aNumber, 0)
  .option('--children <count>', 'processes at once', aNumber, 2)
  .option('--only <number>', 'run one case again', aNumber)
  .option('--keep <folder>', 'keep the files that broke something')
  .parse()
  .opts<Options>();
const from = only ?? given.from;
const to = only === undefined ? from + cases : from + 1;

const script = fileURLToPath(new URL('./child.ts', import.meta.url));
const startMs = performance.now();
fuzzWatched(script, { seed, from, to, keep }, Math.min(children, to - from)).then(({ broken, ...counts }) => {
  for (const { number, reader, broken: why } of broken.slice(0, 20))
    process.stdout.write(`case ${number} of seed ${seed}, ${reader}: ${why}\n\n`);
  const seconds = Math.round((performance.now() - startMs) / 1000);
  process.stdout.write(`${JSON.stringify({ seed, ...counts, broken: broken.length, seconds })}\n`);
  process.exitCode = broken.length > 0 ? 1 : 0;
});
