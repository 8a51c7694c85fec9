import type { Check } from '../model/check.js';
import { say } from './answer.js';
import { measure, outcome, readingValue } from './check-parts.js';
import type { MeasurePlan } from './measure-plan.js';
import { insulationValue, loopValue, voltageValue } from './measure-values.js';
import type { ThermocoupleSpec } from './sensor-types.js';
import { terminalMv } from './thermocouple.js';

/** A usual industrial thermocouple with its extension stays below this; thin, long wire may have more. Common practice. */
const loopHighOhm = 100;

/** Checks for a thermocouple: continuity, voltage and sign at the sensor, the same at the cabinet, then the input. */
export function thermocoupleChecks(sensor: ThermocoupleSpec, plan: MeasurePlan): readonly Check[] {
  return [
    loop('sensor'),
    voltageAtSensor(sensor, plan),
    sheath('sensor'),
    loop('cabinet'),
    voltageAtCabinet(sensor, plan),
    sheath('cabinet'),
    moving(),
    linkedInput(plan),
    ...knownVoltage(sensor, plan),
  ];
}

function loop(where: 'sensor' | 'cabinet'): Check {
  const cause = where === 'sensor' ? 'sensor' : 'wiring';
  const thing = where === 'sensor' ? 'the thermocouple' : 'a wire or a connector between';
  const again = where === 'sensor' ? '' : 'Plug the sensor in again. ';
  return {
    ...measure(`${where}-loop`, where, ['plus and minus']),
    says: `${again}Measure the ohms of the pair, both ways round, and take the mean: the thermocouple’s own voltage disturbs a meter.`,
    expected: [loopValue(null, 0, loopHighOhm)],
    outcomes: [
      outcome('in-band', 'The pair is whole.', null),
      outcome('open', `OL: ${thing} is open.`, cause),
      outcome('high', 'Much more than before or than its neighbours: a wire is about to break.', cause),
      outcome(
        'changes',
        `It jumps while it is moved: ${where === 'sensor' ? 'the junction or tail is' : 'a contact is'} loose.`,
        cause,
      ),
    ],
  };
}

function voltageAtSensor(sensor: ThermocoupleSpec, plan: MeasurePlan): Check {
  return {
    ...measure('sensor-voltage', 'sensor', ['plus and minus']),
    says: 'Measure millivolts at the sensor’s own connector. With tip and connector equally cold there is next to nothing: warm the tip a little, or measure while the locked-out zone is still hot.',
    expected: plan.states.flatMap((state) => voltageValue(sensor, state, plan.toleranceClass, plan.roomDegC)),
    outcomes: [
      outcome('in-band', 'The thermocouple is good: go on at the cabinet.', null),
      outcome('no-change', 'No voltage with a hot tip: the wires touch, or it is open.', 'sensor'),
      outcome('low', 'Less: it has shifted, or the tip is colder than noted.', 'sensor'),
      outcome('high', 'More: it has shifted, or the tip is hotter than noted.', 'sensor'),
      outcome('reversed', 'Minus with a hot tip: plus and minus are exchanged at the connector.', 'wiring'),
    ],
    source: 'NIST Monograph 175 / SRD 60, ITS-90',
  };
}

function voltageAtCabinet(sensor: ThermocoupleSpec, plan: MeasurePlan): Check {
  return {
    ...measure('cabinet-voltage', 'cabinet', ['plus and minus']),
    says: `Measure millivolts at the cabinet, leads off the input; terminals taken to be at ${say(plan.roomDegC, 1)} °C. The extension wire must be of the thermocouple’s own type all the way.`,
    expected: plan.states.flatMap((state) => voltageValue(sensor, state, plan.toleranceClass, plan.roomDegC)),
    outcomes: [
      outcome('in-band', 'Good at the sensor and here: the wiring is good, look at the input.', 'input'),
      outcome(
        'no-change',
        'No voltage here with a hot tip: the wires touch in the cable; it reads the place of the short.',
        'wiring',
      ),
      outcome(
        'low',
        'Good at the sensor and low here: extension exchanged at both ends, copper in it, or wet cable.',
        'wiring',
      ),
      outcome('reversed', 'Minus with a hot tip: plus and minus are exchanged.', 'wiring'),
    ],
    source: 'NIST Monograph 175 / SRD 60, ITS-90',
  };
}

function sheath(where: 'sensor' | 'cabinet'): Check {
  const atSensor = where === 'sensor';
  return {
    ...measure(`${where}-to-sheath`, where, [
      atSensor ? 'each wire and the sheath' : 'each wire and earth, sensor unplugged at its own connector',
    ]),
    says: atSensor
      ? 'Measure to metal on the highest range. A grounded junction is joined to its sheath on purpose and shows a few ohms: look at the type first.'
      : 'Measure the cable alone to metal on the highest range, leads off the input at both ends.',
    expected: [insulationValue],
    outcomes: [
      outcome('in-band', 'OL or more than 100 MΩ on an insulated junction: good.', null),
      atSensor
        ? outcome('leaks', 'Less on an insulated junction: the sensor is wet or its insulation has failed.', 'sensor')
        : outcome('leaks', 'Less: the cable or a connector is wet or chafed; dry it and measure again.', 'wiring'),
    ],
    source: '100 MΩ as for RTDs (common practice)',
  };
}

function moving(): Check {
  return {
    ...measure('cabinet-moving', 'cabinet', ['plus and minus']),
    says: 'Keep the meter on ohms and move the cable along its run, the connectors and the terminals, by hand and with the machine still locked out.',
    expected: [],
    outcomes: [
      outcome('no-change', 'Nothing moves: the fault is not in what was bent.', null),
      outcome('changes', 'It jumps: the wire or the contact under your hand is the one.', 'wiring'),
    ],
  };
}

function linkedInput({ roomDegC }: MeasurePlan): Check {
  return {
    ...measure('card-linked', 'card', []),
    power: 'live',
    says: 'Link the input’s two terminals with a bit of copper wire and read the controller: it should show the temperature of the terminals. Needs power: authorised people only, heaters kept off.',
    expected: [readingValue(roomDegC)],
    outcomes: [
      outcome('in-band', 'The input and its cold-junction compensation are good.', null),
      outcome('high', 'It shows more: the input is wrong, or the cabinet is warmer than the room.', 'input'),
      outcome('low', 'It shows less: the input or its cold-junction compensation is wrong.', 'input'),
      outcome('no-change', 'The reading does not move at all: the channel is stuck.', 'input'),
    ],
  };
}

/** A millivolt source gives what the junction would give on terminals as warm as the room. Only with a set point to give. */
function knownVoltage(sensor: ThermocoupleSpec, { states, roomDegC }: MeasurePlan): readonly Check[] {
  const expected = states.flatMap(({ condition, atDegC }) => {
    const voltage = terminalMv(sensor.letter, atDegC, roomDegC);
    return condition === 'set-point' && voltage.ok ? [readingValue(atDegC, { appliedMv: voltage.mV })] : [];
  });
  if (expected.length === 0) return [];
  return [
    {
      ...measure('card-known-voltage', 'card', ['plus and minus of the input']),
      power: 'live',
      says: `Feed the millivolts of the set point from a calibrator over copper leads; terminals taken to be at ${say(roomDegC, 1)} °C. Needs power: authorised people only, heaters kept off.`,
      expected,
      outcomes: [
        outcome('in-band', 'The input is good.', null),
        outcome(
          'high',
          'It shows more: the input is wrong, set for another type, or its terminals are warmer than taken.',
          'input',
        ),
        outcome(
          'low',
          'It shows less: the input is wrong, set for another type, or its terminals are colder than taken.',
          'input',
        ),
        outcome('no-change', 'The reading does not move at all: the channel is stuck.', 'input'),
      ],
      source: 'NIST Monograph 175 / SRD 60, ITS-90',
    },
  ];
}
