import type { Cause } from '../../model/cause.js';
import type { Check, ExpectedValue } from '../../model/check.js';
import type { ZoneFinding } from '../../model/findings.js';
import { numberText, withUnit } from '../text/numbers.js';
import { phrase, phraseFromText, plain, type Phrase } from '../text/phrase.js';
import { conditionText, expectedText } from './expected.js';
import { heatWarning } from './unchecked-heat.js';
import { rankedCauses } from './verdict.js';

/** What each first measurement compares with, and what its "yes" points to. Ids as in the findings. */
const answers: Readonly<Record<string, { readonly where?: Check['where']; readonly yes: string }>> = {
  'reading-on-controller': { yes: 'machine and wiring are as the log says; No: the recording' },
  'both-ends': { where: 'sensor', yes: 'the sensor; No: the wiring or the input card' },
  'move-the-cable': { where: 'cabinet', yes: 'the wiring' },
  'swap-inputs': { yes: 'the input card; No: the sensor or its wiring' },
  'reference-thermometer': { where: 'sensor', yes: 'the sensor, its wiring or the input; No: not the reading' },
  'heater-circuit': { where: 'heater', yes: 'the heater' },
  'heater-switch': { yes: 'it is welded or shorted; No: what commands it' },
  'warm-up-with-meter': { where: 'cabinet', yes: 'the sensor' },
  'ask-about-sensor': { yes: 'it was the sensor; note it with "looselead record"' },
  'ask-about-wiring': { yes: 'it was the wiring; note it with "looselead record"' },
  'ask-about-heater': { yes: 'it was the heater; note it with "looselead record"' },
};

/** The first thing to do with the values to expect: for a page on which it stands by itself. */
export function firstStep(zone: ZoneFinding): Phrase {
  const where = answers[zone.nextCheckId ?? '']?.where;
  const isJudged = zone.status !== 'healthy' && zone.status !== 'insufficient-data';
  return !isJudged || !where ? firstTask(zone) : phrase`${firstTask(zone)}${goodValue(zone, where)}`;
}

/** The measurement that settles most and what its answer means; the values stand elsewhere. */
export function firstTask(zone: ZoneFinding): Phrase {
  if (zone.status === 'healthy') return plain('Nothing to do.');
  if (zone.status === 'insufficient-data')
    return plain(
      'Look at the controller’s own display and at the recorder: why does the log hold so little of this zone?',
    );
  const measure = zone.checks.find(({ kind }) => kind === 'measure');
  const says = zone.nextCheck ?? (measure && withPower(measure));
  const answer = answers[zone.nextCheckId ?? ''];
  const to = says ?? 'Measure the sensor at its own connector and again at the cabinet, locked out.';
  const yes = answer && to.endsWith('?') ? ` Yes: ${answer.yes}.` : '';
  const warning = heatWarning(zone);
  return phrase`${warning}${warning && ' '}${phraseFromText(to)}${yes}`;
}

/** In a list a step's power stands beside it; alone it must say it itself. */
function withPower({ power, says }: Check): string {
  if (/authorised|lock/i.test(says)) return says;
  const state = power === 'live' ? 'Power on, authorised people only' : 'Locked out';
  return `${state}: ${says.charAt(0).toLowerCase()}${says.slice(1)}`;
}

/** "Good: 107.1 Ω (106.2 to 108.1) cold, at 18.3 °C; the log makes one expect 104.8 Ω." */
function goodValue(zone: ZoneFinding, where: Check['where']): Phrase {
  const check = zone.checks.find((one) => one.kind === 'measure' && one.where === where && one.expected.length > 0);
  const value = check?.expected.find(({ condition }) => condition === 'room') ?? check?.expected[0];
  if (!check || !value) return [];
  const pair = pairText(check.between[0]);
  const condition = conditionText(value);
  return phrase` Good${pair}: ${expectedText(value)}${condition.length > 0 ? ' ' : ''}${condition}${drifted(zone, value)}.`;
}

/** " between plus and minus", ", lead to lead". */
function pairText(pair = ''): string {
  if (pair === '') return '';
  return / and /.test(pair) ? ` between ${pair}` : `, ${pair}`;
}

/** "By the log it is near 104.8 Ω there, cold.": what a meter at the sensor will show of a drift; '' where it shows none. */
export function driftedText(zone: ZoneFinding): string {
  const values = zone.checks.find(({ kind, where }) => kind === 'measure' && where === 'sensor')?.expected ?? [];
  const value = values.find(({ condition }) => condition === 'room');
  const near = value === undefined ? '' : drifted(zone, value);
  return near === '' ? '' : `B${near.slice(3)} there, cold.`;
}

/** What the meter shows when the sensor reads as the last cold soak says; only where that leaves the limits. */
function drifted({ soaks }: ZoneFinding, value: ExpectedValue): string {
  const offsetDegC = soaks.at(-1)?.offsetDegC;
  if (offsetDegC === undefined || value.condition !== 'room') return '';
  if (value.quantity === 'resistance' && value.ohmPerDegC !== null && value.expectedOhm !== null) {
    const ohm = value.expectedOhm + offsetDegC * value.ohmPerDegC;
    const isInside = ohm >= (value.lowOhm ?? -Infinity) && ohm <= (value.highOhm ?? Infinity);
    return isInside ? '' : `; by the log it is near ${withUnit(ohm, 'Ω', 1)}`;
  }
  if (value.quantity === 'voltage') {
    const mv = value.expectedMv + offsetDegC * value.mvPerDegC;
    const isInside = mv >= (value.lowMv ?? -Infinity) && mv <= (value.highMv ?? Infinity);
    return isInside ? '' : `; by the log it is near ${numberText(mv, 2)}\u00A0mV`;
  }
  return '';
}

/** A cause worth packing for. Our own choice: one in ten. */
const packShare = 0.1;

const packed: Readonly<Record<Cause, readonly string[]>> = {
  sensor: [],
  wiring: ['ferrules, terminals and a spare connector', 'spare cable of the same kind'],
  input: [],
  heater: ['true-RMS clamp meter', 'insulation tester', 'spare fuse and relay of the same rating'],
  recording: ['a note of what the controller’s own display shows'],
  none: [],
};

/** What to bring, most needed first; common practice, no source. */
export function whatToBring(zone: ZoneFinding): readonly string[] {
  const likely = rankedCauses(zone).filter(([, share]) => share >= packShare);
  const meter = zone.sensor?.startsWith('tc') ? 'meter that shows 0.01 mV' : 'meter that shows 0.1 Ω';
  const special: Partial<Record<Cause, string>> = { sensor: spareSensor(zone), input: knownSignal(zone) };
  const parts = likely.flatMap(([cause]) => special[cause] ?? packed[cause]);
  return ['own lock and tag', meter, 'thermometer for the sensor’s tip', ...parts];
}

/** What is put on the input to try it, with the values that the checks hold. */
function knownSignal({ checks }: ZoneFinding): string {
  const values = checks.flatMap(({ expected }) =>
    expected.flatMap((value) => {
      if (value.quantity !== 'reading') return [];
      if (value.appliedOhm !== undefined) return [withUnit(value.appliedOhm, 'Ω', 1)];
      return value.appliedMv === undefined ? [] : [withUnit(value.appliedMv, 'mV', 2)];
    }),
  );
  return `calibrator${values.length === 0 ? ' or resistor of known value' : `, or what gives ${values.join(' and ')},`} for the input`;
}

function spareSensor({ sensor, wires }: ZoneFinding): string {
  const type = sensor ? sensorName(sensor) : 'same type as fitted: not known here';
  return `spare sensor (${type}${wires ? `, ${wires} wires` : ''})`;
}

/** Sensor ids as the trade writes them: pt100 → Pt100, tc-k → type K thermocouple. */
export function sensorName(id: string): string {
  const letter = /^tc-([a-z])$/i.exec(id)?.[1];
  if (letter) return `type ${letter.toUpperCase()} thermocouple`;
  return /^[a-z]{2}\d/.test(id) ? id.charAt(0).toUpperCase() + id.slice(1) : id;
}
