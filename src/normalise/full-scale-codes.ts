/** Which end of the scale a code stands for. */
export type CodeEnd = 'above' | 'below' | 'zero';

/**
 * Numbers that controllers write instead of a temperature, as they stand in the log (in °C, in °F or without unit).
 * Sources: 16-bit ends and tenths of them, two's complement arithmetic; ends of the platinum table, IEC 60751, and the
 * card range end 870 °C, common practice; type K and J ends, NIST Monograph 175; runs of nines, common practice.
 */
const codeTable: readonly (readonly [number, CodeEnd])[] = [
  [32767, 'above'],
  [3276.7, 'above'],
  [32766, 'above'],
  [3276.6, 'above'],
  [65535, 'above'],
  [6553.5, 'above'],
  [9999, 'above'],
  [999.9, 'above'],
  [999, 'above'],
  [99999, 'above'],
  [9999.9, 'above'],
  [850, 'above'],
  [1562, 'above'],
  [870, 'above'],
  [1598, 'above'],
  [1372, 'above'],
  [2501.6, 'above'],
  [2502, 'above'],
  [1200, 'above'],
  [2192, 'above'],
  [-32768, 'below'],
  [-3276.8, 'below'],
  [-32767, 'below'],
  [-3276.7, 'below'],
  [-9999, 'below'],
  [-999.9, 'below'],
  [-999, 'below'],
  [-200, 'below'],
  [-328, 'below'],
  [-210, 'below'],
  [-346, 'below'],
  [-242, 'below'],
  [-242.02, 'below'],
  [-270, 'below'],
  [-454, 'below'],
  [0, 'zero'],
];

const codes = new Map(codeTable);

/** The end of the scale that a raw number of a log stands for in the table, or null. Equal to the last digit. */
export function tableCode(raw: number): CodeEnd | null {
  return codes.get(raw) ?? null;
}

/** No sensor of a heater zone reads beyond these: above type B and C wire, below absolute zero (physics). */
export const hottestDegC = 2000;
export const coldestDegC = -273.15;
