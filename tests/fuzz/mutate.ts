import type { Random } from '../make/random.js';

/** Bytes that mean something to a reader of text, tables or archives. */
const telling = Buffer.from('\0\r\n\t ,;|"\'=:.-+eE0123456789{}[]#&*!%PK\u001f');
const pieces = [
  '1e308',
  '-1e308',
  '99999999999999999999',
  'NaN',
  '""',
  '"',
  '\uFEFF',
  '\r\r\n',
  '0000-00-00',
  '9999-12-31T23:59:59Z',
  '__proto__',
  '../../x',
  '&a [*a]',
  'null',
  '{"a":',
  '\u2028',
].map((text) => Buffer.from(text));

type Change = (bytes: Buffer, random: Random) => Buffer;

const changes: readonly Change[] = [
  (bytes, random) => set(bytes, random, random.int(0, 255)),
  (bytes, random) => set(bytes, random, random.pick([...telling])),
  (bytes, random) => set(bytes, random, random.pick([0x00, 0x7f, 0x80, 0xff])),
  (bytes, random) => cut(bytes, ...range(bytes, random, 64)),
  (bytes, random) => cut(bytes, ...range(bytes, random, bytes.length)),
  (bytes, random) => bytes.subarray(0, random.int(0, bytes.length)),
  (bytes, random) => bytes.subarray(random.int(0, bytes.length)),
  (bytes, random) => insert(bytes, random, bytes.subarray(...range(bytes, random, 256))),
  (bytes, random) => insert(bytes, random, random.pick(pieces)),
  (bytes, random) => insert(bytes, random, Buffer.alloc(random.int(1, 2000), random.int(0, 255))),
];

/** The bytes with one to six changes: flipped, cut, cut short, repeated, or with something put in. The input stays. */
export function mutate(bytes: Buffer, random: Random): Buffer {
  let changed: Buffer = Buffer.from(bytes);
  for (let left = random.int(1, 6); left > 0; left--) changed = random.pick(changes)(changed, random);
  return changed;
}

function set(bytes: Buffer, random: Random, value: number): Buffer {
  if (bytes.length > 0) bytes[random.int(0, bytes.length - 1)] = value;
  return bytes;
}

function range(bytes: Buffer, random: Random, longest: number): [number, number] {
  const from = random.int(0, bytes.length);
  return [from, Math.min(bytes.length, from + random.int(0, longest))];
}

function cut(bytes: Buffer, from: number, to: number): Buffer {
  return Buffer.concat([bytes.subarray(0, from), bytes.subarray(to)]);
}

function insert(bytes: Buffer, random: Random, piece: Buffer): Buffer {
  const at = random.int(0, bytes.length);
  return Buffer.concat([bytes.subarray(0, at), piece, bytes.subarray(at)]);
}
