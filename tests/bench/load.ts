import { Command } from 'commander';
import { mkdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { aNumber } from '../make/a-number.js';
import { writeAlarmList, writeWideLog } from './bench-logs.js';
import { inBenchFolder, machine, measure, reportOn } from './measure.js';

// `npm run load`: whether a report ends, and with how much memory, on far more than a plant has. Writes up to 5 GB into a
// temporary folder, one case after the other.

const peakGoalMb = 400;
const { share } = new Command('load')
  .description('whether a report ends, and with how much memory, on far more than a plant has')
  .option('--share <number>', 'makes every case so many times as long', aNumber, 1)
  .parse()
  .opts<{ readonly share: number }>();
const dayS = 24 * 3600;
const scaled = (count: number): number => Math.max(1, Math.round(count * share));

interface Case {
  readonly name: string;
  write(folder: string): void;
}

const cases: readonly Case[] = [
  {
    name: '200 zones, 30 days at 10 s, one file',
    write: (folder) => writeWideLog(join(folder, 'wide.csv'), { rows: scaled(3 * dayS), zones: 200, everyS: 10 }),
  },
  {
    name: '200 zones, 30 days at 2 s, one file',
    write: (folder) => writeWideLog(join(folder, 'wide.csv'), { rows: scaled(15 * dayS), zones: 200, everyS: 2 }),
  },
  { name: '500 files of an hour, 24 zones at 10 s', write: writeHours },
  {
    name: '1 million alarms, 24 zones, 30 days at 60 s',
    write(folder) {
      const rows = scaled(30 * 1440);
      writeWideLog(join(folder, 'wide.csv'), { rows, everyS: 60 });
      writeAlarmList(join(folder, 'alarms.csv'), scaled(1_000_000), 24, rows * 60_000);
    },
  },
];

function writeHours(folder: string): void {
  for (let hour = 0; hour < scaled(500); hour++)
    writeWideLog(join(folder, `hour-${String(hour).padStart(3, '0')}.csv`), {
      rows: 360,
      everyS: 10,
      firstRow: 360 * hour,
    });
}

await inBenchFolder(async (folder) => {
  console.log(machine());
  for (const { name, write } of cases) {
    const logs = join(folder, 'logs');
    mkdirSync(logs);
    write(logs);
    const { cpuS, peakMb } = measure(reportOn(name, logs, folder), folder);
    const pageMb = statSync(join(folder, 'out', 'report.html')).size / 1e6;
    const verdict = peakMb <= peakGoalMb ? 'met' : 'MISSED';
    console.log(
      `${name.padEnd(46)} ${cpuS.toFixed(1).padStart(7)} s cpu ${peakMb.toFixed(0).padStart(5)} MB (goal ${peakGoalMb}, ${verdict}), page ${pageMb.toFixed(1)} MB`,
    );
    rmSync(logs, { recursive: true });
  }
});
