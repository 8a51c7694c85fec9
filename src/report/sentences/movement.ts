import { minutesText, ohmText } from '../text/numbers.js';
import { difference, level, phrase, plain, type Phrase } from '../text/phrase.js';
import { factOf, timesText, type Family } from './family.js';

const sizeNames = ['largestSizeDegC', 'largestStepDegC', 'jumpDegC', 'stepDegC', 'sizeDegC'];
const ohmNames = ['largestStepOhm', 'medianStepOhm', 'stepOhm', 'jumpOhm', 'sizeOhm'];

/** Readings that jump out and come back faster than heat can move. */
export const jumps: Family = {
  id: 'jumps',
  has: (id) => /(^|-)(impossible|jumps?|spikes?)(-|$)/.test(id),
  weight: 50,
  isOnTrace: true,
  say: (symptom) => ({
    says: phrase`the reading jumps ${timesText(symptom.count)} faster than the zone can heat or cool${sizePhrase(symptom)}`,
    used: [...sizeNames, ...ohmNames, 'spikeCount'],
  }),
};

/** Steps that come and go: a contact that changes its ohms. */
export const steps: Family = {
  id: 'steps',
  has: (id) => /(^|-)steps?(-|$)/.test(id),
  weight: 60,
  isOnTrace: true,
  say: (symptom) => ({
    says: phrase`the reading takes a step ${timesText(symptom.count)} that no heat explains${sizePhrase(symptom)}`,
    used: [...sizeNames, ...ohmNames],
  }),
};

function sizePhrase(symptom: Parameters<Family['say']>[0]): Phrase {
  const sizeDegC = factOf(symptom, ...sizeNames);
  const ohm = factOf(symptom, ...ohmNames);
  if (Number.isNaN(sizeDegC)) return [];
  const upTo = symptom.count > 1 ? 'up to ' : '';
  return phrase`, by ${upTo}${difference(Math.abs(sizeDegC))}${Number.isNaN(ohm) ? '' : ` (${ohmText(Math.abs(ohm))})`}`;
}

/** Noise that has grown. */
export const scatter: Family = {
  id: 'scatter',
  has: (id) => /(scatter|noise|noisy)/.test(id),
  weight: 40,
  isOnTrace: true,
  say: (symptom) => {
    const used = ['lastNoiseDegC', 'firstNoiseDegC', 'hoursCount'];
    const lastDegC = factOf(symptom, 'lastNoiseDegC', 'noiseDegC');
    const firstDegC = factOf(symptom, 'firstNoiseDegC');
    if (Number.isNaN(lastDegC)) return { says: plain('the reading scatters more than it should'), used };
    const before: Phrase = Number.isNaN(firstDegC) ? [] : phrase`, ${difference(firstDegC, 2)} at first`;
    return { says: phrase`the reading scatters by ${difference(lastDegC, 2)} at the end${before}`, used };
  },
};

/** A reading that does not move while other things do. */
export const stuck: Family = {
  id: 'stuck',
  has: (id) => /stuck-reading|reading-stuck|frozen-reading/.test(id),
  weight: 70,
  isOnTrace: true,
  say: (symptom) => {
    const valueDegC = factOf(symptom, 'valueDegC');
    const at: Phrase = Number.isNaN(valueDegC) ? [] : phrase` at ${level(valueDegC)}`;
    const longest = factOf(symptom, 'longestMinutes');
    const long = longest > 0 ? `, the longest for ${minutesText(longest)}` : '';
    const says = phrase`the reading stands still${at} ${timesText(symptom.count)} although output or neighbours move${long}`;
    return { says, used: ['valueDegC', 'longestMinutes', 'stuckCount'] };
  },
};

/** The recording stands still, or rows are missing. */
export const recording: Family = {
  id: 'recording',
  has: (id) => /(frozen|stale|(^|-)gaps?(-|$)|missing)/.test(id),
  weight: 35,
  isOnTrace: true,
  say: (symptom) => {
    const parts = [
      partText(factOf(symptom, 'fileFrozenMinutes'), 'the whole recording stands still'),
      partText(factOf(symptom, 'tagFrozenMinutes'), 'reading, set point and output stand still together'),
      partText(factOf(symptom, 'gapMinutes'), 'rows are missing'),
    ].filter((part) => part !== '');
    const used = ['fileFrozenMinutes', 'tagFrozenMinutes', 'gapMinutes'];
    return { says: plain(parts.join('; ') || `the recording stands still ${timesText(symptom.count)}`), used };
  },
};

function partText(minutes: number, what: string): string {
  return minutes > 0 ? `${what} for ${minutesText(minutes)}` : '';
}
