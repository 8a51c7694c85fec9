import { counted, minutesText, withUnit } from '../text/numbers.js';
import { difference, level, phrase, type Phrase } from '../text/phrase.js';
import { always, bySign, longestText, timesText, type Spoken } from './spoken.js';

/** Changes below this are within what soaks differ by; naming them would only confuse. Common practice. */
const worthNamingDegC = 0.2;

const coldSoakOffset: Spoken = {
  detector: 'cold-soak-offset',
  speaksFor: ['sensor', 'wiring', 'input'],
  weight: always(70),
  isOnTrace: true,
  say: (ask) => {
    const offsetDegC = ask('offsetDegC');
    const changeDegC = ask('changeDegC');
    const change: Phrase =
      Math.abs(changeDegC) >= worthNamingDegC
        ? phrase`, ${difference(Math.abs(changeDegC))} ${bySign(changeDegC, 'more', 'less')} than at first`
        : [];
    return phrase`in the last cold soaks it reads ${difference(Math.abs(offsetDegC))} ${bySign(offsetDegC, 'above', 'below')} its neighbours (± ${difference(ask('uncertaintyDegC'), 2)})${change}`;
  },
};

const dutyShift: Spoken = {
  detector: 'duty-shift',
  speaksFor: ['sensor', 'wiring', 'input'],
  weight: always(65),
  isOnTrace: true,
  say: (ask) => {
    // Its size in degrees stands with the zone's reading error: one number there, not one from every method.
    const percent = ask('residualPercent');
    return phrase`it needs ${withUnit(Math.abs(percent), '% of full output', 1)} ${bySign(percent, 'more', 'less')} than its past and its neighbours say`;
  },
};

const slowDrift: Spoken = {
  detector: 'slow-drift',
  speaksFor: ['sensor'],
  weight: always(88),
  isOnTrace: true,
  say: (ask) => {
    ask('powerRatio'); // the shape of the ramp: for other programs
    const offsetDegC = ask('offsetDegC');
    const perWeekDegC = 7 * ask('slopeDegCPerDay');
    const slope: Phrase = Number.isNaN(perWeekDegC) ? [] : phrase`, by ${difference(Math.abs(perWeekDegC))} a week`;
    return phrase`the reading drifts${slope}, and is ${difference(Math.abs(offsetDegC))} ${bySign(offsetDegC, 'above', 'below')} the truth at the end; the loop hides it`;
  },
};

const offsetStep: Spoken = {
  detector: 'offset-step',
  speaksFor: ['sensor', 'wiring', 'input'],
  weight: always(87),
  isOnTrace: true,
  say: (ask) => {
    const offsetDegC = ask('offsetDegC');
    return phrase`since one moment it reads ${difference(Math.abs(offsetDegC))} too ${bySign(offsetDegC, 'high', 'low')} (± ${difference(ask('uncertaintyDegC'))}), which the loop hides`;
  },
};

const lastingStep: Spoken = {
  detector: 'lasting-step',
  speaksFor: ['sensor', 'wiring', 'input'],
  weight: always(86),
  isOnTrace: true,
  say: (ask) => {
    const offsetDegC = ask('offsetDegC');
    const others = ask('togetherCount');
    const together = others > 0 ? phrase`, with ${counted(others, 'other zone')} in the same moment` : [];
    const dutyDegC = Math.abs(ask('hotOffsetDegC'));
    const duty = Number.isNaN(dutyDegC) ? [] : phrase`; its duty since then says ${difference(dutyDegC)}`;
    return phrase`the reading jumps ${difference(Math.abs(offsetDegC))} ${bySign(offsetDegC, 'up', 'down')} in one moment${together} and no jump takes it back: the loop holds a wrong reading since${duty}`;
  },
};

const cardOffset: Spoken = {
  detector: 'card-offset',
  speaksFor: ['input'],
  weight: always(92),
  isOnTrace: true,
  say: (ask) => {
    const offsetDegC = ask('offsetDegC');
    const zones = counted(ask('zoneCount'), 'zone');
    const moved = phrase`read ${difference(Math.abs(offsetDegC))} ${bySign(offsetDegC, 'higher', 'lower')} than all others, together`;
    return ask('isStatedCount') === 1
      ? phrase`the ${zones} of its input card ${moved}`
      : phrase`${zones} of the machine ${moved}, as those of one input card do`;
  },
};

const deviationFromSetpoint: Spoken = {
  detector: 'deviation-from-setpoint',
  speaksFor: ['heater', 'sensor', 'wiring', 'input'],
  weight: always(55),
  isOnTrace: true,
  say: (ask) => {
    const [degC, outputPercent] = [ask('deviationDegC'), ask('outputPercent')];
    const output = Number.isNaN(outputPercent) ? '' : `, with the output at ${withUnit(outputPercent, '%')}`;
    return phrase`the reading stays ${difference(Math.abs(degC))} ${bySign(degC, 'above', 'below')} its set point for ${minutesText(ask('deviationMinutes'))}${output}`;
  },
};

const peerResidual: Spoken = {
  detector: 'peer-residual',
  speaksFor: ['heater', 'sensor', 'wiring', 'input'],
  weight: always(58),
  isOnTrace: true,
  say: (ask) => {
    const degC = ask('residualDegC');
    return phrase`the reading stays ${difference(Math.abs(degC))} ${bySign(degC, 'above', 'below')} what its neighbours say, for ${minutesText(ask('awayMinutes'))}`;
  },
};

const readingLowShorted: Spoken = {
  detector: 'reading-low-shorted',
  speaksFor: ['wiring', 'sensor'],
  weight: always(94),
  isOnTrace: true,
  say: (ask, { count }) => {
    const [reading, lasts] = [level(ask('readingDegC')), longestText(ask('lowMinutes'), 1)];
    if (!Number.isNaN(ask('fallRatio')))
      return phrase`faster than a body can cool, the reading drops ${timesText(count)} to ${reading}${lasts}`;
    const times = count > 1 ? ` ${timesText(count)}` : '';
    return phrase`the reading lies at ${reading}${times}${lasts} while the zone is heated, and comes back at once to ${level(ask('backAtDegC'))}`;
  },
};

const readingMirrored: Spoken = {
  detector: 'reading-mirrored',
  speaksFor: ['wiring'],
  weight: always(95),
  isOnTrace: true,
  say: (ask) =>
    phrase`the reading sinks to ${level(ask('lowestDegC'))}, ${difference(ask('belowRoomDegC'))} below the room, while the zone is heated, as a thermocouple with swapped leads does`,
};

const wetRecovery: Spoken = {
  detector: 'wet-recovery',
  speaksFor: ['wiring'],
  weight: always(93),
  isOnTrace: true,
  say: (ask) => {
    const [hotDegC, coldDegC] = [ask('hotDepthDegC'), ask('coldDepthDegC')];
    const depths = [
      ...(Number.isNaN(hotDegC) ? [] : [phrase`${difference(Math.abs(hotDegC))} hot`]),
      ...(Number.isNaN(coldDegC) ? [] : [phrase`${difference(Math.abs(coldDegC))} cold`]),
    ];
    const by = depths.map((depth, i) => phrase`${i === 0 ? 'by ' : ' and '}${depth}`).flat();
    const washDowns = ask('washDownCount');
    const when = washDowns > 0 ? `after each of ${counted(washDowns, 'wash-down')}` : 'at once';
    return phrase`it falls low ${when}, ${by}, and comes back over some ${minutesText(60 * ask('recoveryHours'))}, as wet terminals do`;
  },
};

/** What readings say that are away from where they belong. */
export const offset: readonly Spoken[] = [
  coldSoakOffset,
  dutyShift,
  slowDrift,
  offsetStep,
  lastingStep,
  cardOffset,
  deviationFromSetpoint,
  peerResidual,
  readingLowShorted,
  readingMirrored,
  wetRecovery,
];
