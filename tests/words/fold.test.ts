import { expect, test } from 'vitest';
import { foldText, phraseTest, wordsOf } from '../../src/words/fold.js';

test('accents, case and letters of their own fold to plain letters', () => {
  expect(foldText('Fühlerbruch')).toBe('fuhlerbruch');
  expect(foldText('FØLERBRUDD Łódź Straße')).toBe('folerbrudd lodz strasse');
});

test('words split at blanks, signs and between letters and digits; leading zeros go', () => {
  expect(wordsOf('Zone_01 OVER-TEMP')).toEqual(['zone', '1', 'over', 'temp']);
  expect(wordsOf('TIC-101.PV')).toEqual(['tic', '101', 'pv']);
  expect(wordsOf('0')).toEqual(['0']);
  expect(wordsOf('---')).toEqual([]);
});

test('a phrase is found as whole words only, unless a star says otherwise', () => {
  const opened = phraseTest(['open circuit', '*bruch', '断线']);
  const finds = (text: string) => opened(wordsOf(text).join(' '));
  expect(finds('Zone 3: Open-circuit')).toBe(true);
  expect(finds('Heizzone 4 Drahtbruch')).toBe(true);
  expect(finds('温区3断线报警')).toBe(true);
  expect(finds('reopen circuitry')).toBe(false);
  expect(finds('Bruchstelle')).toBe(false);
});

test('the dotless i of Turkish is an i, whatever the case; marks that are capitals of letters take none away', () => {
  expect(['ISITICI ÇIKIŞI', 'Isıtıcı çıkışı', 'isitici cikisi', 'İSTENEN'].map(foldText)).toEqual([
    ...['isitici cikisi', 'isitici cikisi', 'isitici cikisi'],
    'istenen',
  ]);
  expect(foldText('Επιθυμητή ΤΙΜΉ')).toBe('επιθυμητη τιμη');
});

test('letters that look as if they had a mark stay whole', () =>
  expect(['Рабочий', 'ゾーン', '현재값', 'ｾﾞﾝ'].map(foldText)).toEqual(['рабочий', 'ゾーン', '현재값', 'ゼン']));
