import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { downtimeText } from '../../src/commands/downtime/downtime-text.js';
import { lookAt } from '../../src/commands/preview/preview-facts.js';
import { previewText } from '../../src/commands/preview/preview-text.js';
import { readFindings } from '../../src/commands/read-findings.js';
import { zoneCard } from '../../src/commands/zone/zone-card.js';
import type { Findings } from '../../src/model/findings.js';
import { LogProblem, type ProblemNote } from '../../src/model/problem.js';
import { analyse } from '../../src/pipeline.js';
import { renderReport } from '../../src/report/render-report.js';
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
  const index = number % files.length;
  const whole = files[index]!;
  const bytes = mutate(whole.bytes, new Random((seed * 1_000_003 + number) >>> 0));
  const about = { reader: whole.reader, file: whole.name, bytes };
  const place = join(folder, String(index));
  if (isHistory(whole)) rmSync(place, { recursive: true, force: true }); // the run before left its own files there
  mkdirSync(place, { recursive: true });
  for (const [name, content] of Object.entries({ ...whole.beside, [whole.name]: bytes }))
    writeFileSync(join(place, name), content);
  try {
    const sentences = await use(whole, Math.floor(number / files.length), place);
    return { ...about, said: null, broken: sentences.find((text) => !isSentence(text)) ?? null };
  } catch (error) {
    if (!(error instanceof LogProblem))
      return { ...about, said: null, broken: error instanceof Error ? (error.stack ?? error.message) : String(error) };
    const isGood = isSentence(error.what) && isSentence(error.todo);
    return { ...about, said: error.message, broken: isGood ? null : error.message };
  }
}

function isHistory({ reader }: WholeFile): boolean {
  return reader === 'history' || reader === 'record';
}

/** Every other round only reads, as a preview does; one in eight draws the page, too. @returns All sentences about problems. */
async function use(whole: WholeFile, round: number, folder: string): Promise<string[]> {
  if (whole.reader === 'findings') return useFindings(join(folder, whole.name));
  if (isHistory(whole)) return analysed(Object.keys(whole.beside), folder, { historyFolder: folder });
  if (round % 2 === 0) return previewed(folder);
  return analysed([''], folder, {}, round % 8 === 1);
}

async function analysed(names: readonly string[], folder: string, options: object, isDrawn = false): Promise<string[]> {
  const paths = names.map((name) => join(folder, name));
  const findings = await analyse(paths, options);
  if (isDrawn) await draw(findings);
  return sentencesOf(findings.problems);
}

async function previewed(folder: string): Promise<string[]> {
  const preview = await lookAt([folder], {});
  previewText(preview);
  return sentencesOf(preview.problems);
}

async function useFindings(path: string): Promise<string[]> {
  const findings = await readFindings(path);
  downtimeText(findings.downtime, 'cause', 80);
  const terminal = { isTerminal: false, columns: 80, env: {} };
  for (const zone of findings.zones)
    zoneCard(zone, findings, { fromMs: -Infinity, unit: 'degC', isWhyWanted: true, terminal });
  return [];
}

/** Findings that were made can be drawn; there is nothing to refuse any more. */
async function draw(findings: Findings): Promise<void> {
  try {
    await renderReport(JSON.parse(JSON.stringify(findings)) as Findings);
  } catch (cause) {
    throw new Error(`The page was not drawn: ${(cause as Error).stack}`, { cause });
  }
}

function sentencesOf(problems: readonly ProblemNote[]): string[] {
  return problems.flatMap(({ what, todo }) => [what, todo]);
}

/** What stands in quotes is the log's own text. */
function isSentence(text: string): boolean {
  const own = text.trim().replace(/".*"/gs, '""');
  const isEnded = /[.?!][)"]?$/.test(own) && !/\.\.[)"]?$/.test(own);
  return isEnded && !/\bundefined\b|\bNaN\b|\[object |\b(Type|Range|Syntax|Reference)Error\b|\n\s+at /.test(own);
}
