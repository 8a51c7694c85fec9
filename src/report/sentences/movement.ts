import { minutesText, numberText, ohmText } from '../text/numbers.js';
import { difference, level, phrase, plain, type Phrase } from '../text/phrase.js';
import { always, longestText, timesText, type Ask, type Spoken } from './spoken.js';

const spikes: Spoken = {
  detector: 'spikes',
  speaksFor: ['wiring', 'sensor', 'input'],
  weight: always(50),
  isOnTrace: true,
  say: (ask, { count }) =>
    phrase`the reading jumps out and back ${timesText(count)}, faster than heat can move it, by ${upTo(ask('largestSizeDegC'), count)}`,
};

const returningSteps: Spoken = {
  detector: 'returning-steps',
  speaksFor: ['wiring', 'sensor'],
  weight: always(80),
  isOnTrace: true,
  say: (ask, { count }) =>
    phrase`the reading takes ${count === 1 ? 'a step' : `${count} steps`} that no heat explains, mostly of ${difference(ask('medianStepDegC'))}${asOhm(ask)}, the largest of ${difference(ask('largestStepDegC'))}`,
};

const loneExcursions: Spoken = {
  detector: 'lone-excursions',
  speaksFor: ['wiring', 'sensor'],
  weight: always(79),
  isOnTrace: true,
  say: (ask, { count }) =>
    phrase`the reading leaves its line ${timesText(count)} while its neighbours stay, mostly by ${difference(ask('medianStepDegC'))}${asOhm(ask)}, at most by ${difference(ask('largestStepDegC'))}`,
};

function upTo(sizeDegC: number, count: number): Phrase {
  return phrase`${count > 1 ? 'up to ' : ''}${difference(Math.abs(sizeDegC))}`;
}

/** A contact's ohms; absent where the sensor is no resistance. */
function asOhm(ask: Ask): string {
  const ohm = ask('medianStepOhm');
  return Number.isNaN(ohm) ? '' : ` (${ohmText(Math.abs(ohm), 2)})`;
}

const scatterGrowth: Spoken = {
  detector: 'scatter-growth',
  speaksFor: ['sensor', 'wiring'],
  weight: always(40),
  isOnTrace: true,
  say: (ask) => {
    const loudHours = ask('loudHours');
    if (loudHours > 0 && !(ask('ownGrowthRatio') >= 2))
      return phrase`the reading scatters by ${difference(ask('loudNoiseDegC'), 2)} for ${minutesText(60 * loudHours)}, ${numberText(ask('loudTimesUsualRatio'))} times as much as at that time of other days`;
    if (ask('peerNoiseRatio') >= 2 && !(ask('ownGrowthRatio') >= 1.5))
      return phrase`the reading scatters by ${difference(ask('lastNoiseDegC'), 2)}, ${numberText(ask('peerNoiseRatio'), 1)} times as much as its neighbours`;
    return phrase`the reading scatters by ${difference(ask('lastNoiseDegC'), 2)} at the end, ${difference(ask('firstNoiseDegC'), 2)} at first`;
  },
};

const stuckReading: Spoken = {
  detector: 'stuck-reading',
  speaksFor: ['input', 'recording'],
  weight: always(85),
  isOnTrace: true,
  say: (ask, { count }) => {
    const how = ask('jumpedToCount') === count ? ', jumped to and not crept to' : ' while output or neighbours move';
    return phrase`the reading stands still at ${level(ask('valueDegC'))} ${timesText(count)}${how}${longestText(ask('longestMinutes'), count)}`;
  },
};

const frozenRecord: Spoken = {
  detector: 'frozen-record',
  speaksFor: ['recording'],
  weight: always(60),
  isOnTrace: true,
  say: (ask) => {
    const parts = [
      lasting('the whole recording stands still', ask('fileFrozenMinutes')),
      lasting('all that is logged of it stands still together', ask('tagFrozenMinutes')),
      lasting('rows are missing', ask('gapMinutes')),
    ];
    return plain(parts.filter((part) => part !== '').join('; '));
  },
};

function lasting(what: string, minutes: number): string {
  return minutes > 0 ? `${what} for ${minutesText(minutes)}` : '';
}

/** What readings say that move otherwise than heat, or do not move. */
export const movement: readonly Spoken[] = [
  spikes,
  returningSteps,
  loneExcursions,
  scatterGrowth,
  stuckReading,
  frozenRecord,
];
