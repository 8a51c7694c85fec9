import type { Facts } from '../../model/detector.js';
import { minutesText, ohmText, percentText, secondsText, shortNumber, withUnit } from '../text/numbers.js';
import { difference, level, phrase, plain, type Phrase } from '../text/phrase.js';

type Say = (value: number, name: string) => Phrase;

/** Names in which °C is a place on the scale; in all others it is a difference. */
const levels =
  /^(reading|setpoint|room|code|value|min|max|mean|from|to|at|air|hotFrom|truth|lowest|beforeLong)(?=[A-Z])(?!.*(Range|Noise|Offset|Change|Spread|Error))/;

/** Unit at the end of a fact's name → how to say its value. Longest endings first. */
const endings: readonly (readonly [string, Say])[] = [
  ['DegCPerDay', (value) => phrase`${difference(value, 2, ' per day')}`],
  ['DegCPerHour', (value) => phrase`${difference(value, 1, '/h')}`],
  ['DegCPerS', (value) => phrase`${difference(value, 1, '/s')}`],
  ['PerDegC', (value) => plain(`${shortNumber(value)}\u00A0% a degree (°C)`)],
  ['DegC', (value, name) => phrase`${levels.test(name) ? level(value) : difference(value)}`],
  ['PValue', (value) => plain(value < 0.001 ? '<\u00A00.001' : shortNumber(value))],
  ['Ratio', (value) => plain(value >= endlessRatio ? 'without end' : shortNumber(value))],
  ['Ohm', (value) => plain(ohmText(value))],
  ['Percent', (value) => plain(withUnit(value, '%', Math.abs(value) < 10 ? 1 : 0))],
  ['Share', (value) => plain(percentText(value))],
  ['Days', (value) => plain(withUnit(value, 'd', value < 10 ? 1 : 0))],
  ['Hours', (value) => plain(minutesText(value * 60))],
  ['Minutes', (value) => plain(minutesText(value))],
  ['PerHour', (value) => plain(`${shortNumber(value)} an hour`)],
  ['PerDay', (value) => plain(`${shortNumber(value)} a day`)],
  ['Ms', (value) => plain(secondsText(value / 1000))],
  ['S', (value) => plain(secondsText(value))],
];

/** Detectors write this for a ratio to nothing. */
const endlessRatio = 999;

/** Words for names that would be riddles without their unit; all others are read as they are written. */
const words: Readonly<Record<string, string>> = {
  zScoreRatio: 'size over its own error',
  hotZScoreRatio: 'hot: size over its own error',
  coldZScoreRatio: 'cold: size over its own error',
  changeZScoreRatio: 'change over its own error',
  bicGainRatio: 'gain of fit (BIC)',
  toleranceRatio: 'times the tolerance',
  growthRatio: 'times what it was',
  peerGrowthRatio: 'neighbours: times what they were',
  peerNoiseRatio: 'times the neighbours’ scatter',
  peersRatio: 'times the neighbours’ rate',
  rateRatio: 'ratio of the two rates',
  rateLowRatio: 'the ratio is at least',
  dutyRatio: 'output, times what it was',
  heatUpRatio: 'heat-up, times what it was',
  slopeRatio: 'slope, times what it was',
  tauRatio: 'cooling time, times what it was',
  burstinessRatio: 'burstiness (−1 even, 0 by chance, 1 in bursts)',
  dispersionRatio: 'day-to-day spread over that of chance',
  trendSignRatio: 'trend from day to day (1 up, −1 down)',
  residualDegC: 'as an error of the reading, by this alone',
  hotOffsetDegC: 'error by the duty alone',
  coldOffsetDegC: 'error by the cold soaks alone',
  hotErrorDegC: 'standard error of the one by duty',
  coldErrorDegC: 'standard error of the one by cold soaks',
  coldShare: 'cold over hot',
  percentPerDegC: 'output',
  afterRatio: 'opens per hour, times those before',
  fewerAfterPValue: 'chance of so few after',
  cooledRatio: 'cooled, over what it loses without heat',
  evenOverMovingRatio: 'evenly in time over while moving (likelihoods)',
  outputGrowthRatio: 'output’s own unrest, times what it was',
  ownGrowthRatio: 'times what it was, beyond its neighbours',
  opensPerBurstRatio: 'opens in one burst',
  fullPowerRatio: 'over what full power can do',
  isHotOnlyCount: 'counted while hot only (1 = yes)',
  powerRatio: 'shape of the drift (1 even, above it gets faster)',
  stepSpreadRatio: 'spread of the steps over their middle',
  timesUsualRatio: 'times a long stand-still of this zone',
  fallRatio: 'fall over what heat loss explains',
  endJumpRatio: 'jump at the end over what heat explains',
  backAtDegC: 'highest reading when it came back',
  runningHigherPValue: 'chance of so many while running',
  runningLowerPValue: 'chance of so few while running',
  hotHigherPValue: 'chance of so many hot',
  hotLowerPValue: 'chance of so few hot',
  growthPValue: 'chance of such growth',
  dispersionPValue: 'chance of such uneven days',
  trendPValue: 'chance of such a trend',
  signPValue: 'chance of so many to one side',
  chancePValue: 'chance of so many together',
  cardPValue: 'chance that zones drawn at random lie on one card so often',
  beginsPValue: 'chance of such a beginning',
  isStepCount: 'a step, not a slope (1 = yes)',
  lastsToEndCount: 'lasts to the end of the log (1 = yes)',
  isAboveCount: 'lies above the scale (1 = yes)',
  isBelowCount: 'lies below the scale (1 = yes)',
  isInAllColumnsCount: 'stands in columns of all kinds at once, so the recording had no value (1 = yes)',
  listedCount: 'in the maintenance list (1 = yes)',
  replacementCount: 'sensor replaced (1 = yes)',
  loopReactionPercent: 'the loop’s answer',
  loopAnswerPercent: 'the loop’s answer',
};

/** One fact as words: "jumpDegC: 12.3" → "jump 12.3 °C"; a name without a known unit keeps its bare number. */
function factPhrase(name: string, value: number): Phrase {
  const found = endings.find(([ending]) => name.endsWith(ending) && name.length > ending.length);
  if (!found) return plain(`${words[name] ?? nameWords(name.replace(/Count$/, ''))} ${shortNumber(value)}`);
  const [ending, say] = found;
  return phrase`${words[name] ?? nameWords(name.slice(0, -ending.length))} ${say(value, name)}`;
}

/** All facts of a symptom but the ones already said. */
export function factPhrases(facts: Facts, said: readonly string[] = []): readonly Phrase[] {
  return Object.entries(facts)
    .filter(([name]) => !said.includes(name))
    .map(([name, value]) => factPhrase(name, value));
}

function nameWords(name: string): string {
  return name.replace(/([a-z])([A-Z0-9])/g, '$1 $2').toLowerCase();
}
