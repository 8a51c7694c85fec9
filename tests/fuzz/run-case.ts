import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { downtimeText } from '../../src/commands/downtime-text.js';
import { readFindings } from '../../src/commands/read-findings.js';
import { zoneCard } from '../../src/commands/zone-card.js';
import { LogProblem } from '../../src/model/problem.js';
import { analyse } from '../../src/pipeline.js';
import { Random } from '../make/random.js';
import { mutate } from './mutate.js';
import type { WholeFile } from './whole-files.js';

export interface CaseResult {
  readonly reader: string;
  readonly file: string;
  readonly bytes: Buffer;
  /** What the program would have said; null when it ran. */
  readonly said: string | null;
  /** Set when it broke a promise: the stack, or a sentence that is none. */
  readonly broken: string | null;
}

/** Runs case `number` of a seed: one mutated file through the program, as the commands would. Never throws. */
export async function runCase(
  files: readonly WholeFile[],
  seed: number,
  number: number,
  folder: string,
): Promise<CaseResult> {
  const whole = files[number % files.length]!;
  const bytes = mutate(whole.bytes, new Random((seed * 1_000_003 + number) >>> 0));
  const about = { reader: whole.reader, file: whole.name, bytes };
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const [name, content] of Object.entries({ ...whole.beside, [whole.name]: bytes }))
    writeFileSync(join(folder, name), content);
  try {
    const problems = await use(whole, folder);
    return { ...about, said: null, broken: problems.find((text) => !isSentence(text)) ?? null };
  } catch (error) {
    if (!(error instanceof LogProblem))
      return { ...about, said: null, broken: error instanceof Error ? (error.stack ?? error.message) : String(error) };
    return { ...about, said: error.message, broken: isSentence(error.message) ? null : error.message };
  }
}

/** @returns What the findings say of problems, each as one text. */
async function use({ reader, name, beside }: WholeFile, folder: string): Promise<string[]> {
  if (reader === 'findings') return useFindings(join(folder, name));
  const isHistory = reader === 'history' || reader === 'record';
  const paths = isHistory ? Object.keys(beside).map((file) => join(folder, file)) : [folder];
  const { problems } = await analyse(paths, isHistory ? { historyFolder: folder } : {});
  return problems.map(({ what, todo }) => `${what} ${todo}`);
}

async function useFindings(path: string): Promise<string[]> {
  const findings = await readFindings(path);
  downtimeText(findings.downtime, 'cause', 80);
  const terminal = { isTerminal: false, columns: 80, env: {} };
  for (const zone of findings.zones)
    zoneCard(zone, findings, { fromMs: -Infinity, unit: 'degC', isWhyWanted: true, terminal });
  return [];
}

function isSentence(text: string): boolean {
  return /[.?!)]$/.test(text.trim()) && !/\bundefined\b|\[object /.test(text);
}
