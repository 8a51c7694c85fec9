import type { Cause } from './cause.js';

/** One thing to do or to measure, in the order in which to do it, with the values to expect. Filled by src/sensors. */
export interface Check {
  /** Stable id, unique in one list: `lockout`, `sensor-element`, `cabinet-element` … */
  readonly id: string;
  /** `caution` and `prepare` come first and expect no value. */
  readonly kind: 'caution' | 'prepare' | 'measure';
  /** Where to stand: the machine, the sensor's own connector, the cabinet's terminals, the input card, the heater's terminals. */
  readonly where: 'machine' | 'sensor' | 'cabinet' | 'card' | 'heater';
  /** `live` needs the controller powered: for authorised people only. */
  readonly power: 'locked-out' | 'live';
  /** Pairs to put the meter on, in words a fitter uses: "1 and 2"; empty when nothing is measured. */
  readonly between: readonly string[];
  /** What to do, one or two plain sentences. */
  readonly says: string;
  /** Values to expect, one per condition; empty when nothing is measured. */
  readonly expected: readonly ExpectedValue[];
  /** What each result means and where it points. */
  readonly outcomes: readonly CheckOutcome[];
  /** Standard or table behind the numbers, or "common practice". */
  readonly source: string;
}

/** The state in which a value is to be expected. */
export type CheckCondition = 'room' | 'set-point' | 'any';

interface ExpectedBase {
  readonly condition: CheckCondition;
  /** Temperature of the sensor's tip; null where the value does not depend on it. */
  readonly atDegC: number | null;
}

/** What a meter should show. null = no limit on that side, or no figure known. */
export type ExpectedValue =
  | (ExpectedBase & {
      readonly quantity: 'resistance';
      readonly expectedOhm: number | null;
      readonly lowOhm: number | null;
      readonly highOhm: number | null;
      /** Share of the band that is the sensor's own tolerance; null where none is held for the class. */
      readonly toleranceOhm: number | null;
      readonly toleranceDegC: number | null;
      /** Correction when the tip is not at `atDegC`: ohm for each degree. */
      readonly ohmPerDegC: number | null;
      /** Ohm of cable that `expectedOhm` holds; null = the cable is not known and must be added. */
      readonly cableOhm: number | null;
    })
  | (ExpectedBase & {
      readonly quantity: 'voltage';
      readonly expectedMv: number;
      readonly lowMv: number | null;
      readonly highMv: number | null;
      readonly toleranceDegC: number | null;
      readonly mvPerDegC: number;
      /** Temperature of the terminals that the meter is on. */
      readonly referenceDegC: number;
    })
  | (ExpectedBase & {
      readonly quantity: 'current';
      readonly expectedMa: number | null;
      readonly lowMa: number;
      readonly highMa: number;
    })
  | (ExpectedBase & { readonly quantity: 'insulation'; readonly leastOhm: number })
  | (ExpectedBase & {
      readonly quantity: 'reading';
      readonly expectedDegC: number;
      readonly lowDegC: number;
      readonly highDegC: number;
      /** What is put on the input meanwhile, where it is a known signal. */
      readonly appliedOhm?: number;
      readonly appliedMv?: number;
    })
  | (ExpectedBase & {
      readonly quantity: 'heater-current';
      readonly expectedA: number;
      readonly lowA: number;
      readonly highA: number;
    })
  | (ExpectedBase & {
      readonly quantity: 'supply-voltage';
      readonly expectedV: number;
      readonly lowV: number;
      readonly highV: number;
    })
  /** No number can be given from here: where to read it, or what to see, in a few words. */
  | (ExpectedBase & { readonly quantity: 'stated'; readonly says: string });

/** One possible result of a measurement. */
export interface CheckOutcome {
  readonly result:
    'in-band' | 'high' | 'low' | 'open' | 'short' | 'leaks' | 'changes' | 'reversed' | 'no-change' | 'uneven';
  /** One sentence. */
  readonly says: string;
  /** The cause it points to; null = it points nowhere yet, go on. */
  readonly points: Cause | null;
}
