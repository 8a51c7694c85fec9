/** R(t) = R0·(1 + A·t + B·t² + C·(t − 100)·t³), C only below 0 °C. Units: °C⁻¹, °C⁻², °C⁻⁴. */
export interface PlatinumCurve {
  readonly kind: 'callendar-van-dusen';
  readonly name: string;
  readonly aPerDegC: number;
  readonly bPerDegC2: number;
  readonly cPerDegC4: number;
  readonly lowDegC: number;
  readonly highDegC: number;
  readonly source: string;
}

/** A printed table; between two rows the resistance is taken as a straight line. */
export interface TableCurve {
  readonly kind: 'table';
  readonly name: string;
  /** Rising pairs of [degC, ohm divided by the ohm at 0 °C]. */
  readonly rows: readonly (readonly [degC: number, ratio: number])[];
  readonly lowDegC: number;
  readonly highDegC: number;
  readonly source: string;
}

export type RtdCurve = PlatinumCurve | TableCurve;

export const platinum3851: PlatinumCurve = {
  kind: 'callendar-van-dusen',
  name: 'platinum, α 3.851e-3',
  aPerDegC: 3.9083e-3,
  bPerDegC2: -5.775e-7,
  cPerDegC4: -4.183e-12,
  lowDegC: -200,
  highDegC: 850,
  source: 'IEC 60751:2008 clause 4 (unchanged in 2022)',
};

/** No figure below 0 °C is held for this curve, and the table it was checked against ends at 600 °C. */
export const platinum3916: PlatinumCurve = {
  kind: 'callendar-van-dusen',
  name: 'platinum, α 3.916e-3',
  aPerDegC: 3.9739e-3,
  bPerDegC2: -5.87e-7,
  cPerDegC4: 0,
  lowDegC: 0,
  highDegC: 600,
  source: 'older JIS/American curve; coefficients from memory, within 0.02 ohm of a sensor maker’s public table',
};

const nickelAtZeroOhm = 120;
const copperAtZeroOhm = 9.035;

// −50…100 °C and 150, 200, 250 °C: seen in a public table of a transmitter manual (it agrees with 200.64 ohm at
// 100 °C, α 6.72e-3). The other rows are from memory; their differences run smoothly between the rows seen.
const nickelOhm: readonly (readonly [number, number])[] = [
  [-50, 86.17],
  [-40, 92.76],
  [-30, 99.41],
  [-20, 106.15],
  [-10, 113.0],
  [0, nickelAtZeroOhm],
  [10, 127.17],
  [20, 134.52],
  [30, 142.06],
  [40, 149.79],
  [50, 157.74],
  [60, 165.9],
  [70, 174.25],
  [80, 182.84],
  [90, 191.64],
  [100, 200.64],
  [110, 209.85],
  [120, 219.29],
  [130, 228.96],
  [140, 238.85],
  [150, 248.95],
  [160, 259.3],
  [170, 269.91],
  [180, 280.77],
  [190, 291.96],
  [200, 303.46],
  [210, 315.31],
  [220, 327.54],
  [230, 340.14],
  [240, 353.14],
  [250, 366.53],
];

// Every row seen in the same public table; copper is so straight that 50 °C steps do from 100 °C up.
const copperOhm: readonly (readonly [number, number])[] = [
  [-50, 7.104],
  [-40, 7.49],
  [-30, 7.876],
  [-20, 8.262],
  [-10, 8.649],
  [0, copperAtZeroOhm],
  [10, 9.421],
  [20, 9.807],
  [30, 10.194],
  [40, 10.58],
  [50, 10.966],
  [60, 11.352],
  [70, 11.738],
  [80, 12.125],
  [90, 12.511],
  [100, 12.897],
  [150, 14.828],
  [200, 16.776],
  [250, 18.725],
];

export const nickel120: TableCurve = {
  kind: 'table',
  name: 'nickel, α 6.72e-3',
  rows: nickelOhm.map(([degC, ohm]) => [degC, ohm / nickelAtZeroOhm] as const),
  lowDegC: -50,
  highDegC: 250,
  source: 'public resistance table in a transmitter manual; the rows between from memory',
};

export const copper10: TableCurve = {
  kind: 'table',
  name: 'copper, 10 Ω at 25 °C, α 4.27e-3',
  rows: copperOhm.map(([degC, ohm]) => [degC, ohm / copperAtZeroOhm] as const),
  lowDegC: -50,
  highDegC: 250,
  source: 'sensor makers’ public tables (9.035 ohm at 0 °C)',
};

/** Ohm at 0 °C of the two elements that are not named by a round figure there. Same sources as the tables. */
export const zeroOhm = { nickel120: nickelAtZeroOhm, copper10: copperAtZeroOhm } as const;
