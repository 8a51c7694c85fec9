import type { Facts } from '../../model/detector.js';
import { minutesText, ohmText, percentText, secondsText, shortNumber, withUnit } from '../text/numbers.js';
import { difference, level, phrase, plain, type Phrase } from '../text/phrase.js';

type Say = (value: number, name: string) => Phrase;

/** Names in which °C is a place on the scale; in all others it is a difference. */
const levels =
  /^(reading|setpoint|room|code|value|min|max|mean|from|to|at|air|hotFrom|truth)(?!.*(Range|Noise|Offset|Change|Spread))/;

/** Unit at the end of a fact's name → how to say its value. Longest endings first. */
const endings: readonly (readonly [string, Say])[] = [
  ['DegCPerWeek', (value) => phrase`${difference(value, 1, ' per week')}`],
  ['DegCPerDay', (value) => phrase`${difference(value, 2, ' per day')}`],
  ['DegCPerMin', (value) => phrase`${difference(value, 1, '/min')}`],
  ['DegCPerH', (value) => phrase`${difference(value, 1, '/h')}`],
  ['DegCPerS', (value) => phrase`${difference(value, 1, '/s')}`],
  ['DegC', (value, name) => phrase`${levels.test(name) ? level(value) : difference(value)}`],
  ['PValue', (value) => plain(`by chance ${value < 0.001 ? '< 0.001' : shortNumber(value)}`)],
  ['Ohm', (value) => plain(ohmText(value))],
  ['Percent', (value) => plain(withUnit(value, '%', Math.abs(value) < 10 ? 1 : 0))],
  ['Share', (value) => plain(percentText(value))],
  ['Days', (value) => plain(withUnit(value, 'd', value < 10 ? 1 : 0))],
  ['Hours', (value) => plain(minutesText(value * 60))],
  ['Minutes', (value) => plain(minutesText(value))],
  ['Seconds', (value) => plain(secondsText(value))],
  ['PerHour', (value) => plain(`${shortNumber(value)} an hour`)],
  ['PerH', (value) => plain(`${shortNumber(value)} an hour`)],
  ['PerDay', (value) => plain(`${shortNumber(value)} a day`)],
  ['Ms', (value) => plain(secondsText(value / 1000))],
  ['S', (value) => plain(secondsText(value))],
  ['Mv', (value) => plain(withUnit(value, 'mV', 2))],
];

/** Facts that are for other programs, not for a reader: indexes and codes of choices. */
const unspoken = /(index|flag)$/i;

/** One fact as words: "jumpDegC: 12.3" → "jump 12.3 °C"; a name without a known unit keeps its bare number. */
export function factPhrase(name: string, value: number): Phrase {
  const found = endings.find(([ending]) => name.endsWith(ending) && name.length > ending.length);
  if (!found) return plain(`${nameWords(name)} ${shortNumber(value)}`);
  const [ending, say] = found;
  return phrase`${nameWords(name.slice(0, -ending.length))} ${say(value, name)}`;
}

/** All facts of a symptom but the ones already said. */
export function factPhrases(facts: Facts, said: readonly string[] = []): readonly Phrase[] {
  return Object.entries(facts)
    .filter(([name]) => !said.includes(name) && !unspoken.test(name))
    .map(([name, value]) => factPhrase(name, value));
}

function nameWords(name: string): string {
  return name.replace(/([a-z])([A-Z0-9])/g, '$1 $2').toLowerCase();
}
