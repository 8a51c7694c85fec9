import type { ZoneFinding } from '../../model/findings.js';
import { LogProblem } from '../../model/problem.js';
import { zoneOnMachine } from '../../report/text/names.js';
import { foldText, wordsOf } from '../../words/fold.js';
import { safeText } from '../terminal/text-width.js';

type NamedZone = Pick<ZoneFinding, 'zone' | 'machine'>;

/**
 * The zones a person means: those of exactly that name, alone or with its machine as the
 * program writes it (case and accents aside), else those of the same words, else those whose name and machine
 * hold all the words.
 *
 * @throws LogProblem 'bad-argument' naming the nearest zones when none is meant.
 */
export function findZones<T extends NamedZone>(
  zones: readonly T[],
  wanted: string,
  where = 'these logs',
): readonly T[] {
  const isNamed = (name: string): boolean => foldText(name) === foldText(wanted);
  const exact = zones.filter((zone) => isNamed(zone.zone) || isNamed(zoneOnMachine(zone)));
  if (exact.length > 0) return exact;
  const words = wordsOf(wanted);
  // "PK03 Zone 3" is "PK03-Zone 3", and not zone 3 of another machine, although that holds its words, too.
  const same = zones.filter((zone) => [zone.zone, fullName(zone)].some((name) => isSameWords(wordsOf(name), words)));
  if (same.length > 0) return same;
  const holding = zones.filter((zone) => words.length > 0 && holdsWords(wordsOf(fullName(zone)), words));
  if (holding.length > 0) return holding;
  throw new LogProblem(
    'bad-argument',
    undefined,
    `There is no zone "${safeText(wanted)}" in ${where}.`,
    suggestion(zones, wanted),
  );
}

function isSameWords(a: readonly string[], b: readonly string[]): boolean {
  return a.length > 0 && a.join(' ') === b.join(' ');
}

/** Each as often as it is wanted. */
function holdsWords(own: readonly string[], wanted: readonly string[]): boolean {
  const left = [...own];
  return wanted.every((word) => {
    const at = left.indexOf(word);
    if (at >= 0) left.splice(at, 1);
    return at >= 0;
  });
}

function fullName({ zone, machine }: NamedZone): string {
  return `${machine} ${zone}`.trim();
}

const mostSuggested = 3;

function suggestion(zones: readonly NamedZone[], wanted: string): string {
  if (zones.length === 0)
    return 'No zone was found in them at all; "looselead preview" shows what each file was taken for.';
  const nearest = [...zones]
    .map((zone) => ({
      name: zone.zone,
      apart: Math.min(lettersApart(zone.zone, wanted), wordsApart(fullName(zone), wanted)),
    }))
    .sort((a, b) => a.apart - b.apart);
  const names = [...new Set(nearest.map(({ name }) => name))].slice(0, mostSuggested);
  return `Did you mean ${names.map((name) => `"${safeText(name)}"`).join(', ')}?`;
}

/** Sum over the wanted words of the letters to the nearest word of the name, so that a part of a name finds it. */
function wordsApart(name: string, wanted: string): number {
  const own = wordsOf(name);
  return wordsOf(wanted).reduce(
    (sum, word) => sum + own.reduce((least, other) => Math.min(least, lettersApart(other, word)), word.length),
    0,
  );
}

/** Letters to change, add or take out to get from one text to the other (Levenshtein 1966), case and accents aside. */
export function lettersApart(a: string, b: string): number {
  const [from, to] = [foldText(a), foldText(b)];
  let row = Array.from({ length: to.length + 1 }, (_, i) => i);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const change = row[j - 1]! + (from[i - 1] === to[j - 1] ? 0 : 1);
      next.push(Math.min(change, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[to.length]!;
}
