import type { ChildSays, Work } from './watch.js';

// Stands in for a program that breaks its promises, so that the watchdog itself is tested: case 1 hangs, case 3 takes
// 2 GB outside the heap, case 5 inside it, case 7 ends the process; all others are good.
const { from, to } = JSON.parse(process.argv[2]!) as Work;
const say = (message: ChildSays): Promise<void> =>
  new Promise((sent) => process.send!(message, undefined, {}, () => sent()));

function misbehave(number: number): void {
  const taken: unknown[] = [];
  if (number === 1) for (;;);
  if (number === 3) for (let i = 0; i < 250; i++) taken.push(new Float64Array(1e6).fill(1)); // 2 GB
  if (number === 3) process.exit(4);
  if (number === 5) for (;;) taken.push(Array.from({ length: 1000 }, (_, i) => String(i)));
  if (number === 7) process.exit(3);
}

async function runAll(): Promise<void> {
  for (let number = from; number < to; number++) {
    await say({ is: 'starts', number });
    misbehave(number);
    const end = { number, reader: 'none', isRefused: false, broken: null, tookMs: 0, grownMb: 0, peakMb: 0 };
    await say({ is: 'ended', ...end });
  }
  process.disconnect();
}

void runAll();
