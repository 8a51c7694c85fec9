const controls = /[\u0000-\u001F\u007F-\u009F]|[\u200E\u200F\u2028-\u202E\u2066-\u2069]/g;
const wideSigns =
  /[\u1100-\u115F\u2E80-\u303E\u3041-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6]/u;

/** A text from a log made safe to print: no sign that could move the cursor, change colours or turn the direction. */
export function safeText(text: string): string {
  return text.replace(controls, '\uFFFD');
}

/** Columns that a text takes: wide East Asian signs take two, marks that join the sign before take none (UAX #11). */
export function textWidth(text: string): number {
  let width = 0;
  for (const sign of text) {
    if (/\p{M}/u.test(sign)) continue;
    width += wideSigns.test(sign) || /\p{Extended_Pictographic}/u.test(sign) ? 2 : 1;
  }
  return width;
}

/** Cut to a width, with … where something was left out. */
export function cutText(text: string, most: number): string {
  if (textWidth(text) <= most) return text;
  let kept = '';
  for (const sign of text) {
    if (textWidth(kept + sign) > most - 1) break;
    kept += sign;
  }
  return `${kept}…`;
}

/** Broken into lines between words; a word longer than a line is broken inside. */
export function wrapText(text: string, most: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/ +/).flatMap((long) => brokenWord(long, most))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer) <= most) line = longer;
    else {
      if (line !== '') lines.push(line);
      line = word;
    }
  }
  return line === '' ? lines : [...lines, line];
}

function brokenWord(word: string, most: number): readonly string[] {
  const parts: string[] = [];
  let part = '';
  for (const sign of word) {
    if (textWidth(part + sign) > most) {
      parts.push(part);
      part = '';
    }
    part += sign;
  }
  return [...parts, part].filter((piece) => piece !== '');
}
