import { list, wordsOf } from './fold.js';

/** Words for a heater zone before a number; common practice. */
const zoneWords = new Set(
  list(`
      zone, zones, z, hz, heater zone, heizzone, regelzone, heizkreis, zona, zon, sone, varmezone, strefa, heater,
      zonen, heizzonen, zonas, strefy, soner, zoner, heaters, loops, channels, loop, channel, ch, kanal, tsoon, зона, vung, โซน, منطقة, المنطقة, אזור, 温区`).map(
    (w) => wordsOf(w).join(' '),
  ),
);
/** "Zone no. 3" is zone 3. */
const numberWords = new Set(['no', 'nr', 'number', 'num', 'n']);
/** Function letters of temperature loops (ANSI/ISA-5.1): TIC101, TT101, TAH101 and TE101 are one loop. */
const temperatureLoop = /^t(?:[ceirtyas]|ic|ir|irc|ica|irca|ah|al|ahh|all|sh|sl|shh|sll|dah|dal)$/u;

/** A name that is looked for in texts, and the number of the thing that bears it. */
export interface Name {
  readonly thing: number;
  /** Its words joined. */
  readonly key: string;
}

/** Names to look for: as they are written, and by ear. */
export interface Names {
  readonly exact: readonly Name[];
  readonly loose: readonly Name[];
}

/** @param named Names of things, each with its thing's number; a thing may have several. */
export function namesOf(named: readonly (readonly [number, string])[]): Names {
  return {
    exact: named.map(([thing, text]) => ({ thing, key: wordsOf(text).join('') })),
    loose: named.map(([thing, text]) => ({ thing, key: looseWords(text).join('') })),
  };
}

/** Things whose name stands in the text as written, else by ear; those with the longest such name. Never throws. */
export function thingsNamed({ exact, loose }: Names, text: string): number[] {
  const found = longest(exact, wordsOf(text));
  return found.length > 0 ? found : longest(loose, looseWords(text));
}

/** Things whose name stands in the words, word ends on word ends; those with the longest such name. */
export function longest(names: readonly Name[], words: readonly string[]): number[] {
  const runs = runsOf(words, Math.max(0, ...names.map(({ key }) => key.length)));
  const found = names.filter(({ key }) => key !== '' && runs.has(key));
  const length = Math.max(0, ...found.map(({ key }) => key.length));
  return found.filter(({ key }) => key.length === length).map(({ thing }) => thing);
}

/** Neighbouring words joined, no longer than the longest name that is sought: a damaged text may have a thousand words. */
export function runsOf(words: readonly string[], longestName: number): ReadonlySet<string> {
  const runs = new Set<string>();
  for (let from = 0; from < words.length; from++) {
    let run = words[from]!;
    for (let next = from + 1; run.length <= longestName; next++) {
      runs.add(run);
      if (next === words.length) break;
      run += words[next]!;
    }
  }
  return runs;
}

/** Words with every zone word before a number as "zone" and every temperature loop as "loop". */
function looseWords(text: string): string[] {
  const words = wordsOf(text).filter((word, i, all) => !(numberWords.has(word) && /^\p{N}/u.test(all[i + 1] ?? '')));
  return words.map((word, i) => {
    if (!/^\p{N}/u.test(words[i + 1] ?? '')) return word;
    if (zoneWords.has(word)) return 'zone';
    return temperatureLoop.test(word) ? 'tloop' : word;
  });
}
