import { DAY_MS } from '../model/time-units.js';
import { createHash } from 'node:crypto';
import { readlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';

/** A temporary file lives for seconds; one a day old was left by a killed run, whoever made it (common practice). */
const OLDEST_MS = DAY_MS;

/** Hidden, so that a folder of logs that is also the output folder never shows it to the reader of logs. */
const pattern = /^\.looselead-([0-9a-f]{8})-(\d+)-\d+\.tmp$/;

let count = 0;

/** A name beside `file` that no other run uses: it carries this machine, this process and a number. */
export function temporaryNameOf(file: string): string {
  count++;
  return join(dirname(file), `.looselead-${machineTag()}-${process.pid}-${count}.tmp`);
}

/**
 * True for a temporary file that its run can no longer want: the process that made it is gone from this machine, or
 * it is older than a day. False for every name that is not ours.
 */
export function isLeftover(name: string, ageMs: number): boolean {
  const [, machine, pid] = pattern.exec(name) ?? [];
  if (machine === undefined) return false;
  return ageMs > OLDEST_MS || (machine === machineTag() && !isRunning(Number(pid)));
}

/** True for names that {@link temporaryNameOf} gives. */
export function isTemporaryName(name: string): boolean {
  return pattern.test(name);
}

/**
 * Process numbers mean something on one machine only, and in one container of it: both are in the tag, so that a run on
 * another machine with the same shared folder is never taken for dead.
 */
function machineTag(): string {
  return createHash('sha256').update(`${hostname()} ${processNamespace()}`).digest('hex').slice(0, 8);
}

function processNamespace(): string {
  try {
    return readlinkSync('/proc/self/ns/pid');
  } catch {
    return ''; // no Linux, so no containers that share a folder under one host name
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0); // asks only; signal 0 is never delivered
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== 'ESRCH'; // EPERM: it runs, as somebody else
  }
}
