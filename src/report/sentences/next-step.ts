import type { Cause } from '../../model/cause.js';
import type { ZoneFinding } from '../../model/findings.js';
import { phraseFromText, plain, type Phrase } from '../text/phrase.js';
import { rankedCauses } from './verdict.js';

/** The first thing to do: the measurement that settles most, else the first one in the list of checks. */
export function firstStep(zone: ZoneFinding): Phrase {
  if (zone.status === 'healthy') return plain('Nothing to do.');
  const named = zone.checks.find(({ id }) => id === zone.nextCheck);
  const says = named?.says ?? zone.nextCheck ?? zone.checks.find(({ kind }) => kind === 'measure')?.says;
  return says
    ? phraseFromText(says)
    : plain('Measure the sensor at its own connector and again at the cabinet, locked out.');
}

/** A cause worth packing for. Our own choice: one in ten. */
const packShare = 0.1;

const packed: Readonly<Record<Cause, readonly string[]>> = {
  sensor: [],
  wiring: ['ferrules, terminals and a spare connector', 'spare cable of the same kind'],
  input: ['a resistor or calibrator of known value for the input'],
  heater: ['heater drawing with its ohms and watts', 'spare fuse'],
  recording: ['a note of what the controller’s own display shows'],
  none: [],
};

/** What to bring, most needed first; common practice, no source. */
export function whatToBring(zone: ZoneFinding): readonly string[] {
  const likely = rankedCauses(zone).filter(([, share]) => share >= packShare);
  const meter = zone.sensor?.startsWith('tc') ? 'meter that shows 0.01 mV' : 'meter that shows 0.1 Ω';
  const parts = likely.flatMap(([cause]) => (cause === 'sensor' ? [spareSensor(zone)] : packed[cause]));
  return ['own lock and tag', meter, 'thermometer for the sensor’s tip', ...parts];
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
