import type { Check } from '../model/check.js';
import type { Zone } from '../model/zone.js';
import { say } from './answer.js';
import { cautionChecks } from './checks-caution.js';
import { measure, outcome } from './check-parts.js';
import { parseWire } from './copper-lead.js';
import { expectedMeasurements } from './expected-measurements.js';
import { assumedRoomDegC } from './measure-plan.js';
import { insulationValue } from './measure-values.js';
import { rtdOhm } from './rtd.js';
import { parseSensorType, sensorIds, sensorTypes } from './sensor-types.js';
import { parseToleranceClass } from './tolerance.js';

/** What log and plant file tell about the place; every key may be left out. */
export interface ZoneSite {
  /** From a cold soak, or as the plant file states it. */
  readonly roomDegC?: number | undefined;
  readonly roomFrom?: 'soak' | 'stated' | undefined;
  readonly setpointDegC?: number | undefined;
  /** "AWG 20", "0.5 mm2"; counts only together with the length, one way. */
  readonly leadGauge?: string | undefined;
  readonly leadLengthM?: number | undefined;
}

/**
 * The measurements for a zone as log and plant file describe it, words and all: `expectedMeasurements` behind the
 * readers for type, class and gauge. A word that is not understood counts as not stated.
 *
 * @returns At least caution, preparation and what can be told without the sensor's type. Never throws.
 */
export function zoneChecks(
  zone: Pick<Zone, 'sensor' | 'wires' | 'toleranceClass'>,
  site: ZoneSite = {},
): readonly Check[] {
  const id = zone.sensor === null ? undefined : parseSensorType(zone.sensor);
  if (!id) return unknownSensorChecks(site);
  const wire = site.leadGauge === undefined ? undefined : parseWire(site.leadGauge);
  return expectedMeasurements(id, {
    toleranceClass: zone.toleranceClass === null ? undefined : parseToleranceClass(zone.toleranceClass),
    wires: zone.wires ?? undefined,
    roomDegC: site.roomDegC,
    roomFrom: site.roomDegC === undefined ? undefined : site.roomFrom,
    setpointDegC: site.setpointDegC,
    lead: wire && site.leadLengthM !== undefined ? { wire, lengthM: site.leadLengthM } : undefined,
  });
}

/** Without the type: tell it by its ohms, then the comparison of both ends, which settles most of it anyway. */
function unknownSensorChecks({ roomDegC, roomFrom }: ZoneSite): readonly Check[] {
  const atDegC = roomDegC ?? assumedRoomDegC;
  return [
    ...cautionChecks(undefined, atDegC, roomDegC === undefined ? 'assumed' : (roomFrom ?? 'stated')),
    {
      ...measure('sensor-type', 'sensor', ['lead to lead']),
      says: 'The sensor’s type is not stated: read its label, or tell it by its ohms.',
      expected: [
        { quantity: 'stated', condition: 'room', atDegC, says: `${typesText(atDegC)}, thermocouple a few ohms` },
      ],
      outcomes: [
        outcome(
          'in-band',
          'It is one of these: the element is good there. Put the type into plant.yaml for closer values.',
          null,
        ),
        outcome('open', 'OL: the sensor is open. Replace it.', 'sensor'),
      ],
      source: 'the tables of each type',
    },
    {
      ...measure('sensor-to-sheath', 'sensor', ['each lead and the sheath']),
      says: 'Measure to metal on the highest range, leads off the input. A grounded thermocouple shows a few ohms there on purpose.',
      expected: [insulationValue],
      outcomes: [
        outcome('in-band', 'OL or more than 100 MΩ: the insulation is good.', null),
        outcome('leaks', 'Less: the sensor is wet or its insulation has failed.', 'sensor'),
      ],
    },
    {
      ...measure('cabinet-element', 'cabinet', ['lead to lead']),
      says: 'Plug the sensor in again and measure the same at the cabinet, leads off the input.',
      expected: [
        {
          quantity: 'stated',
          condition: 'any',
          atDegC: null,
          says: 'what the sensor alone shows, and the ohms of the cable',
        },
      ],
      outcomes: [
        outcome('no-change', 'The same but for the ohms of the cable: the wiring is good, look at the input.', 'input'),
        outcome('open', 'OL here and good at the sensor: a wire or a connector between is open.', 'wiring'),
        outcome('changes', 'It jumps while the cable is moved: a broken strand or a loose terminal.', 'wiring'),
      ],
    },
  ];
}

/** "Pt100 108.2 Ω, Pt500 540.9 Ω …"; the second platinum curve differs too little at room temperature to tell. */
function typesText(atDegC: number): string {
  return sensorIds
    .map((id) => sensorTypes[id])
    .flatMap((sensor) => {
      if (sensor.kind !== 'rtd' || sensor.id.endsWith('-3916')) return [];
      const ohm = rtdOhm(sensor, atDegC);
      return ohm.ok ? [`${sensor.label} ${say(ohm.ohm, 1)} Ω`] : [];
    })
    .join(', ');
}
