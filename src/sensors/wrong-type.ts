import { refused, type Answer } from './answer.js';
import { readThroughWiring } from './rtd-wiring.js';
import { sensorIds, sensorTypes, type SensorSpec } from './sensor-types.js';
import { thermocoupleReadAs } from './thermocouple-wiring.js';

export interface MistakenReading {
  readonly readingDegC: number;
  readonly offsetDegC: number;
}

/**
 * What an input set for `card` shows for a `sensor` at a true temperature.
 *
 * @param terminalDegC Temperature of the input's terminals; matters for thermocouples only.
 * @returns reading and offset in °C; refused when the card goes off its scale, or when the two are of different kinds
 *   (an input for ohms shows a thermocouple as a short, an input for mV shows an RTD as near its terminals).
 */
export function readAsOtherType(
  sensor: SensorSpec,
  card: SensorSpec,
  trueDegC: number,
  terminalDegC = 25,
): Answer<MistakenReading> {
  if (sensor.kind === 'rtd' && card.kind === 'rtd') return readThroughWiring(sensor, trueDegC, { wires: 4 }, card);
  if (sensor.kind === 'thermocouple' && card.kind === 'thermocouple') {
    return thermocoupleReadAs(sensor, card, trueDegC, terminalDegC);
  }
  return refused('no-class', `An input for ${card.label} cannot read ${sensor.label} at all.`);
}

/**
 * The mix-ups of sensor and card that would turn `trueDegC` into `readingDegC`.
 *
 * @param card What the log's values were made with.
 * @param withinDegC How near a prediction must come to count.
 * @returns Sensor types that may be fitted in place of the card's own, nearest first; empty when none fits.
 */
export function mixUpsThatRead(
  card: SensorSpec,
  trueDegC: number,
  readingDegC: number,
  withinDegC: number,
  terminalDegC = 25,
): readonly { readonly fitted: SensorSpec; readonly readingDegC: number }[] {
  return sensorIds
    .map((id) => sensorTypes[id])
    .filter((fitted) => fitted.id !== card.id)
    .map((fitted) => ({ fitted, seen: readAsOtherType(fitted, card, trueDegC, terminalDegC) }))
    .flatMap(({ fitted, seen }) => (seen.ok ? [{ fitted, readingDegC: seen.readingDegC }] : []))
    .filter((mixUp) => Math.abs(mixUp.readingDegC - readingDegC) <= withinDegC)
    .sort((a, b) => Math.abs(a.readingDegC - readingDegC) - Math.abs(b.readingDegC - readingDegC));
}
