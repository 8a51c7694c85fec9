const controls = /[\u0000-\u001F\u007F-\u009F]|[\u200E\u200F\u2028-\u202E\u2066-\u2069]/g;
/** Printable ASCII: a column each. */
const plain = /^[\x20-\x7E]*$/;
const wideSigns =
  /[\u1100-\u115F\u2E80-\u303E\u3041-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6]/u;

/** A text from a log made safe to print: no sign that could move the cursor, change colours or turn the direction. */
export function safeText(text: string): string {
  return text.replace(controls, '\uFFFD');
}

/** Columns that a text takes: wide East Asian signs take two, marks that join the sign before take none (UAX #11). */
export function textWidth(text: string): number {
  if (plain.test(text)) return text.length;
  let width = 0;
  for (const sign of text) width += signWidth(sign);
  return width;
}

function signWidth(sign: string): number {
  if (plain.test(sign)) return 1;
  if (/\p{M}/u.test(sign)) return 0;
  return wideSigns.test(sign) || /\p{Extended_Pictographic}/u.test(sign) ? 2 : 1;
}

/** Cut to a width, with … where something was left out. */
export function cutText(text: string, most: number): string {
  if (textWidth(text) <= most) return text;
  const [first = ''] = partsOf(text, most - 1);
  return textWidth(first) < most ? `${first}…` : '…';
}

/** Broken into lines between words; a word longer than a line is broken inside. */
export function wrapText(text: string, most: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  let width = 0;
  for (const word of text.split(/ +/).flatMap((long) => partsOf(long, most))) {
    const wordWidth = textWidth(word);
    const isFirst = line === '';
    if (isFirst || width + 1 + wordWidth <= most) {
      line = isFirst ? word : `${line} ${word}`;
      width += wordWidth + (isFirst ? 0 : 1);
    } else {
      lines.push(line);
      [line, width] = [word, wordWidth];
    }
  }
  return line === '' ? lines : [...lines, line];
}

/** The text in parts that are no wider than `most` each, but for a sign that is wider by itself; none is empty. */
function partsOf(text: string, most: number): readonly string[] {
  const parts: string[] = [];
  let part = '';
  let width = 0;
  for (const sign of text) {
    const more = signWidth(sign);
    if (width + more > most && part !== '') {
      parts.push(part);
      [part, width] = ['', 0];
    }
    part += sign;
    width += more;
  }
  return part === '' ? parts : [...parts, part];
}
