/** An object of a file, before anything is known of it. */
export type Named = Readonly<Record<string, unknown>>;

/** Names that an object must have, by what they must hold. Names that are not listed may hold anything. */
export interface PlainShape {
  readonly numbers?: readonly string[];
  readonly numbersOrNull?: readonly string[];
  readonly texts?: readonly string[];
  readonly textsOrNull?: readonly string[];
  /** ISO 8601. */
  readonly times?: readonly string[];
  /** Lists of objects or plain values, without empty places. */
  readonly lists?: readonly string[];
  /** Objects, every value of which is a number. */
  readonly numberTables?: readonly string[];
  /** Texts that must be one of some words. */
  readonly words?: Readonly<Record<string, readonly string[]>>;
}

export function isNamed(value: unknown): value is Named {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Whether a value read from a file is an object of that shape. Never throws. */
export function hasShape(value: unknown, shape: PlainShape): value is Named {
  if (!isNamed(value)) return false;
  const all = (names: readonly string[] | undefined, isGood: (held: unknown) => boolean): boolean =>
    (names ?? []).every((name) => isGood(value[name]));
  return (
    all(shape.numbers, isNumber) &&
    all(shape.numbersOrNull, (held) => held === null || isNumber(held)) &&
    all(shape.texts, (held) => typeof held === 'string') &&
    all(shape.textsOrNull, (held) => held === null || typeof held === 'string') &&
    all(shape.times, isTime) &&
    all(shape.lists, isList) &&
    all(shape.numberTables, (held) => isNamed(held) && Object.values(held).every(isNumber)) &&
    Object.entries(shape.words ?? {}).every(([name, words]) => words.includes(value[name] as string))
  );
}

/** Whether a list holds nothing but objects of one shape. */
export function allHaveShape(list: unknown, shape: PlainShape): boolean {
  return Array.isArray(list) && list.every((item) => hasShape(item, shape));
}

function isNumber(value: unknown): boolean {
  return typeof value === 'number';
}

function isTime(value: unknown): boolean {
  return typeof value === 'string' && !Number.isNaN(Date.parse(value));
}

function isList(value: unknown): boolean {
  return Array.isArray(value) && value.every((item) => item !== null && item !== undefined);
}
