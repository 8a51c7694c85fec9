import type { Check, ExpectedValue } from '../model/check.js';
import { say } from './answer.js';
import { measure, outcome, readingValue, unevenLeadOhm } from './check-parts.js';
import { elementValue, insulationValue, loopValue } from './measure-values.js';
import type { MeasurePlan } from './measure-plan.js';
import { rtdOhm } from './rtd.js';
import type { Wires } from './rtd-wiring.js';
import type { RtdSpec } from './sensor-types.js';

/** Pairs of leads by wire count. Lead numbers: 3 wires 1 | 2 3, 4 wires 1 2 | 3 4, one side for each end. */
const leadPairs: Readonly<Record<Wires, { readonly across: readonly string[]; readonly sameEnd: readonly string[] }>> =
  {
    2: { across: ['1 and 2'], sameEnd: [] },
    3: { across: ['1 and 2', '1 and 3'], sameEnd: ['2 and 3'] },
    4: { across: ['1 and 3', '1 and 4', '2 and 3', '2 and 4'], sameEnd: ['1 and 2', '3 and 4'] },
  };

/** A flying lead at the sensor is short: more than this in a pair of one end is a bad joint. Common practice. */
const tailHighOhm = 2;

/** Checks for an RTD: element, leads and insulation at the sensor, the same at the cabinet, then the input. */
export function rtdChecks(sensor: RtdSpec, plan: MeasurePlan): readonly Check[] {
  const hasPairs = plan.wires > 2;
  return [
    sensorElement(sensor, plan),
    ...(hasPairs ? [sensorSameEnd(plan.wires)] : []),
    sheath('sensor'),
    cabinetElement(sensor, plan),
    hasPairs ? cabinetSameEnd(plan) : cableLoop(plan),
    sheath('cabinet'),
    wiggle(plan.wires),
    knownResistor(sensor, plan),
  ];
}

function sensorElement(sensor: RtdSpec, plan: MeasurePlan): Check {
  return {
    ...measure('sensor-element', 'sensor', leadPairs[plan.wires].across),
    says: `Measure the element at the sensor’s own connector, ${leadsText(plan.wires)}${hotText(plan)}.`,
    expected: plan.states.flatMap((state) => elementValue(sensor, state, plan.toleranceClass, 0)),
    outcomes: [
      outcome('in-band', 'The element is good there: go on at the cabinet.', null),
      outcome('open', 'OL: the element or its tail is open. Replace the sensor.', 'sensor'),
      outcome('short', 'Near 0 Ω: the element or its tail is shorted. Replace the sensor.', 'sensor'),
      outcome(
        'high',
        'More: the element has shifted, its tail has a bad joint, or the tip is warmer than noted.',
        'sensor',
      ),
      outcome(
        'low',
        'Less: the element has shifted, moisture lies across it, or the tip is colder than noted.',
        'sensor',
      ),
      outcome('changes', 'It jumps while the tail is moved: the sensor’s own joint is loose.', 'sensor'),
    ],
    source: sensor.curve.source,
  };
}

function sensorSameEnd(wires: Wires): Check {
  return {
    ...measure('sensor-same-end', 'sensor', leadPairs[wires].sameEnd),
    says: 'Measure the leads that belong to the same end of the element.',
    expected: [loopValue(null, 0, tailHighOhm)],
    outcomes: [
      outcome('in-band', 'The tail is good.', null),
      outcome('open', 'OL: one lead of the tail is broken.', 'sensor'),
      outcome('high', 'More: a joint in the tail is bad.', 'sensor'),
    ],
  };
}

function cabinetElement(sensor: RtdSpec, plan: MeasurePlan): Check {
  const cableOhm = plan.leadOhm === null ? null : 2 * plan.leadOhm;
  const cable =
    cableOhm === null
      ? 'Add the ohms of the two leads in the cable, from the next check.'
      : `${say(cableOhm, 2)} Ω of cable is in these values.`;
  return {
    ...measure('cabinet-element', 'cabinet', leadPairs[plan.wires].across),
    says: `Plug the sensor in again and measure the same pairs at the cabinet, leads off the input. ${cable}`,
    expected: plan.states.flatMap((state) => elementValue(sensor, state, plan.toleranceClass, cableOhm)),
    outcomes: [
      outcome('in-band', 'Good at the sensor and here: the wiring is good, look at the input.', 'input'),
      outcome('open', 'OL here and good at the sensor: a wire or a connector between is open.', 'wiring'),
      outcome('short', 'Near 0 Ω here and good at the sensor: the cable is shorted.', 'wiring'),
      outcome('high', 'More here than the cable explains: a loose or corroded contact between.', 'wiring'),
      outcome('low', 'Less here than at the sensor: wet terminals or failed insulation between.', 'wiring'),
      outcome('changes', 'It jumps while the cable is moved: a broken strand or a loose terminal.', 'wiring'),
    ],
    source: plan.leadOhm === null ? sensor.curve.source : `${sensor.curve.source}; copper by IEC 60028 and ASTM B258`,
  };
}

function cabinetSameEnd(plan: MeasurePlan): Check {
  return {
    ...measure('cabinet-same-end', 'cabinet', leadPairs[plan.wires].sameEnd),
    says: 'Measure the leads that belong to the same end: the ohms of two leads of the cable.',
    expected: [cableValue(plan)],
    outcomes: [
      outcome('in-band', 'These two leads are good.', null),
      outcome('open', 'OL: one of these leads is open; the reading jumps to an end of its scale.', 'wiring'),
      outcome('high', 'More than the cable explains: one of these leads has a bad contact.', 'wiring'),
      ...(plan.wires === 3
        ? [
            outcome(
              'uneven',
              `Take 1 and 2 less 1 and 3: more than ${unevenLeadOhm} Ω apart, lead 2 or 3 has a bad contact; in lead 2 it makes the reading low.`,
              'wiring' as const,
            ),
          ]
        : []),
    ],
  };
}

function cableLoop(plan: MeasurePlan): Check {
  return {
    ...measure('cabinet-cable-loop', 'cabinet', ['1 and 2']),
    says: 'With the sensor unplugged, link the two leads at its connector and measure the cable alone: with 2 wires all of it adds to the reading.',
    expected: [cableValue(plan)],
    outcomes: [
      outcome('in-band', 'The cable is good.', null),
      outcome('open', 'OL: a lead of the cable is open.', 'wiring'),
      outcome(
        'high',
        'More than the cable explains: a contact in it is loose or corroded; the reading is too high by it.',
        'wiring',
      ),
    ],
  };
}

function sheath(where: 'sensor' | 'cabinet'): Check {
  const points = where;
  const cause = points === 'sensor' ? 'sensor' : 'wiring';
  const bad = cause === 'sensor' ? 'the sensor is wet or its insulation has failed' : 'the cable is wet or chafed';
  return {
    ...measure(`${where}-to-sheath`, where, [
      where === 'sensor' ? 'each lead and the sheath' : 'each lead and the shield or earth',
    ]),
    says: 'Measure to metal on the highest range. Use an insulation tester only with the leads off the input: its voltage would destroy it.',
    expected: [insulationValue],
    outcomes: [
      outcome('in-band', 'OL or more than 100 MΩ: the insulation is good.', null),
      outcome('leaks', `Less: ${bad}; dry it, measure again, and look whether the reading was low.`, cause),
    ],
    source: 'IEC 60751:2008 6.3.1, 100 MΩ at ambient (from memory; trade texts agree)',
  };
}

function wiggle(wires: Wires): Check {
  return {
    ...measure('cabinet-moving', 'cabinet', leadPairs[wires].across.slice(0, 1)),
    says: 'Keep the meter on and move the cable along its run, the connectors and the terminals, by hand and with the machine still locked out.',
    expected: [],
    outcomes: [
      outcome('no-change', 'Nothing moves: the fault is not in what was bent.', null),
      outcome('changes', 'It jumps: the wire or the contact under your hand is the one.', 'wiring'),
    ],
  };
}

function knownResistor(sensor: RtdSpec, { states, wires }: MeasurePlan): Check {
  const known = states.flatMap(({ atDegC }) => {
    const element = rtdOhm(sensor, atDegC);
    return element.ok ? [{ atDegC, ohm: element.ohm }] : [];
  });
  const values = known.map(({ ohm }) => `${say(ohm, 1)} Ω`).join(', then of ') || 'known ohms';
  return {
    ...measure('card-known-resistor', 'card', []),
    power: 'live',
    says: `Put a resistor of ${values} on the input in place of the sensor${linkText(wires)} and read the controller. Needs power: authorised people only, heaters kept off.`,
    expected: known.map(({ atDegC, ohm }) => readingValue(atDegC, { appliedOhm: ohm })),
    outcomes: [
      outcome('in-band', 'The input is good.', null),
      outcome('high', 'It shows more: the input is wrong, or set for another type or curve.', 'input'),
      outcome('low', 'It shows less: the input is wrong, or set for another type or curve.', 'input'),
      outcome('no-change', 'The reading does not move at all: the channel is stuck.', 'input'),
    ],
    source: sensor.curve.source,
  };
}

function cableValue({ leadOhm }: MeasurePlan): ExpectedValue {
  if (leadOhm === null) return loopValue(null, 0, null);
  return loopValue(2 * leadOhm, 0, 2 * leadOhm + unevenLeadOhm);
}

/** Values for the set point are only met while the locked-out zone has not cooled down. */
function hotText({ states }: MeasurePlan): string {
  return states.length > 1 ? '; for the hot value while the locked-out zone is still at its set point' : '';
}

function leadsText(wires: Wires): string {
  if (wires === 2) return 'lead to lead';
  return wires === 3
    ? 'from lead 1 (the single one) to each of the pair 2 and 3'
    : 'from each of the pair 1 and 2 to each of 3 and 4';
}

function linkText(wires: Wires): string {
  if (wires === 2) return '';
  return wires === 3 ? ', terminals 2 and 3 linked' : ', terminals 1 and 2 linked and 3 and 4 linked';
}
