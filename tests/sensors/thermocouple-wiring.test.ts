import { describe, expect, test } from 'vitest';
import { sensorTypes, type ThermocoupleSpec } from '../../src/sensors/sensor-types.js';
import { emfMv, publishedInverseDegC, terminalMv } from '../../src/sensors/thermocouple.js';
import {
  copperExtension,
  extensionSwapped,
  reversedAtInput,
  thermocoupleReadAs,
} from '../../src/sensors/thermocouple-wiring.js';
import { mixUpsThatRead, readAsOtherType } from '../../src/sensors/wrong-type.js';
import { expectPrinted, valueOf } from './printed.js';

const typeJ = sensorTypes['tc-j'] as ThermocoupleSpec;
const typeK = sensorTypes['tc-k'] as ThermocoupleSpec;

// Computed outside this project with NIST's published inverse polynomials, terminals at 25 °C; those are up to 0.05 °C
// off the reference function, which our readings follow exactly.
test.each([
  ['tc-j', 'tc-k', 200, '258.5'],
  ['tc-j', 'tc-k', 150, '189.8'],
  ['tc-k', 'tc-j', 200, '157.4'],
  ['tc-k', 'tc-j', 150, '121.0'],
] as const)('%s on an input for %s at %d °C reads %s', (fittedId, cardId, at, printed) => {
  const [fitted, card] = [sensorTypes[fittedId] as ThermocoupleSpec, sensorTypes[cardId] as ThermocoupleSpec];
  const { readingDegC } = valueOf(thermocoupleReadAs(fitted, card, at, 25));
  expect(Math.abs(readingDegC - Number(printed))).toBeLessThanOrEqual(0.05 + 0.05);
  expect(valueOf(readAsOtherType(fitted, card, at, 25)).readingDegC).toBe(readingDegC);
  const own = valueOf(terminalMv(fitted.letter, at, 25)).mV;
  const cold = valueOf(emfMv(card.letter, 25)).mV;
  expectPrinted(valueOf(publishedInverseDegC(card.letter, own + cold)).degC, printed);
});

describe('both leads exchanged at the input', () => {
  // Computed outside this project: J at 150 °C reads −120.7, K −120.0 (terminals 25 °C). With the exact inverse J is
  // −120.755; the published inverse polynomial (error −0.05…0.03 °C) gives the −120.7.
  test('J and K at 150 °C', () => {
    const reading = valueOf(reversedAtInput(typeJ, 150, 25)).readingDegC;
    expect(Math.abs(reading - -120.7)).toBeLessThanOrEqual(0.05 + 0.05);
    expectPrinted(valueOf(reversedAtInput(typeK, 150, 25)).readingDegC, '-120.0');
    const mV = 2 * valueOf(emfMv('J', 25)).mV - valueOf(emfMv('J', 150)).mV;
    expectPrinted(valueOf(publishedInverseDegC('J', mV)).degC, '-120.7');
  });

  test('reads below ambient and falls as the zone heats; unseen while all is cold', () => {
    const at = (degC: number) => valueOf(reversedAtInput(typeK, degC, 25)).readingDegC;
    expect(at(25)).toBeCloseTo(25, 9);
    expect(at(60)).toBeLessThan(25);
    expect(at(100)).toBeLessThan(at(60));
    expect(valueOf(reversedAtInput(typeK, 150, 25)).terminalMv).toBeLessThan(0);
  });
});

test('extension exchanged at both ends, head 60 °C, input 25 °C, tip 150 °C: J 82.7, K 80.0 (computed outside)', () => {
  expectPrinted(valueOf(extensionSwapped(typeJ, 150, 60, 25)).readingDegC, '82.7');
  expectPrinted(valueOf(extensionSwapped(typeK, 150, 60, 25)).readingDegC, '80.0');
  // About −2·(head − input) for a type as straight as K.
  expect(valueOf(extensionSwapped(typeK, 150, 60, 25)).offsetDegC).toBeCloseTo(-70, 0);
});

test('copper in place of extension wire loses what lies between head and input (thermoelectric circuit law)', () => {
  const { offsetDegC } = valueOf(copperExtension(typeK, 150, 60, 25));
  expect(offsetDegC).toBeGreaterThan(-37);
  expect(offsetDegC).toBeLessThan(-33);
  expect(valueOf(copperExtension(typeK, 150, 25, 25)).offsetDegC).toBeCloseTo(0, 9);
});

test('off the table there is no reading', () => {
  expect(reversedAtInput(typeJ, 700, 25)).toMatchObject({ ok: false, code: 'below-range' });
  expect(thermocoupleReadAs(typeJ, typeK, 1300, 25)).toMatchObject({ ok: false, code: 'above-range' });
});

describe('mix-ups', () => {
  test('finds type J on a type K input, and names nothing near where there is none', () => {
    expect(mixUpsThatRead(typeK, 200, 258, 2).map(({ fitted }) => fitted.id)).toEqual(['tc-j']);
    expect(mixUpsThatRead(typeK, 200, 300, 2)).toEqual([]);
  });

  test('an RTD on a thermocouple input is refused, in a sentence', () => {
    expect(readAsOtherType(sensorTypes.pt100, typeK, 100)).toEqual({
      ok: false,
      code: 'no-class',
      says: 'An input for Thermocouple type K cannot read Pt100 at all.',
    });
  });
});
