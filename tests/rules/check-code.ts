// Runs the checks that need no test, two at a time: npm run check:code
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';

/** npm scripts, those that take longest first, so that none is left to run alone at the end. */
const steps = ['lint', 'format:check', 'types', 'imports', 'build'];
const failed: string[] = [];

const waiting = [...steps];
await Promise.all(Array.from({ length: Math.min(2, availableParallelism()) }, runWaiting));
if (failed.length > 0) {
  console.error(`Failed: ${failed.join(', ')}.`);
  process.exitCode = 1;
}

async function runWaiting(): Promise<void> {
  for (let step = waiting.shift(); step !== undefined; step = waiting.shift()) {
    const { output, isGood } = await run(step);
    process.stdout.write(`${step}: ${isGood ? 'good' : 'failed'}\n${output}`);
    if (!isGood) failed.push(step);
  }
}

/** What a step prints is kept until it ends: two at once would be read as one. */
async function run(step: string): Promise<{ output: string; isGood: boolean }> {
  const child = spawn('npm', ['run', '--silent', step], { shell: process.platform === 'win32' });
  let output = '';
  child.stdout.on('data', (text: Buffer) => (output += text.toString()));
  child.stderr.on('data', (text: Buffer) => (output += text.toString()));
  const code = await new Promise<number | null>((resolve, reject) => child.on('error', reject).on('close', resolve));
  return { output, isGood: code === 0 };
}
