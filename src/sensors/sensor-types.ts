import { copper10, nickel120, platinum3851, platinum3916, zeroOhm, type RtdCurve } from './rtd-curves.js';
import type { ThermocoupleLetter } from './thermocouple-tables.js';

export type SensorId =
  | 'pt100'
  | 'pt500'
  | 'pt1000'
  | 'pt100-3916'
  | 'pt1000-3916'
  | 'ni120'
  | 'cu10'
  | 'tc-j'
  | 'tc-k'
  | 'tc-t'
  | 'tc-e'
  | 'ma-4-20';

export interface RtdSpec {
  readonly id: SensorId;
  readonly kind: 'rtd';
  readonly label: string;
  /** Resistance at 0 °C. */
  readonly zeroOhm: number;
  readonly curve: RtdCurve;
}

export interface ThermocoupleSpec {
  readonly id: SensorId;
  readonly kind: 'thermocouple';
  readonly label: string;
  readonly letter: ThermocoupleLetter;
}

export interface CurrentSpec {
  readonly id: SensorId;
  readonly kind: 'current';
  readonly label: string;
}

export type SensorSpec = RtdSpec | ThermocoupleSpec | CurrentSpec;

function rtd(id: SensorId, label: string, ohm: number, curve: RtdCurve): RtdSpec {
  return { id, kind: 'rtd', label, zeroOhm: ohm, curve };
}

function thermocouple(id: SensorId, letter: ThermocoupleLetter): ThermocoupleSpec {
  return { id, kind: 'thermocouple', label: `Thermocouple type ${letter}`, letter };
}

/** Every sensor the tool knows, by the id a plant file uses. */
export const sensorTypes: Readonly<Record<SensorId, SensorSpec>> = {
  pt100: rtd('pt100', 'Pt100', 100, platinum3851),
  pt500: rtd('pt500', 'Pt500', 500, platinum3851),
  pt1000: rtd('pt1000', 'Pt1000', 1000, platinum3851),
  'pt100-3916': rtd('pt100-3916', 'Pt100 (α 3.916e-3)', 100, platinum3916),
  'pt1000-3916': rtd('pt1000-3916', 'Pt1000 (α 3.916e-3)', 1000, platinum3916),
  ni120: rtd('ni120', 'Ni120', zeroOhm.nickel120, nickel120),
  cu10: rtd('cu10', 'Cu10', zeroOhm.copper10, copper10),
  'tc-j': thermocouple('tc-j', 'J'),
  'tc-k': thermocouple('tc-k', 'K'),
  'tc-t': thermocouple('tc-t', 'T'),
  'tc-e': thermocouple('tc-e', 'E'),
  'ma-4-20': { id: 'ma-4-20', kind: 'current', label: '4–20 mA transmitter' },
};

export const sensorIds = Object.keys(sensorTypes) as readonly SensorId[];

/**
 * Finds a sensor type in what a person wrote: "Pt100", "PT-100", "type K", "TC-K", "K", "4..20 mA".
 *
 * @returns The id, or undefined when the text names none. Case, blanks and dashes do not matter. Never throws.
 */
export function parseSensorType(text: string): SensorId | undefined {
  const words = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
  // The blanks stay until here: without them "Pt100, α 0.00385" and "Pt1000 …" are the same digits.
  const platinum = /^(?:pt|platinum|rtd|rtd pt) ?(1000|500|100)(?!\d)(.*)$/.exec(words);
  if (platinum) return platinumId(platinum[1] ?? '', (platinum[2] ?? '').replaceAll(' ', ''));
  const plain = words.replaceAll(' ', '');
  const letter = /^(?:tc|thermocouple|type|tctype|thermocoupletype)?([jkte])(?:type|tc|thermocouple)?$/.exec(plain);
  if (letter) return `tc-${letter[1] as 'j' | 'k' | 't' | 'e'}`;
  if (/^(?:ni|nickel)120(?:ohm)?$/.test(plain)) return 'ni120';
  if (/^(?:cu|copper)10(?:ohm)?$/.test(plain)) return 'cu10';
  if (/^(?:ma)?4(?:to)?20(?:ma)?(?:transmitter)?$/.test(plain)) return 'ma-4-20';
  return undefined;
}

/** The two platinum curves, as people write their α after the ohms: nothing, "385", "a 3.851e-3", "0.003916" … */
function platinumId(ohm: string, rest: string): SensorId | undefined {
  const alpha = /^(?:ohm)?(?:a|alpha)?0*(385[01]?|391[16]?)?(?:e3)?(?:ohm)?$/.exec(rest);
  if (!alpha) return undefined;
  const id = alpha[1]?.startsWith('391') ? `pt${ohm}-3916` : `pt${ohm}`;
  return Object.hasOwn(sensorTypes, id) ? (id as SensorId) : undefined;
}
