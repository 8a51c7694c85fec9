import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { fuzzWatched } from './watch.js';

const script = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

// The times here are watchdogs against hangs and say nothing about speed.
test(
  '10,000 mutated files end in findings or in a sentence, none hangs or takes memory without bound',
  { timeout: 30 * 60_000 },
  async () => {
    const { broken, ...counts } = await fuzzWatched(script('./child.ts'), { seed: 2, from: 0, to: 10_000 }, 2);
    process.stdout.write(`fuzz: ${JSON.stringify(counts)}\n`);
    expect(broken).toEqual([]);
    expect(counts.cases).toBe(10_000);
    // Mutation leaves enough whole that findings are made, and breaks enough that something is refused.
    expect(counts.ran).toBeGreaterThan(2000);
    expect(counts.refused).toBeGreaterThan(1000);
  },
);

test(
  'the watchdog finds a hang, memory without end, a process that dies and one that waits, and goes on behind them',
  { timeout: 5 * 60_000 },
  async () => {
    const limits = { cpuMs: 6000, silenceMs: 40_000, residentMb: 600, heapMb: 64 };
    const { broken, cases } = await fuzzWatched(script('./bad-child.ts'), { seed: 1, from: 0, to: 11 }, 1, limits);
    expect(cases).toBe(11);
    expect(broken.map(({ number }) => number)).toEqual([1, 3, 5, 7, 9]);
    expect(broken[0]!.broken).toContain('hangs');
    expect(broken[1]!.broken).toMatch(/grew to \d+ MB|process ended/);
    expect(broken[2]!.broken).toMatch(/process ended/);
    expect(broken[3]!.broken).toContain('(3)');
    expect(broken[4]!.broken).toContain('waits');
  },
);
