import type { Check, ExpectedValue } from '../model/check.js';
import { measure, outcome } from './check-parts.js';
import { currentMa, namurLimits, type CurrentSpan } from './current-loop.js';
import type { MeasurePlan } from './measure-plan.js';
import type { MeasureState } from './measure-values.js';

/** A good transmitter with its sensor comes within this of the span. Common practice. */
const bandOfSpan = 0.01;

/** Checks for a 4–20 mA transmitter: the loop current, then a known current into the input. Both need power. */
export function currentChecks(plan: MeasurePlan): readonly Check[] {
  return [loopCurrent(plan), knownCurrent(plan)];
}

function loopCurrent({ states, span }: MeasurePlan): Check {
  return {
    ...measure('cabinet-loop-current', 'cabinet', ['in series with the loop']),
    power: 'live',
    says: 'Measure the loop current. Needs power: authorised people only, heaters kept off.',
    expected: span ? states.flatMap((state) => currentValue(state, span)) : [measuringRange()],
    outcomes: [
      outcome('in-band', 'Sensor, transmitter and wiring are good: look at the input and its span.', 'input'),
      outcome('open', 'No current at all: the loop is open or has no supply.', 'wiring'),
      outcome('low', '3.6 mA or less: the transmitter signals a failed sensor (NAMUR NE 43).', 'sensor'),
      outcome('high', '21 mA or more: the transmitter signals a failed sensor (NAMUR NE 43).', 'sensor'),
    ],
    source: 'NAMUR NE 43',
  };
}

function knownCurrent({ span }: MeasurePlan): Check {
  const middleDegC = span ? (span.lowDegC + span.highDegC) / 2 : NaN;
  const band = span ? Math.abs(span.highDegC - span.lowDegC) * bandOfSpan : NaN;
  return {
    ...measure('card-known-current', 'card', []),
    power: 'live',
    says: 'Feed 12 mA into the input in place of the loop and read the controller: it should show the middle of its span. Needs power: authorised people only, heaters kept off.',
    expected: span
      ? [
          {
            quantity: 'reading',
            condition: 'any',
            atDegC: null,
            expectedDegC: middleDegC,
            lowDegC: middleDegC - band,
            highDegC: middleDegC + band,
          },
        ]
      : [],
    outcomes: [
      outcome('in-band', 'The input is good.', null),
      outcome('high', 'It shows more: the input is wrong, or its span is not that of the transmitter.', 'input'),
      outcome('low', 'It shows less: the input is wrong, or its span is not that of the transmitter.', 'input'),
    ],
  };
}

function currentValue({ condition, atDegC, plusMinusDegC }: MeasureState, span: CurrentSpan): ExpectedValue[] {
  const current = currentMa(atDegC, span);
  if (!current.ok) return [];
  const maPerDegC = 16 / Math.abs(span.highDegC - span.lowDegC);
  const sideMa = plusMinusDegC * maPerDegC + 16 * bandOfSpan;
  return [
    {
      quantity: 'current',
      condition,
      atDegC,
      expectedMa: current.currentMa,
      lowMa: current.currentMa - sideMa,
      highMa: current.currentMa + sideMa,
    },
  ];
}

function measuringRange(): ExpectedValue {
  const { lowMa, highMa } = namurLimits;
  return { quantity: 'current', condition: 'any', atDegC: null, expectedMa: null, lowMa, highMa };
}
