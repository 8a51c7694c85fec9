import type { Cause } from '../model/cause.js';
import { say } from './answer.js';
import type { Explanation, OffsetQuestion, OffsetReason } from './explanation.js';
import type { ThermocoupleSpec } from './sensor-types.js';
import { emfDegC, emfMv } from './thermocouple.js';
import { reversedAtInput } from './thermocouple-wiring.js';
import { mixUpsThatRead } from './wrong-type.js';

/** A connecting head on a hot machine is seldom hotter than its cabinet by more, or colder by more. Common practice. */
const hotterHeadDegC = 100;
const colderHeadDegC = 10;

/** Ways to account for a thermocouple's offset, sensible ones first, then what does not explain it. */
export function explainThermocouple(sensor: ThermocoupleSpec, question: OffsetQuestion): Explanation[] {
  return [
    ...reversed(sensor, question),
    ...shorted(question),
    ...otherType(sensor, question),
    ...headFaults(sensor, question),
    explanation(
      'element-shifted',
      'sensor',
      'The thermocouple itself may have shifted: compare with a good one in its place.',
    ),
    {
      ...explanation('thermocouple-ignores-ohms', null, 'A thermocouple hardly cares about resistance in series.'),
      sensible: false,
    },
  ];
}

function reversed(sensor: ThermocoupleSpec, question: OffsetQuestion): Explanation[] {
  const { trueDegC, readingDegC, terminalDegC = 25, withinDegC = 2 } = question;
  const turned = reversedAtInput(sensor, trueDegC, terminalDegC);
  if (!turned.ok || Math.abs(turned.readingDegC - readingDegC) > withinDegC) return [];
  const says = `Leads reversed at the input would read ${say(turned.readingDegC, 1)} °C, and fall as the zone heats.`;
  return [explanation('leads-reversed', 'wiring', says)];
}

function shorted({ readingDegC, terminalDegC = 25, withinDegC = 2 }: OffsetQuestion): Explanation[] {
  if (Math.abs(readingDegC - terminalDegC) > withinDegC) return [];
  const says = 'It reads what the terminals have: the wires may touch in the cable, a new junction there.';
  return [explanation('shorted-in-cable', 'wiring', says)];
}

function otherType(sensor: ThermocoupleSpec, question: OffsetQuestion): Explanation[] {
  const { trueDegC, readingDegC, terminalDegC, withinDegC = 2 } = question;
  return mixUpsThatRead(sensor, trueDegC, readingDegC, withinDegC, terminalDegC).map(({ fitted, readingDegC: degC }) =>
    explanation(
      'other-type-fitted',
      'input',
      `${fitted.label} on an input set for type ${sensor.letter} would read ${say(degC, 1)} °C: check the type set on the card.`,
    ),
  );
}

/** Extension exchanged at both ends, or copper in its place, and the head temperature that would be needed. */
function headFaults(sensor: ThermocoupleSpec, question: OffsetQuestion): Explanation[] {
  const swapped = headDegC(sensor, question, 2);
  const copper = headDegC(sensor, question, 1);
  return [
    ...(swapped === undefined
      ? []
      : [
          explanation(
            'extension-swapped',
            'wiring',
            `Extension wire exchanged at both ends would do it with the connecting head at ${say(swapped)} °C.`,
          ),
        ]),
    ...(copper === undefined
      ? []
      : [
          explanation(
            'copper-extension',
            'wiring',
            `Plain copper in place of extension wire would do it with the connecting head at ${say(copper)} °C.`,
          ),
        ]),
  ];
}

/** E(head) = E(terminals) + (E(true) − E(reading)) / times; undefined where no head has that temperature. */
function headDegC(sensor: ThermocoupleSpec, question: OffsetQuestion, times: number): number | undefined {
  const { trueDegC, readingDegC, terminalDegC = 25 } = question;
  const [tip, reading, terminals] = [trueDegC, readingDegC, terminalDegC].map((degC) => emfMv(sensor.letter, degC));
  if (!tip?.ok || !reading?.ok || !terminals?.ok) return undefined;
  const head = emfDegC(sensor.letter, terminals.mV + (tip.mV - reading.mV) / times);
  if (!head.ok) return undefined;
  const hotterDegC = head.degC - terminalDegC;
  const isLikely = hotterDegC <= hotterHeadDegC && hotterDegC >= -colderHeadDegC && head.degC < trueDegC;
  return isLikely ? head.degC : undefined;
}

function explanation(reason: OffsetReason, points: Cause | null, says: string): Explanation {
  return { reason, sensible: true, points, says, ohm: null };
}
