import { fork, type ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';

/** Cases `from` … `to` − 1 of a seed; files that broke something are kept in folder `keep`. */
export interface Work {
  readonly seed: number;
  readonly from: number;
  readonly to: number;
  readonly keep?: string | undefined;
}

export interface CaseEnd {
  readonly number: number;
  readonly reader: string;
  readonly isRefused: boolean;
  /** null = it kept its promise: findings, or a refusal in a sentence. */
  readonly broken: string | null;
  /** Processor time of all threads. */
  readonly cpuMs: number;
  readonly grownMb: number;
  readonly peakMb: number;
}
export type ChildSays = { readonly is: 'starts'; readonly number: number } | ({ readonly is: 'ended' } & CaseEnd);

export interface FuzzResult {
  readonly cases: number;
  readonly ran: number;
  readonly refused: number;
  readonly broken: readonly Pick<CaseEnd, 'number' | 'reader' | 'broken'>[];
  readonly largestGrowthMb: number;
  readonly peakMb: number;
  readonly slowest: Pick<CaseEnd, 'number' | 'cpuMs'>;
}

export interface Limits {
  /** A case that works for so long hangs: processor time, so that a busy machine gives the same answer; usual is 30 ms. */
  readonly cpuMs: number;
  /** The last resort, by the clock: a case that waits for what never comes, or a system that tells no processor time. */
  readonly silenceMs: number;
  /** A child larger than this is ended while it still runs. */
  readonly residentMb: number;
  /** Heap of a child. */
  readonly heapMb: number;
}

export const usualLimits: Limits = { cpuMs: 60_000, silenceMs: 900_000, residentMb: 900, heapMb: 256 };

/**
 * Runs the work in `count` child processes and watches them. A child that hangs, grows too large or dies is a broken
 * case; a new one goes on behind it.
 *
 * @param script The child: takes {@link Work} as JSON and sends {@link ChildSays}.
 */
export async function fuzzWatched(
  script: string,
  work: Work,
  count: number,
  limits: Limits = usualLimits,
): Promise<FuzzResult> {
  const share = Math.ceil((work.to - work.from) / count);
  const ends: CaseEnd[] = [];
  await Promise.all(
    Array.from({ length: count }, (_, i) => {
      const from = work.from + i * share;
      return runShare(script, { ...work, from, to: Math.min(work.to, from + share) }, limits, (end) => ends.push(end));
    }),
  );
  return sumUp(ends);
}

async function runShare(script: string, work: Work, limits: Limits, onEnd: (end: CaseEnd) => void): Promise<void> {
  for (let from = work.from; from < work.to;) from = await runChild(script, { ...work, from }, limits, onEnd);
}

/** @returns The case with which to go on. */
function runChild(script: string, work: Work, limits: Limits, onEnd: (end: CaseEnd) => void): Promise<number> {
  const child = fork(script, [JSON.stringify(work)], {
    execArgv: ['--import', 'tsx', `--max-old-space-size=${limits.heapMb}`],
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  });
  let at = work.from;
  let heard = clocksOf(child);
  let verdict: string | null = null;
  let stderr = '';
  child.stderr!.on('data', (chunk: Buffer) => (stderr = (stderr + String(chunk)).slice(-2000)));
  child.on('message', (message: ChildSays) => {
    heard = clocksOf(child);
    at = message.is === 'starts' ? message.number : message.number + 1;
    if (message.is === 'ended') onEnd(message);
  });
  const timer = setInterval(() => {
    verdict ??= wrongWith(child, heard, limits);
    if (verdict !== null) child.kill('SIGKILL');
  }, 250);
  return new Promise((resolve) => {
    child.on('close', (code, signal) => {
      clearInterval(timer);
      if (at >= work.to) return resolve(work.to);
      const broken = verdict ?? `The process ended (${signal ?? code}). ${stderr}`;
      const none = { isRefused: false, cpuMs: 0, grownMb: 0, peakMb: 0 };
      onEnd({ ...none, number: at, reader: 'not known', broken });
      resolve(at + 1);
    });
  });
}

interface Clocks {
  readonly wallMs: number;
  /** Of all threads of the child since it began; 0 where the system does not tell. */
  readonly cpuMs: number;
}

function clocksOf({ pid }: ChildProcess): Clocks {
  // Behind the name in brackets: user and system time are the 12th and 13th, in hundredths of a second (man 5 proc).
  const fields = procFile(pid, 'stat')
    .replace(/^.*\) /s, '')
    .split(' ');
  return { wallMs: performance.now(), cpuMs: 10 * (Number(fields[11] ?? 0) + Number(fields[12] ?? 0)) };
}

function wrongWith(child: ChildProcess, heard: Clocks, limits: Limits): string | null {
  const now = clocksOf(child);
  const seconds = (ms: number): string => `${Math.round(ms / 1000)} s`;
  const cpuMs = now.cpuMs - heard.cpuMs;
  if (cpuMs > limits.cpuMs) return `It hangs: it has worked for ${seconds(cpuMs)} and nothing was heard.`;
  const silentMs = now.wallMs - heard.wallMs;
  if (silentMs > limits.silenceMs) return `It waits: nothing was heard for ${seconds(silentMs)}.`;
  const nowMb = residentMbOf(child);
  return nowMb > limits.residentMb ? `It grew to ${nowMb} MB.` : null;
}

/** 0 where the system does not tell; what a case added is then known when it has ended. */
function residentMbOf({ pid }: ChildProcess): number {
  const line = /^VmRSS:\s+(\d+) kB$/m.exec(procFile(pid, 'status'));
  return line ? Math.round(Number(line[1]) / 1024) : 0;
}

/** What Linux tells of a process; empty where it has ended, and elsewhere. */
function procFile(pid: number | undefined, name: string): string {
  try {
    return readFileSync(`/proc/${pid}/${name}`, 'utf8');
  } catch {
    return '';
  }
}

function sumUp(ends: readonly CaseEnd[]): FuzzResult {
  const broken = ends.filter((end) => end.broken !== null).sort((a, b) => a.number - b.number);
  const refused = ends.filter((end) => end.broken === null && end.isRefused).length;
  const slowest = ends.reduce((a, b) => (b.cpuMs > a.cpuMs ? b : a), { number: -1, cpuMs: 0 });
  return {
    ...{ cases: ends.length, ran: ends.length - refused - broken.length, refused },
    broken: broken.map(({ number, reader, broken: why }) => ({ number, reader, broken: why })),
    largestGrowthMb: Math.max(0, ...ends.map(({ grownMb }) => grownMb)),
    peakMb: Math.max(0, ...ends.map(({ peakMb }) => peakMb)),
    slowest: { number: slowest.number, cpuMs: slowest.cpuMs },
  };
}
