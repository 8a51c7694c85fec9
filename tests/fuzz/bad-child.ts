import type { ChildSays, Work } from './watch.js';

// Stands in for a program that breaks its promises, so that the watchdog itself is tested: case 1 hangs, case 3 takes
// 2 GB outside the heap, case 5 inside it, case 7 ends the process, case 9 waits without end. Case 8 gets no processor for
// 9 s, as on a busy machine, and is good, as are all others.
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
  if (number === 8) rest(9000);
  if (number === 9) rest(Infinity);
}

function rest(ms: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
}

async function runAll(): Promise<void> {
  for (let number = from; number < to; number++) {
    await say({ is: 'starts', number });
    misbehave(number);
    const end = { number, reader: 'none', isRefused: false, broken: null, cpuMs: 0, grownMb: 0, peakMb: 0 };
    await say({ is: 'ended', ...end });
  }
  process.disconnect();
}

void runAll();
