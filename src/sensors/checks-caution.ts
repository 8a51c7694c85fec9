import type { Check } from '../model/check.js';
import { say } from './answer.js';
import type { SensorSpec } from './sensor-types.js';

/** The caution that comes before every measurement, in one place so that card and report say the same. */
const lockoutCaution =
  'Authorised people only. Lock out and tag the machine by the site’s own procedure and prove it dead before opening ' +
  'anything; heater terminals may be live and the zone hot enough to burn. Never defeat an interlock. Local codes decide.';

/** The same for a card with one screen. */
export const shortCaution =
  'Authorised people only: lock out, tag, prove dead; hot parts burn; never defeat an interlock; local codes decide.';

const roomTexts = {
  soak: 'as the log shows it in a cold soak',
  stated: 'as given',
  assumed: 'assumed, since nothing in the log tells it',
} as const;

/** Lockout first, then how to prepare so that the numbers below hold. */
export function cautionChecks(
  sensor: SensorSpec | undefined,
  roomDegC: number,
  roomFrom: 'soak' | 'stated' | 'assumed',
): readonly Check[] {
  return [
    {
      id: 'lockout',
      kind: 'caution',
      where: 'machine',
      power: 'locked-out',
      between: [],
      says: lockoutCaution,
      expected: [],
      outcomes: [],
      source: '29 CFR 1910.147(d) for the order of steps; the rest common practice',
    },
    {
      id: 'prepare',
      kind: 'prepare',
      where: 'machine',
      power: 'locked-out',
      between: [],
      says: `${prepareText(sensor?.kind)} Room ${say(roomDegC, 1)} °C, ${roomTexts[roomFrom]}.`,
      expected: [],
      outcomes: [],
      source: 'common practice',
    },
  ];
}

function prepareText(kind: SensorSpec['kind'] | undefined): string {
  if (kind === 'current') return 'Note the zone’s temperature with a good thermometer.';
  const meter =
    kind !== 'thermocouple' ? 'Hold the meter’s tips together and take what it shows off every value. ' : '';
  return `${meter}Unplug the sensor at its own connector and at the input, so that nothing else is in the circuit. Note the tip’s temperature with a good thermometer.`;
}
