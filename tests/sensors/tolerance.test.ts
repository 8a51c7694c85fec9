import { describe, expect, test } from 'vitest';
import { rtdOhmPerDegC } from '../../src/sensors/rtd.js';
import { sensorTypes, type RtdSpec } from '../../src/sensors/sensor-types.js';
import { parseToleranceClass, toleranceDegC, usualClass, type RtdClass } from '../../src/sensors/tolerance.js';
import { expectPrinted, valueOf } from './printed.js';

const pt100 = sensorTypes.pt100 as RtdSpec;

// Classes A and B in ohm: IEC 751:1995 table reprint, to 0.01 Ω; the rest computed from IEC 60751:2008 5.1.
// undefined = outside the class's own range, where a refusal is due.
const rows: readonly (readonly [number, Partial<Record<RtdClass, readonly [string, string]>>])[] = [
  // Class C at −100 °C sits on a half step: 1.60 × 0.40531 = 0.6485, printed as 0.649 elsewhere.
  [-100, { A: ['0.35', '0.142'], B: ['0.80', '0.324'], C: ['1.60', '0.6485'] }],
  [0, { AA: ['0.10', '0.0391'], A: ['0.15', '0.0586'], B: ['0.30', '0.117'], C: ['0.60', '0.234'] }],
  [25, { AA: ['0.1425', '0.0553'], A: ['0.20', '0.0776'], B: ['0.425', '0.165'], C: ['0.85', '0.330'] }],
  [100, { AA: ['0.27', '0.102'], A: ['0.35', '0.133'], B: ['0.80', '0.303'], C: ['1.60', '0.607'] }],
  [150, { AA: ['0.355', '0.133'], A: ['0.45', '0.168'], B: ['1.05', '0.392'], C: ['2.10', '0.784'] }],
  [200, { AA: ['0.44', '0.162'], A: ['0.55', '0.202'], B: ['1.30', '0.478'], C: ['2.60', '0.956'] }],
  [250, { AA: ['0.525', '0.190'], A: ['0.65', '0.235'], B: ['1.55', '0.561'], C: ['3.10', '1.122'] }],
  [300, { A: ['0.75', '0.267'], B: ['1.80', '0.641'], C: ['3.60', '1.282'] }],
  [400, { A: ['0.95', '0.327'], B: ['2.30', '0.793'], C: ['4.60', '1.585'] }],
  [600, { B: ['3.30', '1.061'], C: ['6.60', '2.122'] }],
];

describe('classes of IEC 60751', () => {
  test.each(rows)('at %d °C', (at, expected) => {
    for (const toleranceClass of ['AA', 'A', 'B', 'C'] as const) {
      const printed = expected[toleranceClass];
      const answer = toleranceDegC(pt100, toleranceClass, at);
      if (!printed) {
        expect(answer, `${toleranceClass} at ${at} °C`).toMatchObject({ ok: false, code: 'outside-class' });
        continue;
      }
      const inDegC = valueOf(answer).toleranceDegC;
      const inOhm = inDegC * valueOf(rtdOhmPerDegC(pt100, at)).ohmPerDegC;
      expectPrinted(inDegC, printed[0], `${toleranceClass} °C`);
      expectPrinted(inOhm, printed[1], `${toleranceClass} Ω`);
    }
  });

  test('−200 °C lies outside every class, so the bracketed values of the table are refused', () => {
    for (const toleranceClass of ['AA', 'A', 'B', 'C'] as const) {
      expect(toleranceDegC(pt100, toleranceClass, -200)).toMatchObject({
        ok: false,
        code: 'outside-class',
        says: expect.stringMatching(/^Class .* holds only from −\d+ to \d+ °C\.$/),
      });
    }
  });

  test('α 3.916e-3 elements and other ohms take the same classes in °C', () => {
    expect(valueOf(toleranceDegC(sensorTypes.pt1000, 'B', 100)).toleranceDegC).toBeCloseTo(0.8, 12);
  });
});

// ASTM grades: formulas from a trade table; grade names from memory; values computed from them.
test.each([
  [0, '0.13', '0.25'],
  [100, '0.30', '0.67'],
  [200, '0.47', '1.09'],
  [300, '0.64', '1.51'],
])('ASTM grades at %d °C', (at, gradeA, gradeB) => {
  expectPrinted(valueOf(toleranceDegC(pt100, 'astm-a', at)).toleranceDegC, gradeA);
  expectPrinted(valueOf(toleranceDegC(pt100, 'astm-b', at)).toleranceDegC, gradeB);
});

// ANSI MC96.1 / ASTM E230 by trade reprints: the greater of a fixed part and a share, from 0 °C up.
test.each([
  ['tc-k', 'standard', 0, 2.2],
  ['tc-k', 'standard', 400, 3.0],
  ['tc-j', 'standard', 200, 2.2],
  ['tc-j', 'special', 400, 1.6],
  ['tc-k', 'special', 200, 1.1],
  ['tc-e', 'standard', 200, 1.7],
  ['tc-e', 'standard', 500, 2.5],
  ['tc-e', 'special', 100, 1.0],
  ['tc-e', 'special', 500, 2.0],
  ['tc-t', 'standard', 100, 1.0],
  ['tc-t', 'standard', 200, 1.5],
  ['tc-t', 'special', 100, 0.5],
  ['tc-t', 'special', 200, 0.8],
] as const)('%s %s at %d °C is ±%d °C', (id, toleranceClass, at, printed) => {
  expect(valueOf(toleranceDegC(sensorTypes[id], toleranceClass, at)).toleranceDegC).toBeCloseTo(printed, 9);
});

test('a class of another kind of sensor, or none held, is refused', () => {
  expect(toleranceDegC(sensorTypes['tc-k'], 'B', 100)).toMatchObject({ ok: false, code: 'no-class' });
  expect(toleranceDegC(sensorTypes.pt100, 'special', 100)).toMatchObject({ ok: false, code: 'no-class' });
  expect(toleranceDegC(sensorTypes.ni120, 'B', 100)).toMatchObject({ ok: false, code: 'no-class' });
  expect(toleranceDegC(sensorTypes['tc-k'], 'standard', -10)).toMatchObject({ ok: false, code: 'outside-class' });
  expect(toleranceDegC(sensorTypes['tc-t'], 'standard', 390)).toMatchObject({ ok: false, code: 'outside-class' });
  expect(toleranceDegC(sensorTypes.pt100, 'B', NaN)).toMatchObject({ ok: false, code: 'not-a-number' });
});

test('classes are found however they are written', () => {
  const written = { B: 'B', 'class a': 'A', AA: 'AA', 'W0.3': 'B', 'F 0.15': 'A', 'w0.1': 'AA', 'f0.6': 'C' } as const;
  for (const [text, id] of Object.entries(written)) expect(parseToleranceClass(text), text).toBe(id);
  expect(parseToleranceClass('ASTM grade B')).toBe('astm-b');
  expect(parseToleranceClass('Special')).toBe('special');
  for (const text of ['', '1/3 B', 'D', 'constructor', 'W0.5']) expect(parseToleranceClass(text), text).toBeUndefined();
});

test('the class assumed where none is stated', () => {
  expect(usualClass(sensorTypes.pt1000)).toBe('B');
  expect(usualClass(sensorTypes['tc-t'])).toBe('standard');
  expect(usualClass(sensorTypes.ni120)).toBeUndefined();
  expect(usualClass(sensorTypes['ma-4-20'])).toBeUndefined();
});
