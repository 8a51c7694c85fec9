import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runCase } from './run-case.js';
import type { ChildSays, Work } from './watch.js';
import { wholeFiles } from './whole-files.js';

// Runs cases one after the other in this process and says before each which one it is, so that the parent knows what to
// blame when this process hangs, is ended or runs out of memory.

/** A case of a few kilobytes may not make the process grow by more than this (measured: the largest growth is 40 MB). */
const largestGrowthMb = 150;

const { seed, from, to, keep } = JSON.parse(process.argv[2]!) as Work;
const say = (message: ChildSays): void => void process.send!(message);
const peakMb = (): number => Math.round(process.resourceUsage().maxRSS / 1024);

const folder = mkdtempSync(join(tmpdir(), 'looselead-fuzz-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));

async function runAll(): Promise<void> {
  const files = wholeFiles();
  for (let number = from; number < to; number++) {
    say({ is: 'starts', number });
    const before = process.cpuUsage();
    const beforeMb = peakMb();
    const { reader, file, bytes, said, broken } = await runCase(files, seed, number, join(folder, 'case'));
    const grownMb = number === from ? 0 : peakMb() - beforeMb; // the first case loads the program
    const isLarge = grownMb > largestGrowthMb;
    const wrong = broken ?? (isLarge ? `The process grew by ${grownMb} MB.` : null);
    const { user, system } = process.cpuUsage(before);
    const cpuMs = Math.round((user + system) / 1000);
    say({ is: 'ended', number, reader, isRefused: said !== null, broken: wrong, cpuMs, grownMb, peakMb: peakMb() });
    if (wrong !== null && keep !== undefined) {
      mkdirSync(keep, { recursive: true });
      writeFileSync(join(keep, `${seed}-${number}-${file}`), bytes);
    }
  }
  process.disconnect();
}

void runAll();
