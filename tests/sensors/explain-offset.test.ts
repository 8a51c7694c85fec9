import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { explainOffset, sizeText } from '../../src/sensors/explain-offset.js';
import type { OffsetQuestion } from '../../src/sensors/explanation.js';
import { judgeSeries, judgeShunt, seriesOhmFor, shuntOhmFor } from '../../src/sensors/offset-ohms.js';
import { readThroughWiring } from '../../src/sensors/rtd-wiring.js';
import { sensorTypes, type RtdSpec, type ThermocoupleSpec } from '../../src/sensors/sensor-types.js';
import { copperExtension, extensionSwapped, reversedAtInput } from '../../src/sensors/thermocouple-wiring.js';
import { expectPrinted, valueOf } from './printed.js';

const pt100 = sensorTypes.pt100 as RtdSpec;
const typeK = sensorTypes['tc-k'] as ThermocoupleSpec;
const reasons = (question: OffsetQuestion) =>
  explainOffset(question)
    .explanations.filter((one) => one.sensible)
    .map((one) => one.reason);
const ruledOut = (question: OffsetQuestion) =>
  explainOffset(question)
    .explanations.filter((one) => !one.sensible)
    .map((one) => one.reason);
const reads = (trueDegC: number, readingDegC: number, rest: Partial<OffsetQuestion> = {}) => ({
  sensor: pt100,
  trueDegC,
  readingDegC,
  ...rest,
});

describe('ohms that explain an offset', () => {
  test('8 °C high for a room at 21 °C is 3.1 Ω too much', () => {
    expectPrinted(valueOf(seriesOhmFor(pt100, 21, 29)).seriesOhm, '3.1');
    const { seriesOhm, shuntOhm, expectedOhm, seenOhm } = explainOffset(reads(21, 29));
    expectPrinted(seriesOhm!, '3.1');
    expect(shuntOhm).toBeNull();
    expect(seenOhm! - expectedOhm!).toBeCloseTo(seriesOhm!, 9);
  });

  test('191.75 °C for 200 °C is a leak of 10 kΩ (worked example, computed from IEC 60751)', () => {
    const { shuntOhm } = explainOffset(reads(200, 191.75));
    expect(shuntOhm! / 10e3).toBeCloseTo(1, 2);
  });

  test('putting the found ohms back gives the reading', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 400, noNaN: true }),
        fc.double({ min: 0.5, max: 30, noNaN: true }),
        (at, offset) => {
          const { seriesOhm } = valueOf(seriesOhmFor(pt100, at, at + offset));
          const high = valueOf(readThroughWiring(pt100, at, { wires: 2, lead1Ohm: seriesOhm }));
          expect(Math.abs(high.offsetDegC - offset)).toBeLessThan(1e-6);
          const { shuntOhm } = valueOf(shuntOhmFor(pt100, at, at - offset));
          const low = valueOf(readThroughWiring(pt100, at, { wires: 3, leakOhm: shuntOhm }));
          expect(Math.abs(low.offsetDegC + offset)).toBeLessThan(1e-6);
        },
      ),
      { seed: 8, numRuns: 300 },
    );
  });

  test('refusals', () => {
    expect(shuntOhmFor(pt100, 20, 25)).toMatchObject({ ok: false, code: 'wrong-direction' });
    expect(shuntOhmFor(pt100, 20, 20)).toMatchObject({ ok: false, code: 'wrong-direction' });
    expect(seriesOhmFor(pt100, 20, 900)).toMatchObject({ ok: false, code: 'above-range' });
    expect(shuntOhmFor(pt100, -300, 20)).toMatchObject({ ok: false, code: 'below-range' });
  });
});

describe('is it physically sensible (circuit arithmetic)', () => {
  test('2 wires: series can only read high', () => {
    expect(judgeSeries(2, 3)).toEqual({ sensible: true, reason: 'fits-both-leads' });
    expect(judgeSeries(2, -3)).toEqual({ sensible: false, reason: 'series-cannot-read-low' });
    expect(ruledOut(reads(150, 140, { wires: 2 }))).toContain('series-cannot-read-low');
    expect(explainOffset(reads(150, 140, { wires: 2 })).seriesOhm).toBeNull();
  });

  test('3 wires: which lead decides the sign', () => {
    expect(judgeSeries(3, 1).reason).toBe('fits-lead-1');
    expect(judgeSeries(3, -1).reason).toBe('fits-lead-2');
    expect(reasons(reads(150, 140))).toEqual(['fits-lead-2', 'fits-leak', 'element-shifted']);
    expect(explainOffset(reads(150, 140)).seriesOhm).toBeLessThan(0);
  });

  test('4 wires: leads do not count, a leak still does', () => {
    expect(ruledOut(reads(150, 160, { wires: 4 }))).toEqual(['four-wire-cancels-leads', 'leak-cannot-read-high']);
    expect(reasons(reads(150, 140, { wires: 4 }))).toEqual(['fits-leak', 'element-shifted']);
  });

  test('sizes that are no contact and no leak any more (common practice)', () => {
    expect(judgeSeries(2, 80)).toEqual({ sensible: false, reason: 'more-than-a-contact' });
    expect(judgeShunt(pt100, 50)).toEqual({ sensible: false, reason: 'nearly-a-short' });
    expect(judgeSeries(3, 0)).toEqual({ sensible: false, reason: 'no-offset' });
  });

  test('within the class’s tolerance there is nothing to explain (IEC 60751 class B: 0.405 °C at 21 °C)', () => {
    expect(reasons(reads(21, 21.4))).toEqual(['within-tolerance']);
    expect(reasons(reads(21, 21.42))).not.toContain('within-tolerance');
    expect(reasons(reads(21, 21.4, { toleranceClass: 'A' }))).not.toContain('within-tolerance');
  });

  test('the other platinum curve is named when it fits', () => {
    expect(reasons(reads(200, 203.5, { withinDegC: 0.5 }))).toContain('other-type-fitted');
    expect(reasons(reads(200, 210, { withinDegC: 0.5 }))).not.toContain('other-type-fitted');
  });

  test('off the table it says so and claims no ohms', () => {
    expect(explainOffset(reads(21, 900))).toMatchObject({
      seriesOhm: null,
      shuntOhm: null,
      explanations: [
        { reason: 'off-the-table', sensible: false, says: expect.stringMatching(/^900\.0 °C is above 850 °C/) },
      ],
    });
  });
});

describe('thermocouples', () => {
  const ask = (trueDegC: number, readingDegC: number): OffsetQuestion => ({ sensor: typeK, trueDegC, readingDegC });

  test('hardly care about series resistance', () => {
    expect(ruledOut(ask(200, 210))).toEqual(['thermocouple-ignores-ohms']);
    expect(explainOffset(ask(200, 210))).toMatchObject({ seriesOhm: null, shuntOhm: null, expectedOhm: null });
  });

  test('reversed leads, type J fitted, wires touching', () => {
    const turned = valueOf(reversedAtInput(typeK, 150, 25)).readingDegC;
    expect(reasons(ask(150, turned))).toContain('leads-reversed');
    expect(reasons(ask(200, 258))).toContain('other-type-fitted');
    expect(reasons(ask(200, 25.5))).toContain('shorted-in-cable');
    expect(reasons(ask(200, 170))).not.toContain('leads-reversed');
  });

  test('finds the head temperature behind swapped or copper extension', () => {
    const swapped = valueOf(extensionSwapped(typeK, 150, 60, 25)).readingDegC;
    const says = (readingDegC: number, reason: string) =>
      explainOffset(ask(150, readingDegC)).explanations.find((one) => one.reason === reason)?.says;
    expect(says(swapped, 'extension-swapped')).toMatch(/head at 60 °C/);
    const copper = valueOf(copperExtension(typeK, 150, 60, 25)).readingDegC;
    expect(says(copper, 'copper-extension')).toMatch(/head at 60 °C/);
    expect(says(200, 'extension-swapped')).toBeUndefined(); // it would take a head at 0 °C
  });

  test('within tolerance (ASTM E230 standard: 2.2 °C) and beyond', () => {
    expect(reasons(ask(200, 202))).toEqual(['within-tolerance']);
    expect(reasons(ask(200, 203))).toContain('element-shifted');
  });
});

test('a current loop ignores ohms', () => {
  const explained = explainOffset({ sensor: sensorTypes['ma-4-20'], trueDegC: 20, readingDegC: 30 });
  expect(explained.explanations.map((one) => one.reason)).toEqual(['loop-ignores-ohms']);
});

test('every sentence ends as one and holds no blank number', () => {
  for (const sensor of Object.values(sensorTypes)) {
    for (const readingDegC of [-100, 0, 15, 21, 24, 60, 300]) {
      for (const { says } of explainOffset({ sensor, trueDegC: 21, readingDegC, terminalDegC: 21 }).explanations) {
        expect(says).toMatch(/^[A-Z0-9−].*\.$/);
        expect(says).not.toMatch(/NaN|undefined|unknown/);
      }
    }
  }
});

test('ohms as a fitter says them', () => {
  expect([3.1, 12.34, 999.4, 999.6, 8240, 1.5e6, 0.004].map(sizeText)).toEqual([
    '3.10 Ω',
    '12.3 Ω',
    '999.4 Ω',
    '1.0 kΩ',
    '8.2 kΩ',
    '1.5 MΩ',
    '0.00 Ω',
  ]);
});
