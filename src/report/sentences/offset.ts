import { withUnit } from '../text/numbers.js';
import { difference, level, phrase, plain, signed, type Phrase } from '../text/phrase.js';
import { factOf, type Family } from './family.js';

const slopeNames = ['slopeDegCPerWeek', 'driftDegCPerWeek', 'slopeDegCPerDay', 'driftDegCPerDay'];
const offsetNames = ['offsetDegC', 'soakOffsetDegC', 'lastOffsetDegC', 'changeDegC'];

/** An offset that grows: soaks and duty together. */
export const drift: Family = {
  id: 'drift',
  has: (id) => /drift/.test(id),
  weight: 88,
  isOnTrace: true,
  say: (symptom) => {
    const perDay = factOf(symptom, 'slopeDegCPerDay', 'driftDegCPerDay');
    const perWeek = factOf(symptom, 'slopeDegCPerWeek', 'driftDegCPerWeek');
    const slopeDegC = Number.isNaN(perWeek) ? perDay * 7 : perWeek;
    const slope = Number.isNaN(slopeDegC) ? plain('') : phrase`, by ${signed(slopeDegC, 1, ' a week')}`;
    return { says: phrase`the reading drifts away from the truth${slope}, which the loop hides`, used: slopeNames };
  },
};

/** The cold reading against its neighbours. */
export const soakOffset: Family = {
  id: 'soak-offset',
  has: (id) => /(soak|offset)/.test(id) && !/wash/.test(id),
  weight: 85,
  isOnTrace: true,
  say: (symptom) => {
    const offsetDegC = factOf(symptom, ...offsetNames);
    const sure = factOf(symptom, 'uncertaintyDegC', 'plusMinusDegC');
    const plusMinus: Phrase = Number.isNaN(sure) ? [] : phrase` (± ${difference(sure, 2)})`;
    const says: Phrase = Number.isNaN(offsetDegC)
      ? plain('cold, it reads otherwise than its neighbours')
      : phrase`cold, it reads ${difference(Math.abs(offsetDegC))} ${offsetDegC < 0 ? 'lower' : 'higher'} than its neighbours${plusMinus}`;
    return { says, used: [...offsetNames, 'uncertaintyDegC', 'plusMinusDegC'] };
  },
};

/** A reading that drops faster than heat can leave: the signal is lost, not the heat. */
export const shorted: Family = {
  id: 'shorted',
  has: (id) => /low-shorted/.test(id),
  weight: 86,
  isOnTrace: true,
  say: (symptom) => {
    const at = factOf(symptom, 'readingDegC');
    const size: Phrase = Number.isNaN(at) ? [] : phrase`, near ${level(at)}`;
    return { says: phrase`the reading drops faster than a body can cool and stays low${size}`, used: ['readingDegC'] };
  },
};

/** The hot reading away from where it belongs: from its set point, or from its peers where no output is logged. */
export const away: Family = {
  id: 'away',
  has: (id) => /(deviation|peer-residual)/.test(id),
  weight: 60,
  isOnTrace: true,
  say: (symptom) => {
    const degC = factOf(symptom, 'deviationDegC', 'largestDegC', 'residualDegC');
    const from = /peer/.test(symptom.detector) ? 'what its neighbours say' : 'its set point';
    const size: Phrase = Number.isNaN(degC) ? [] : phrase`, by ${signed(degC)}`;
    return {
      says: phrase`the reading stays away from ${from}${size}`,
      used: ['deviationDegC', 'largestDegC', 'residualDegC'],
    };
  },
};

/** The output at rest against what the zone should need. */
export const duty: Family = {
  id: 'duty',
  has: (id) => /duty/.test(id),
  weight: 65,
  isOnTrace: true,
  say: (symptom) => {
    const percent = factOf(symptom, 'residualPercent', 'dutyResidualPercent', 'changePercent', 'dutyChangePercent');
    const degC = factOf(symptom, 'residualDegC', 'dutyResidualDegC');
    const size = Number.isNaN(percent) ? '' : `${withUnit(Math.abs(percent), '%', 1)} `;
    const amount = percent < 0 ? 'less' : 'more';
    const asDegC: Phrase = Number.isNaN(degC) ? [] : phrase`, as a reading off by ${signed(degC)} would`;
    const says = Number.isNaN(percent)
      ? phrase`it needs another output than its history and neighbours say${asDegC}`
      : phrase`it needs ${size}${amount} output than its history and neighbours say${asDegC}`;
    return {
      says,
      used: [
        'residualPercent',
        'dutyResidualPercent',
        'changePercent',
        'dutyChangePercent',
        'residualDegC',
        'dutyResidualDegC',
      ],
    };
  },
};

/** Wet terminals: low after wash-down, better hour by hour. */
export const washDown: Family = {
  id: 'wash-down',
  has: (id) => /(wash|wet|moist)/.test(id),
  weight: 87,
  isOnTrace: true,
  say: (symptom) => {
    const lowDegC = factOf(symptom, 'depthDegC', 'lowByDegC', 'dipDegC', 'dropDegC');
    const by = Number.isNaN(lowDegC) ? plain('') : phrase` by ${difference(Math.abs(lowDegC))}`;
    const says = phrase`it reads low${by} after wash-down and recovers as it dries`;
    return { says, used: ['depthDegC', 'lowByDegC', 'dipDegC', 'dropDegC'] };
  },
};
