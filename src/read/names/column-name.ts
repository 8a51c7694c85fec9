import { oncePerText } from '../../words/once-per-text.js';
import type { TemperatureUnit } from '../../model/log-file.js';
import { plainTag } from './plain-tag.js';
import { plainWords, roleWords, type WordMeaning } from './role-words.js';

export type NamedUnit = TemperatureUnit | 'percent' | 'other' | null;

/** What a column's or tag's name says. */
export interface NameParts {
  /** The name without role, unit and filler words; empty when nothing else is in it. */
  readonly rest: string;
  /** Strongest meaning among the words cut off; null = none. */
  readonly meaning: WordMeaning | null;
  readonly unit: NamedUnit;
  /** 0.1 where the name says tenths. */
  readonly scale: number;
  /** The word that decided, as it stands in the name. */
  readonly word: string;
  /**
   * Absent unless a noun stands at the beginning or before the last word ("OUT Zone 1", "Rear heater PV"): what the name
   * says when that is no part of the zone's name.
   */
  readonly bare?: Pick<NameParts, 'rest' | 'meaning' | 'word'>;
}

/** Stronger meanings first: "set temp" is a set point, "output temp" an output. */
const strength: readonly WordMeaning[] = [
  'quality',
  'setpoint',
  'output',
  'other',
  'running',
  'reading',
  'temperature',
  'filler',
];

const meaningOfWords = new Map<string, WordMeaning>();
for (const meaning of [...strength].reverse())
  for (const words of roleWords[meaning]) meaningOfWords.set(words, meaning);
const longestPhrase = 3;

const unitPatterns: readonly (readonly [RegExp, NamedUnit])[] = [
  [/^(°|º|deg(rees?)?\.?|grad)? ?c(elsius)?$/i, 'degC'],
  [/^(°|º|deg(rees?)?\.?)? ?f(ahrenheit)?$/i, 'degF'],
  [/^(k|kelvin|°k)$/i, 'K'],
  [/^(%|percent|pct|prozent|% ?(out|heat|power|duty))$/i, 'percent'],
  [
    /^(bar|mbar|k?pa|psi|[mk]?v|[mk]?a|k?w|kwh|hz|rpm|u\/min|1\/min|mm|cm|m|m\/s|m\/min|ft\/min|l\/min|m³\/h|kg|g|n|nm|ppm|g\/m³|w\/m²|w\/m\^2|lux|% ?rh|rh|cycles?\/min|ppm|s|ms|min|h|gt)$/i,
    'other',
  ],
];

/** Meaning of a unit text such as "°C", "degF", "%", "bar"; null = not a unit. Never throws. */
export function unitOf(text: string): NamedUnit {
  const trimmed = text.trim().normalize('NFKC'); // ℃ is °C
  return unitPatterns.find(([pattern]) => pattern.test(trimmed))?.[1] ?? null;
}

/**
 * Splits a name into the zone's own words and those that say role and unit: "M1 Barrel feed_ACT" gives "M1 Barrel feed"
 * and `reading`. Words are cut from the end first, then from the beginning; what stands between is kept as written.
 * Never throws.
 */
export const splitName = oncePerText((name): NameParts => {
  // "(2)" was put there by the reader for a name that stands twice.
  const { text, unit: bracketUnit, scale } = cutUnit(plainTag(name.trim().replace(/ \(\d+\)$/, '')));
  const { found, ...parts } = partsOf(text, isNoNoun);
  const unit = bracketUnit ?? found.find((word) => word.unit)?.unit ?? null;
  const { found: all, ...bare } = partsOf(text, () => true);
  return all.length === found.length ? { ...parts, unit, scale } : { ...parts, unit, scale, bare };
});

/** Behind the name of a zone these are part of it as often as not, when another word says the role. */
const backNouns =
  /^(in|out|heat|heater|heating|heizung|verwarming|chauffage|calefaccion|riscaldamento|topeni|isitici|isitma|lammitys|varme|futes|нагрев|加热|加熱|ヒーター?|히터|가열)$/;

/** Whether a word is none of those that are part of a zone's name where they stand. */
function isNoNoun(word: string, from: End, isRoleSaid: boolean): boolean {
  const words = plainWords(word);
  return from === 'start' ? !frontNouns.test(words) : !isRoleSaid || !backNouns.test(words);
}

/** @param isCut Whether a word at one end may be cut; a role may have been cut behind it. */
function partsOf(text: string, isCut: typeof isNoNoun) {
  const cutBack = cutWords(text, 'end', isCut);
  const cutFront = cutWords(cutBack.rest, 'start', isCut);
  const found = [...cutBack.found, ...cutFront.found];
  const best = found.reduce<Found | null>(
    (a, b) => (a && strength.indexOf(a.meaning) <= strength.indexOf(b.meaning) ? a : b),
    null,
  );
  const rest = /^\d*$/.test(cutFront.rest) && cutFront.rest !== '' ? text : cutFront.rest;
  return { rest, meaning: best?.meaning ?? null, word: best?.text ?? '', found };
}

/** A unit in brackets, or bare behind the name: "(°C)", "[degF]", "/ °C", "in °C", "°C", "%", "m/min". */
function cutUnit(name: string): { text: string; unit: NamedUnit; scale: number } {
  const bracket = /^(.*?)\s*[([{]\s*([^)\]}]*)\s*[)\]}]\s*$/s.exec(name);
  if (bracket) {
    const tenths = /(^|[^0-9])(0[.,]1|1\/10|x ?10|\*10|tenths?)/i.test(bracket[2]!);
    const unit = unitOf(bracket[2]!.replace(/0[.,]1|1\/10|[x*] ?10|tenths?( of)?/gi, '').trim());
    const hasBlank = /\s[([{]/.test(name);
    if (unit) return { text: bracket[1]!.replace(hasBlank ? /[.:]+$/ : /[_.:]+$/, ''), unit, scale: tenths ? 0.1 : 1 };
  }
  const bare = /^(.*?)(?:\s*[/,]\s*|[\s_.]+in\s+|[\s_.]*)(°\s?[CFK]|º\s?[CF]|[\s_.]deg\s?[CF]|%)\s*$/is.exec(name);
  if (bare && bare[1] !== '') return { text: bare[1]!, unit: unitOf(bare[2]!.replace(/^[\s_.]/, '')), scale: 1 };
  const speed = /^(.*?)[\s_]+(rpm|mA|[\p{L}1]+\/(?:min|s|h))\s*$/isu.exec(name);
  if (speed && speed[1] !== '') return { text: speed[1]!, unit: 'other', scale: 1 };
  return { text: name, unit: null, scale: 1 };
}

interface Found {
  readonly meaning: WordMeaning;
  readonly text: string;
  readonly unit: NamedUnit;
}

/** Words with their places; a change from small to capital letters, or from a digit to letters, parts words too. */
function wordsOf(text: string): { text: string; start: number; end: number }[] {
  const pattern = /\p{Lu}{2,}(?![\p{Ll}])|\p{Lu}?\p{Ll}+|\p{Lu}|[\p{Lo}\p{Lm}]+|\d+|%/gu;
  return [...text.matchAll(pattern)].map((match) => ({
    text: match[0],
    start: match.index,
    end: match.index + match[0].length,
  }));
}

type End = 'end' | 'start';

function cutWords(text: string, from: End, isCut: typeof isNoNoun): { rest: string; found: Found[] } {
  const found: Found[] = [];
  let rest = text;
  for (;;) {
    const isRoleSaid = found.some(({ meaning }) => meaning !== 'filler');
    const cut = cutPhrase(rest, from, (word) => isCut(word, from, isRoleSaid));
    if (!cut) return { rest, found };
    rest = cut.rest;
    found.push(cut.found);
  }
}

function cutPhrase(text: string, from: End, isCut: (word: string) => boolean): { rest: string; found: Found } | null {
  for (const { start, end } of spansAt(text, from)) {
    const span = text.slice(start, end);
    const found = meaningOf(span);
    if (!found || !(isApart(text, start, end, from) || isJoined(text, end, from, found))) continue;
    if (!isCut(span)) {
      if (from === 'start') continue;
      return null;
    }
    return { rest: trimJoints(from === 'end' ? text.slice(0, start) : text.slice(end)), found };
  }
  return null;
}

/** What may be a phrase at one end of a text, longest first. Where no blanks part words, a part of the run is one, too. */
function spansAt(text: string, from: End): { start: number; end: number }[] {
  const words = wordsOf(text);
  const spans: { start: number; end: number }[] = [];
  for (let count = Math.min(longestPhrase, words.length); count >= 1; count--) {
    const phrase = from === 'end' ? words.slice(-count) : words.slice(0, count);
    spans.push({ start: phrase[0]!.start, end: phrase.at(-1)!.end });
  }
  const last = spans.at(-1);
  if (!last || !unbroken.test(text.slice(last.start, last.end))) return spans;
  for (let cut = 1; cut < last.end - last.start; cut++)
    spans.push(from === 'end' ? { ...last, start: last.start + cut } : { ...last, end: last.end - cut });
  return spans;
}

/** Scripts that write words without blanks between them; ー lengthens a vowel. */
const unbroken = /^[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}ー]+$/u;

/** "Zone1PV" and "PV_Zone1" part; "Input" must not lose its "put", nor "T1" its "T". */
function isApart(text: string, start: number, end: number, from: End): boolean {
  if (unbroken.test(text.slice(start, end))) return true;
  if (from === 'start') return end === text.length || /[\s_.\-:/\\]/.test(text[end]!);
  if (start === 0 || !/[\p{L}\d]/u.test(text[start - 1]!)) return true;
  return end - start > 1 && /[\p{Ll}\d]/u.test(text[start - 1]!) && /\p{Lu}/u.test(text[start]!);
}

/** "ActTempZ1": a small letter before a capital parts words in front, too; things such as "FlowHead" stay whole. */
function isJoined(text: string, end: number, from: End, { meaning }: Found): boolean {
  return from === 'start' && meaning !== 'other' && /^\p{Ll}\p{Lu}/u.test(text.slice(end - 1, end + 1));
}

function meaningOf(span: string): Found | null {
  const words = plainWords(span.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2'));
  if (percentWords.test(words)) return { meaning: 'filler', text: span, unit: 'percent' };
  const withUnit = meaningWithUnit(words);
  if (withUnit) return { ...withUnit, text: span };
  // "Er-verdi" is one word in two parts; the A of "Manifold A Er-verdi" is none of it.
  const isOneWord = words.split(' ').every((part) => part.length > 1);
  const meaning =
    meaningOfWords.get(words) ?? (isOneWord && meaningOfWords.get(words.replaceAll(' ', ''))) ?? meaningOfRun(words);
  return meaning ? { meaning, text: span, unit: null } : null;
}

/** "设定温度" and "現在値" are words of the table, one behind the other. */
function meaningOfRun(run: string): WordMeaning | undefined {
  if (!unbroken.test(run)) return undefined;
  for (let cut = 1; cut < run.length; cut++) {
    const last = meaningOfWords.get(run.slice(cut));
    if (!last) continue;
    const first = meaningOfWords.get(run.slice(0, cut)) ?? meaningOfRun(run.slice(0, cut));
    if (first) return strength.indexOf(first) <= strength.indexOf(last) ? first : last;
  }
  return undefined;
}

const percentWords = /^(%|pct|percent|prozent|procent|pourcentage|porcentaje|percentuale)$/;

/** "temp c", "setpoint f", "deg c", "% heat", "t real": a word with a unit, or with what it is a temperature of. */
function meaningWithUnit(words: string): Pick<Found, 'meaning' | 'unit'> | null {
  const degrees = /^(.*?) ?([cf])$/.exec(words);
  const said = degrees && (degrees[1] === 'deg' ? 'temperature' : meaningOfWords.get(degrees[1]!));
  if (said === 'temperature' || ((said === 'reading' || said === 'setpoint') && words.includes(' ')))
    if (degrees![1] !== 't') return { meaning: said, unit: degrees![2] === 'c' ? 'degC' : 'degF' };
  const share = /^% (.+)$|^(.+) %$/.exec(words);
  if (share && meaningOfWords.get(share[1] ?? share[2]!) === 'output') return { meaning: 'output', unit: 'percent' };
  const [first, ...rest] = words.split(' ');
  const kind = meaningOfWords.get(first!) === 'temperature' ? meaningOfWords.get(rest.join(' ')) : undefined;
  return kind === 'reading' || kind === 'setpoint' ? { meaning: kind, unit: null } : null;
}

/**
 * "PV1", "SP 2", "OUT_3 (%)": a word and nothing else but a number, which is then the zone's.
 *
 * @returns null for any other name. Never throws.
 */
export function splitNumbered(name: string): { meaning: WordMeaning; word: string; number: number } | null {
  const match = /^(\p{L}[\p{L}\s_.%-]*?)[\s_.#-]*(\d{1,4})$/u.exec(cutUnit(plainTag(name.trim())).text);
  const found = match && meaningOf(match[1]!);
  return found ? { meaning: found.meaning, word: match[1]!, number: Number(match[2]) } : null;
}

function trimJoints(text: string): string {
  return text.replace(/^[\s_.\-:/\\|,;]+|[\s_.\-:/\\|,;([]+$/g, '');
}

/** In front these are the name of a thing ("Heater 1", "Input zone"), not a role. */
const frontNouns =
  /^(heat|heater|heating|input|in|out|power|current|press|y|t|q|id|no|level|heizung|mode|run|state|band|value|fan|valve|position|count|pid|drift|batch|production|tc|rtd|pt100|pt1000|sensor temp|signal|riscaldamento|verwarming|chauffage|calefaccion|aquecimento|topeni|isitici|isitma|lammitys|varme|futes|нагрев|нагреватель|加热|加熱|ヒーター?|히터|가열)$/;

/** For comparing names by ear: case, accents and punctuation do not count. */
export function looseName(name: string): string {
  return plainWords(name).replace(/ /g, '');
}
