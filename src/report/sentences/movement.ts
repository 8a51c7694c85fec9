import { difference, phrase, plain } from '../text/phrase.js';
import { ohmText, shortNumber } from '../text/numbers.js';
import { factOf, timesText, type Family } from './family.js';

const jumpNames = ['jumpDegC', 'stepDegC', 'sizeDegC', 'largestDegC', 'largestJumpDegC', 'largestStepDegC'];

/** A reading that moves faster than heat can. */
export const jumps: Family = {
  id: 'jumps',
  has: (id) => /(^|-)(impossible|jump|jumps|spike|spikes)(-|$)/.test(id),
  weight: 50,
  say: (symptom) => {
    const sizeDegC = factOf(symptom, ...jumpNames);
    const ohm = factOf(symptom, 'jumpOhm', 'stepOhm', 'sizeOhm');
    const size = Number.isNaN(sizeDegC) ? plain('') : phrase`, by ${difference(Math.abs(sizeDegC))}`;
    const inOhm = Number.isNaN(ohm) ? '' : ` (${ohmText(Math.abs(ohm))})`;
    const says = phrase`the reading jumps ${timesText(symptom.count)} faster than the zone can heat or cool${size}${inOhm}`;
    return { says, used: [...jumpNames, 'jumpOhm', 'stepOhm', 'sizeOhm'] };
  },
};

/** A step that stays, or comes and goes: a contact that changes its ohms. */
export const steps: Family = {
  id: 'steps',
  has: (id) => /(^|-)(step|steps)(-|$)/.test(id),
  weight: 60,
  say: (symptom) => {
    const sizeDegC = factOf(symptom, ...jumpNames, 'offsetDegC');
    const ohm = factOf(symptom, 'jumpOhm', 'stepOhm', 'sizeOhm', 'seriesOhm');
    const size = Number.isNaN(sizeDegC) ? plain('') : phrase` of ${difference(Math.abs(sizeDegC))}`;
    const inOhm = Number.isNaN(ohm) ? '' : ` (${ohmText(Math.abs(ohm))})`;
    const says = phrase`the reading takes a step${size}${inOhm} ${timesText(symptom.count)} without a cause in the heat`;
    return { says, used: [...jumpNames, 'offsetDegC', 'jumpOhm', 'stepOhm', 'sizeOhm', 'seriesOhm'] };
  },
};

const scatterNames = ['scatterDegC', 'spreadDegC', 'noiseDegC'];
const usualNames = ['usualDegC', 'baselineDegC', 'usualSpreadDegC', 'usualScatterDegC'];

/** Noise that has grown. */
export const scatter: Family = {
  id: 'scatter',
  has: (id) => /(scatter|noise|noisy)/.test(id),
  weight: 40,
  say: (symptom) => {
    const nowDegC = factOf(symptom, ...scatterNames);
    const usualDegC = factOf(symptom, ...usualNames);
    const ratio = factOf(symptom, 'ratio', 'growth', 'spreadRatio');
    const now = Number.isNaN(nowDegC) ? plain('') : phrase`: ${difference(nowDegC, 2)}`;
    const usual = Number.isNaN(usualDegC) ? plain('') : phrase`, usually ${difference(usualDegC, 2)}`;
    const times = Number.isNaN(ratio) ? '' : ` (${shortNumber(ratio)} times)`;
    const says = phrase`the reading scatters more than it should${now}${usual}${times}`;
    return { says, used: [...scatterNames, ...usualNames, 'ratio', 'growth', 'spreadRatio'] };
  },
};

/** A reading, a tag or a whole file that does not move. */
export const stuck: Family = {
  id: 'stuck',
  has: (id) => /(stuck|frozen|stale|still)/.test(id) && !/output-stuck/.test(id),
  weight: 70,
  say: ({ detector, count }) => {
    if (/file/.test(detector)) return { says: plain(`the whole recording stands still ${timesText(count)}`), used: [] };
    if (/tag/.test(detector))
      return { says: plain(`reading, set point and output all stand still ${timesText(count)}`), used: [] };
    return { says: plain(`the reading stands still ${timesText(count)} while output or neighbours move`), used: [] };
  },
};

/** Rows that are missing. */
export const gaps: Family = {
  id: 'gaps',
  has: (id) => /(^|-)(gap|gaps|missing)(-|$)/.test(id),
  weight: 10,
  say: ({ count }) => ({ says: plain(`rows are missing ${timesText(count)}`), used: [] }),
};
