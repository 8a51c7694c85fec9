import { counted, minutesText, numberText, withUnit } from '../text/numbers.js';
import { difference, phrase, plain } from '../text/phrase.js';
import { always, bySign, longestText, timesText, type Spoken } from './spoken.js';

const heaterDead: Spoken = {
  detector: 'heater-dead',
  speaksFor: ['heater'],
  weight: always(94),
  isOnTrace: true,
  say: (ask, { count }) =>
    phrase`the reading falls ${timesText(count)} although ${heatCalled(ask('outputPercent'))}, to ${difference(ask('belowDegC'), 0)} below the set point${longestText(ask('noHeatMinutes'), 1)}`,
};

/** What shows that the zone should be hot. */
function heatCalled(outputPercent: number): string {
  return Number.isNaN(outputPercent)
    ? 'the other zones of its machine are held hot'
    : `the output is at ${withUnit(outputPercent, '%')}`;
}

const heaterWeak: Spoken = {
  detector: 'heater-weak',
  speaksFor: ['heater'],
  weight: always(92),
  isOnTrace: true,
  say: (ask) => {
    const [ratio, fullMinutes] = [ask('dutyRatio'), ask('fullOutputMinutes')];
    const signs = [
      ...(ratio > 0 ? [plain(`it needs ${numberText(ratio, 2)} times the output it needed before`)] : []),
      ...(fullMinutes > 0
        ? [
            phrase`it stays ${difference(ask('belowDegC'))} below its set point at full output, for ${minutesText(fullMinutes)}`,
          ]
        : []),
    ];
    const said = signs.map((sign, i) => phrase`${i > 0 ? ', and ' : ''}${sign}`).flat();
    return phrase`${said}: part of the heater may be gone`;
  },
};

const outputStuckOn: Spoken = {
  detector: 'output-stuck-on',
  speaksFor: ['heater'],
  weight: always(95),
  isOnTrace: true,
  say: (ask, { count }) =>
    phrase`the reading climbs ${timesText(count)} although the output is zero, to ${difference(ask('largestAboveDegC'), 0)} above the set point${longestText(ask('aboveMinutes'), 1)}`,
};

const heatUp: Spoken = {
  detector: 'heat-up',
  speaksFor: ['heater'],
  weight: always(60),
  isOnTrace: true,
  say: (ask) => {
    const [before, after] = [ask('beforeDegCPerHour'), ask('afterDegCPerHour')];
    return phrase`it heats up ${after < before ? 'slower' : 'faster'} than before: ${difference(after, 0, '/h')} now, ${difference(before, 0, '/h')} earlier`;
  },
};

const coolDown: Spoken = {
  detector: 'cool-down',
  speaksFor: ['heater', 'sensor'],
  weight: always(20),
  isOnTrace: true,
  say: (ask) => {
    const [before, after] = [ask('beforeMinutes'), ask('afterMinutes')];
    return plain(
      `it cools ${after > before ? 'slower' : 'faster'} than before: ${minutesText(after)} for 63\u00A0% of the way, ${minutesText(before)} earlier`,
    );
  },
};

const cardEvents: Spoken = {
  detector: 'card-events',
  speaksFor: ['input'],
  weight: always(95),
  isOnTrace: true,
  say: (ask) => {
    const [own, common] = [ask('ownCount'), ask('sharedCount')];
    const which =
      own === common
        ? own === 1
          ? 'its one loss'
          : `all its ${numberText(own)} losses`
        : `${numberText(common)} of its ${numberText(own)} losses`;
    return plain(
      `${which} of the reading ${common === 1 ? 'comes' : 'come'} at the same moment as those of other zones, ${counted(Math.round(ask('zonesAtOnceCount')), 'zone')} at once`,
    );
  },
};

const alarmsAlone: Spoken = {
  detector: 'alarms-alone',
  speaksFor: ['heater'],
  weight: always(58),
  isOnTrace: true,
  say: (ask) => {
    const signs = (['low', 'high'] as const).filter((side) => ask(`${side}Minutes`) > 0);
    const said = signs.map(
      (side) => `its ${side} alarm stood ${timesText(ask(`${side}Count`))}, for ${minutesText(ask(`${side}Minutes`))}`,
    );
    const share = ask('lowFullOutputShare');
    const atLimit = share > 0.5 ? ', mostly with the output at its limit' : '';
    return plain(`${said.join(' and ')}, while the other zones of the machine had none${atLimit}`);
  },
};

const repairs: Spoken = {
  detector: 'repairs',
  speaksFor: [],
  weight: always(5),
  isOnTrace: true,
  say: (ask) => {
    const minutes = ask('faultMinutes');
    const changeDegC = ask('offsetChangeDegC');
    const who =
      ask('listedCount') > 0 ? 'the maintenance list names a repair' : 'the fault ends as a repair would end it';
    const after = minutes > 0 ? ` after ${minutesText(minutes)} of fault` : '';
    if (Number.isNaN(changeDegC)) return plain(`${who}${after}`);
    return phrase`${who}${after}; cold, it reads ${difference(Math.abs(changeDegC))} ${bySign(changeDegC, 'higher', 'lower')} since`;
  },
};

/** What the heater, several zones together, and repairs say. */
export const machine: readonly Spoken[] = [
  heaterDead,
  heaterWeak,
  outputStuckOn,
  heatUp,
  coolDown,
  cardEvents,
  alarmsAlone,
  repairs,
];
