import { LineCounter, parseDocument } from 'yaml';
import { LogProblem } from '../../model/problem.js';
import type { PlantFile } from '../../model/plant-file.js';
import { plantSchema } from './plant-schema.js';

/** Checks the text of a plant.yaml. Throws LogProblem 'bad-plant-file' with the line and the key that are wrong. */
export function parsePlantFile(text: string, path: string): PlantFile {
  const lines = new LineCounter();
  const document = parseDocument(text.replace(/^\uFEFF/, ''), { lineCounter: lines, prettyErrors: false });
  const broken = document.errors[0];
  if (broken) throw badPlant(path, lines.linePos(broken.pos[0]).line, notYaml(broken));
  const result = plantSchema.safeParse(valuesOf(document, path));
  if (result.success) return result.data as PlantFile;
  const { issues } = result.error;
  // A slip in a key makes another key missing; the slip is the one to tell.
  const issue = issues.find(({ code }) => code === 'unrecognized_keys') ?? issues[0]!;
  const keys = issue.path.map(String);
  const unknown = issue.code === 'unrecognized_keys' ? issue.keys[0] : undefined;
  const place = unknown === undefined ? keys : [...keys, unknown];
  const line = lineOf(document, place, lines);
  const what = unknown === undefined ? issue.message : `there is no such key here`;
  throw badPlant(path, line, `The key ${keyText(place)} is wrong: ${what}.`);
}

/** The values of the file; entries that stand for others (*name) are looked up only here. */
function valuesOf(document: { toJS(): unknown }, path: string): unknown {
  try {
    return document.toJS() ?? {};
  } catch (error) {
    throw badPlant(path, undefined, notYaml(error as Error));
  }
}

/** The library names its own limits by what they do to the program. */
function notYaml({ message }: Error): string {
  if (message.startsWith('Excessive alias count'))
    return 'Entries that stand for others (*name) unfold to more than a plant file can hold.';
  if (message.startsWith('Maximum call stack')) return 'Its entries are nested too deeply.';
  return `This is not valid YAML: ${message}.`;
}

/** ["zones", "0", "wires"] as a person counts: "wires" of entry 1 of "zones". */
function keyText(keys: readonly string[]): string {
  const [last, ...above] = [...keys].reverse();
  const rest = above.map((key) => (/^\d+$/.test(key) ? `entry ${Number(key) + 1}` : `"${key}"`));
  return [/^\d+$/.test(last ?? '') ? `entry ${Number(last) + 1}` : `"${last ?? ''}"`, ...rest].join(' of ');
}

type YamlDocument = { getIn(path: unknown[], keepScalar?: boolean): unknown; contents: unknown };

/** Line of a key, or of the nearest one above it that is there. */
function lineOf(
  document: YamlDocument,
  keys: readonly string[],
  lines: { linePos(offset: number): { line: number } },
): number {
  for (let length = keys.length; length > 0; length--) {
    const parent = length === 1 ? document.contents : document.getIn(asPath(keys.slice(0, length - 1)), true);
    const pair = (parent as { items?: { key?: { value?: unknown; range?: number[] }; range?: number[] }[] })?.items;
    const last = keys[length - 1]!;
    const item =
      pair?.find((it) => String(it?.key?.value) === last) ?? (/^\d+$/.test(last) ? pair?.[Number(last)] : undefined);
    const offset = item?.key?.range?.[0] ?? item?.range?.[0];
    if (offset !== undefined) return lines.linePos(offset).line;
  }
  return 1;
}

function asPath(keys: readonly string[]): (string | number)[] {
  return keys.map((key) => (/^\d+$/.test(key) ? Number(key) : key));
}

function badPlant(path: string, line: number | undefined, what: string): LogProblem {
  return new LogProblem(
    'bad-plant-file',
    { file: path, ...(line !== undefined && { line }) },
    what,
    'Correct that entry; every key but the name of a zone may be left out.',
  );
}
