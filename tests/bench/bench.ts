import { Command } from 'commander';
import { execFileSync } from 'node:child_process';
import { createReadStream, createWriteStream, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { aNumber } from '../make/a-number.js';
import { writeLongLog, writeWideLog } from './bench-logs.js';
import { cli, here, inBenchFolder, machine, measure, reportOn, type Contest, type Usage } from './measure.js';

// `npm run bench`: what a whole report run costs against simpler programs on the same machine, run in turn.

interface Options {
  readonly rows: number;
  readonly rounds: number;
  readonly withDuckdb?: boolean;
}

const options = new Command('bench')
  .description('what a report costs beside simpler programs on the same machine')
  .option('--rows <count>', 'rows of the wide log', aNumber, 604_800)
  .option('--rounds <count>', 'times that all are run in turn', aNumber, 3)
  .option('--with-duckdb', 'also DuckDB, which is installed into the temporary folder')
  .parse()
  .opts<Options>();

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

/** By program: what it used, round by round. */
type Runs = ReadonlyMap<string, readonly Usage[]>;

/** Every other round backwards, so that no program always comes behind the same other. */
function runInTurn(contests: readonly Contest[], rounds: number, folder: string): Runs {
  const runs = new Map<string, Usage[]>(contests.map(({ name }) => [name, []]));
  for (let round = 0; round < rounds; round++)
    for (const contest of round % 2 === 0 ? contests : contests.toReversed())
      runs.get(contest.name)!.push(measure(contest, folder));
  return runs;
}

function middle(runs: Runs, name: string): Usage {
  const own = runs.get(name)!;
  return { cpuS: median(own.map(({ cpuS }) => cpuS)), peakMb: median(own.map(({ peakMb }) => peakMb)) };
}

function print(runs: Runs, goals: readonly (readonly [string, string, string, number])[]): void {
  for (const name of runs.keys()) {
    const { cpuS, peakMb } = middle(runs, name);
    console.log(`${name.padEnd(28)} ${cpuS.toFixed(2).padStart(8)} s cpu ${peakMb.toFixed(0).padStart(6)} MB`);
  }
  for (const [what, one, other, goal] of goals) {
    const [a, b] = [runs.get(one), runs.get(other)];
    if (!a || !b) continue;
    // Round by round: the clock of a processor that others share changes by a half from one minute to the next.
    const ratios = a.map(({ cpuS }, round) => cpuS / b[round]!.cpuS);
    const ratio = median(ratios);
    const range = `${Math.min(...ratios).toFixed(3)} to ${Math.max(...ratios).toFixed(3)}`;
    const verdict = Number.isNaN(goal) ? '' : `  goal ${goal.toFixed(3)}  ${ratio <= goal ? 'met' : 'MISSED'}`;
    console.log(`${what.padEnd(44)} ${ratio.toFixed(3).padStart(8)} (${range})${verdict}`);
  }
}

async function compare(folder: string, { rows, rounds }: Options): Promise<void> {
  const [wide, tenth, long, packed] = ['wide', 'tenth', 'long', 'packed'].map((name) => join(folder, name));
  for (const path of [wide, tenth, long, packed]) mkdirSync(path!);
  const file = join(wide!, 'week.csv');
  writeWideLog(file, { rows });
  writeWideLog(join(tenth!, 'tenth.csv'), { rows: Math.round(rows / 10) });
  writeLongLog(join(long!, 'long.csv'), { rows: Math.round(rows / 20) });
  await pipeline(createReadStream(file), createGzip({ level: 6 }), createWriteStream(join(packed!, 'week.csv.gz')));
  const contests: Contest[] = [
    ...duckdb(folder, file),
    reportOn('report, wide week', wide!, folder),
    { name: 'csv-parse, wide', args: [here('csv-parse-limits.mjs'), file, ','] },
    { name: 'csv-parse, wide, events', args: [here('csv-parse-events.mjs'), file, ','] },
    { name: 'count newlines', args: [here('count-newlines.mjs'), file] },
    reportOn('report, wide week .gz', packed!, folder),
    reportOn('report, tenth of it', tenth!, folder),
    reportOn('report, long', long!, folder),
    { name: 'csv-parse, long', args: [here('csv-parse-limits.mjs'), join(long!, 'long.csv'), ';'] },
    { name: 'csv-parse, long, events', args: [here('csv-parse-events.mjs'), join(long!, 'long.csv'), ';'] },
    { name: 'bare node', args: ['-e', '0'] },
    { name: 'looselead --help', args: [cli, '--help'] },
  ];
  console.log(`${machine()}, ${rows} rows, median of ${rounds}`);
  const runs = runInTurn(contests, rounds, folder);
  print(runs, [
    ['report / csv-parse loop', 'report, wide week', 'csv-parse, wide', 1 / 5],
    ['report / csv-parse, rows as events', 'report, wide week', 'csv-parse, wide, events', NaN],
    ['report / DuckDB', 'report, wide week', 'DuckDB, one thread', 1 / 2],
    ['report / counting newlines', 'report, wide week', 'count newlines', 11],
    ['long: report / csv-parse loop', 'report, long', 'csv-parse, long', 1 / 4],
    ['long: report / csv-parse, rows as events', 'report, long', 'csv-parse, long, events', NaN],
    ['.gz / plain', 'report, wide week .gz', 'report, wide week', 1.6],
  ]);
  const { peakMb } = middle(runs, 'report, wide week');
  const moreMb = peakMb - middle(runs, 'report, tenth of it').peakMb;
  const help = middle(runs, 'looselead --help').cpuS - middle(runs, 'bare node').cpuS;
  console.log(`memory: week less tenth ${moreMb.toFixed(0)} MB, goal 30; peak ${peakMb.toFixed(0)} MB, goal 150`);
  console.log(`--help less bare node ${help.toFixed(3)} s, goal 0.08`);
}

function duckdb(folder: string, file: string): Contest[] {
  if (!options.withDuckdb) return [];
  execFileSync('npm', ['install', '--prefix', folder, '--no-audit', '--no-fund', '@duckdb/node-api'], {
    stdio: 'inherit',
  });
  return [{ name: 'DuckDB, one thread', args: [here('duckdb-limits.mjs'), file, folder] }];
}

await inBenchFolder((folder) => compare(folder, options));
