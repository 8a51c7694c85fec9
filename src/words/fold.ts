/** Letters that Unicode does not take apart into a plain letter and a mark. */
const plainLetters: Readonly<Record<string, string>> = {
  ø: 'o',
  æ: 'ae',
  œ: 'oe',
  ß: 'ss',
  ł: 'l',
  đ: 'd',
  ı: 'i',
};

/**
 * Marks above and below letters; й and the voiced kana are letters of their own. Without regard to case this would also
 * find ι, which is the capital of a mark.
 */
const accents = /(?<![иИ])(?![\u3099\u309a])\p{M}/gu;

const ascii = /^[\x00-\x7F]*$/;

/**
 * Lower case without accents, so that "Fühlerbruch", "FUHLERBRUCH" and "fuhlerbruch" are one.
 *
 * @returns The folded text; other scripts stay as they are. Never throws.
 */
export function foldText(text: string): string {
  if (ascii.test(text)) return text.toLowerCase();
  return text
    .normalize('NFKD')
    .replace(accents, '')
    .toLowerCase()
    .replace(/[øæœßłđı]/g, (letter) => plainLetters[letter] ?? letter)
    .normalize('NFC');
}

/**
 * The words of a text, folded: runs of letters, and runs of digits without leading zeros.
 * "Zone_01 OVER-TEMP" gives zone, 1, over, temp; "TIC101" gives tic, 101.
 */
export function wordsOf(text: string): string[] {
  const words = foldText(text).match(/\p{L}+|\p{N}+/gu) ?? [];
  return words.map((word) => word.replace(/^0+(?=\p{N})/u, ''));
}

/**
 * A test for any of the given phrases as whole words. A * at either end of a word stands for more letters:
 * "*bruch" finds "Drahtbruch". Phrases in scripts that write no blanks are found anywhere in a word; a blank
 * in one of them stands for a word or nothing: "ヒータ 断線" finds "ヒーター1断線".
 *
 * @param phrases Any case, any accents.
 * @returns A function of words as `wordsOf` gives them, joined by one blank.
 */
export function phraseTest(phrases: readonly string[]): (joinedWords: string) => boolean {
  let pattern: RegExp | undefined; // made when it is first asked for: most runs never ask most of them
  const made = (): RegExp => new RegExp(`(?:^| )(?:${phrases.map(phrasePattern).join('|')})(?= |$)`, 'u');
  return (joinedWords) => (pattern ??= made()).test(joinedWords);
}

const unbroken = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]/u;

function phrasePattern(phrase: string): string {
  const folded = foldText(phrase).trim();
  if (unbroken.test(folded)) return `\\S*${folded.split(' ').join('\\S*(?: \\S+)?? ?\\S*')}\\S*`;
  return folded
    .split(/[^\p{L}\p{N}*]+/u)
    .map((word) => word.replaceAll('*', '\\S*'))
    .join(' ');
}

/** Phrases written with commas between them, as the word tables are. */
export function list(text: string): string[] {
  return text
    .split(',')
    .map((phrase) => phrase.trim())
    .filter((phrase) => phrase !== '');
}
