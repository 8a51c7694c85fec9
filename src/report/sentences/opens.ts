import { counted, minutesText } from '../text/numbers.js';
import { level, phrase, plain, type Phrase } from '../text/phrase.js';
import { always, longestText, timesInHours, timesText, unlessChance, type Spoken } from './spoken.js';

/** An open that has stood this long when the log ends is the fault of the day. */
const standingMinutes = 20;

const sensorOpens: Spoken = {
  detector: 'sensor-opens',
  speaksFor: ['sensor', 'wiring'],
  weight: (ask) => (ask('standingMinutes') >= standingMinutes || ask('shortCount') > 0 ? 96 : 91),
  isOnTrace: true,
  say: (ask, { count }) => {
    if (count === 0) return plain(`no open of its own: ${counted(ask('sharedCount'), 'open')} with other zones`);
    const shorts = ask('shortCount');
    const alarmOnly = ask('alarmOnlyCount');
    const standing = ask('standingMinutes');
    const what =
      shorts > 0 && shorts >= count / 2 ? 'the reading goes to the bottom of its scale' : 'the sensor circuit opens';
    const end = standing > 0 ? `; it has stood so for ${minutesText(standing)} when the log ends` : '';
    const unseen =
      alarmOnly > 0
        ? `; ${alarmOnly === count ? 'only the alarms show it' : `${alarmOnly} of them only in the alarms`}`
        : '';
    return plain(`${what} ${timesText(count)}${longestText(ask('longestOpenMinutes'), count)}${end}${unseen}`);
  },
};

interface Side {
  readonly count: number;
  readonly hours: number;
  readonly words: string;
  readonly none: string;
}

/** What it did on either side; a side without any time is no comparison. */
function sidesText(one: Side, other: Side): Phrase {
  const text = ({ count, hours, words }: Side) => `${timesInHours(count, hours)} ${words}`;
  for (const [side, empty] of [
    [one, other],
    [other, one],
  ] as const) {
    if (empty.count === 0 && empty.hours * 60 < 1) return plain(`it opens ${text(side)}; ${empty.none} in that time`);
  }
  return plain(`it opens ${text(one)} and ${text(other)}`);
}

/** These state both sides and leave the judgement to the weighing: the facts may speak either way. */
const opensByRunning: Spoken = {
  detector: 'opens-by-running',
  speaksFor: ['wiring'],
  weight: unlessChance(93, 'runningHigherPValue'),
  isOnTrace: false,
  say: (ask) =>
    sidesText(
      { count: ask('runningCount'), hours: ask('runningHours'), words: 'of running', none: 'it did not run' },
      { count: ask('stoppedCount'), hours: ask('stoppedHours'), words: 'of standing', none: 'it did not stand' },
    ),
};

const opensByHeat: Spoken = {
  detector: 'opens-by-heat',
  speaksFor: ['sensor'],
  weight: unlessChance(93, 'hotHigherPValue'),
  isOnTrace: false,
  say: (ask) =>
    sidesText(
      { count: ask('hotCount'), hours: ask('hotHours'), words: 'hot', none: 'it was not hot' },
      { count: ask('coldCount'), hours: ask('coldHours'), words: 'cold', none: 'it was not cold' },
    ),
};

const opensGrowth: Spoken = {
  detector: 'opens-growth',
  speaksFor: ['wiring', 'sensor'],
  weight: unlessChance(90, 'growthPValue'),
  isOnTrace: false,
  say: (ask) =>
    plain(
      `it opens ${timesInHours(ask('firstCount'), ask('firstHours'))} at first and ${timesInHours(ask('lastCount'), ask('lastHours'))} later`,
    ),
};

const codeValue: Spoken = {
  detector: 'code-value',
  speaksFor: ['sensor', 'wiring', 'input'],
  weight: always(78),
  isOnTrace: true,
  say: (ask, { count }) => {
    const others = ask('otherZonesCount');
    const also = others > 0 ? `; ${counted(others, 'other zone')} ${others === 1 ? 'has' : 'have'} it too` : '';
    const long = longestText(ask('longestMinutes'), count);
    if (ask('isInAllColumnsCount') === 1)
      return phrase`the recording writes ${level(ask('valueDegC'))} in all columns at once ${timesText(count)}: no value, and no sign against this zone${long}`;
    return phrase`the log holds exactly ${level(ask('valueDegC'))} ${timesText(count)}, a code and no temperature${long}${also}`;
  },
};

/** What opens of the circuit say. */
export const opens: readonly Spoken[] = [sensorOpens, opensByRunning, opensByHeat, opensGrowth, codeValue];
