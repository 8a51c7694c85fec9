import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { plainWords, roleWords, type WordMeaning } from '../../src/read/names/role-words.js';

const page = readFileSync(new URL('../../src/read/names/role-words.md', import.meta.url), 'utf8');

test('the page holds the table of the code, word by word', () => {
  const sections = page.split(/^## /m).slice(1);
  expect(sections.map((section) => section.split('\n')[0])).toEqual(Object.keys(roleWords));
  for (const section of sections) {
    const [meaning, , , , ...rest] = section.split('\n');
    const words = rest
      .join(' ')
      .split(',')
      .map((word) => word.trim());
    expect(words, meaning).toEqual(roleWords[meaning as WordMeaning]);
  }
});

test('every word stands as names are compared: folded, parted by one blank', () => {
  for (const words of Object.values(roleWords)) for (const word of words) expect(plainWords(word)).toBe(word);
});

test('names in scripts without Latin letters stay apart', () =>
  expect(plainWords('Зона 1 Температура')).not.toBe(plainWords('Линия 1 Температура')));
