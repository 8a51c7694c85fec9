import { deflateSync, inflateSync } from 'fflate';
import type { PlantDigest, ZoneDigest } from '../model/digest.js';
import { LogProblem } from '../model/problem.js';
import { emptyZoneDigest } from './zone-digest.js';

/**
 * A digest as bytes for a history folder. Layout, version 1, little endian:
 * "LLDG", version (1 byte), startMs (float64), periodMs (float64), length (uint32), zone count (uint32), then all
 * columns zone by zone, deflated (RFC 1951). A column is one variable-length integer per place: the change since the
 * last number, in hundredths, zigzag, plus 1; 0 stands for NaN. First, last, min and max are stored as their
 * distance from the mean, which is small and so packs well.
 */
const MAGIC = [0x4c, 0x4c, 0x44, 0x47];
const VERSION = 1;
const HEADER_BYTES = 4 + 1 + 8 + 8 + 4 + 4;

/** Numbers are kept to this part of a unit: 0.01 °C, 0.01 %, 0.01 of a running share. */
const STEPS_PER_UNIT = 100;

/**
 * Packs a digest. Numbers are rounded to hundredths; counts are exact.
 *
 * @returns Bytes that `decodeDigest` reads. Never throws for a digest of this program.
 */
export function encodeDigest(digest: PlantDigest): Uint8Array {
  const writer = new ByteWriter();
  for (const zone of digest.zones) writeZone(writer, zone);
  const body = deflateSync(writer.taken(), { level: 6 });
  const bytes = new Uint8Array(HEADER_BYTES + body.length);
  const header = new DataView(bytes.buffer);
  bytes.set(MAGIC);
  header.setUint8(4, VERSION);
  header.setFloat64(5, digest.startMs, true);
  header.setFloat64(13, digest.periodMs, true);
  header.setUint32(21, digest.length, true);
  header.setUint32(25, digest.zones.length, true);
  bytes.set(body, HEADER_BYTES);
  return bytes;
}

/**
 * Unpacks what `encodeDigest` packed.
 *
 * @param file Named in the error.
 * @throws LogProblem `bad-history` for bytes that are not a digest, cut short, or of another version.
 */
export function decodeDigest(bytes: Uint8Array, file: string): PlantDigest {
  const header = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < HEADER_BYTES || MAGIC.some((byte, i) => bytes[i] !== byte)) {
    throw badHistory(file, 'is not a stored digest.');
  }
  const version = header.getUint8(4);
  if (version !== VERSION) throw badHistory(file, `is of version ${version}; this program reads version ${VERSION}.`);
  const length = header.getUint32(21, true);
  const zoneCount = header.getUint32(25, true);
  const reader = new ByteReader(inflateBody(bytes.subarray(HEADER_BYTES), file));
  const zones: ZoneDigest[] = [];
  // A place takes at least one byte per column, so a length beyond that is a damaged header, not a reason to allocate.
  if (length * zoneCount * COLUMN_COUNT > reader.length) throw badHistory(file, 'is cut short.');
  for (let i = 0; i < zoneCount; i++) zones.push(readZone(reader, length));
  if (!reader.isSpent) throw badHistory(file, 'is damaged.');
  return { startMs: header.getFloat64(5, true), periodMs: header.getFloat64(13, true), length, zones };
}

function badHistory(file: string, what: string, cause?: unknown): LogProblem {
  return new LogProblem('bad-history', { file }, `The file ${what}`, 'Delete it; the next run writes a new one.', {
    cause,
  });
}

function inflateBody(body: Uint8Array, file: string): Uint8Array {
  try {
    return inflateSync(body);
  } catch (error) {
    throw badHistory(file, 'is damaged.', error);
  }
}

const asDistance = ['firstDegC', 'lastDegC', 'minDegC', 'maxDegC'] as const;
const asLevel = ['meanDegC', 'spreadDegC', 'outputPercent', 'setpointDegC', 'runningShare'] as const;
const COLUMN_COUNT = 2 + asDistance.length + asLevel.length;

function writeZone(writer: ByteWriter, zone: ZoneDigest): void {
  writeSteps(writer, zone.readingCount, 1);
  writeSteps(writer, zone.badCount, 1);
  for (const column of asLevel) writeSteps(writer, zone[column], STEPS_PER_UNIT);
  const mean = zone.meanDegC.map((degC) => Math.round(degC * STEPS_PER_UNIT) / STEPS_PER_UNIT);
  for (const column of asDistance) {
    writeSteps(
      writer,
      Float64Array.from(zone[column], (degC, i) => degC - mean[i]!),
      STEPS_PER_UNIT,
    );
  }
}

function readZone(reader: ByteReader, length: number): ZoneDigest {
  const zone = emptyZoneDigest(length);
  readSteps(reader, zone.readingCount, 1);
  readSteps(reader, zone.badCount, 1);
  for (const column of asLevel) readSteps(reader, zone[column], STEPS_PER_UNIT);
  for (const column of asDistance) {
    readSteps(reader, zone[column], STEPS_PER_UNIT);
    for (let i = 0; i < length; i++) zone[column][i] = zone[column][i]! + zone.meanDegC[i]!;
  }
  return zone;
}

function writeSteps(writer: ByteWriter, values: ArrayLike<number>, stepsPerUnit: number): void {
  let before = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) {
      writer.writeInteger(0);
      continue;
    }
    const steps = Math.round(value * stepsPerUnit);
    const change = steps - before;
    writer.writeInteger((change >= 0 ? 2 * change : -2 * change - 1) + 1);
    before = steps;
  }
}

function readSteps(reader: ByteReader, into: Float32Array | Uint16Array, stepsPerUnit: number): void {
  let steps = 0;
  for (let i = 0; i < into.length; i++) {
    const code = reader.readInteger();
    if (code === 0) {
      into[i] = NaN;
      continue;
    }
    const zigzag = code - 1;
    steps += zigzag % 2 === 0 ? zigzag / 2 : -(zigzag + 1) / 2;
    into[i] = steps / stepsPerUnit;
  }
}

/** Bytes that grow by doubling; integers take 7 bits a byte, lowest first. */
class ByteWriter {
  private bytes = new Uint8Array(1 << 16);
  private length = 0;

  writeInteger(value: number): void {
    if (this.length + 8 > this.bytes.length) {
      const wider = new Uint8Array(this.bytes.length * 2);
      wider.set(this.bytes);
      this.bytes = wider;
    }
    let rest = value;
    while (rest >= 0x80) {
      this.bytes[this.length++] = (rest % 0x80) | 0x80;
      rest = Math.floor(rest / 0x80);
    }
    this.bytes[this.length++] = rest;
  }

  taken(): Uint8Array {
    return this.bytes.subarray(0, this.length);
  }
}

class ByteReader {
  private at = 0;

  constructor(private readonly bytes: Uint8Array) {}

  get length(): number {
    return this.bytes.length;
  }

  get isSpent(): boolean {
    return this.at === this.bytes.length;
  }

  /** 0 beyond the end; `isSpent` then tells nothing was over. */
  readInteger(): number {
    let value = 0;
    let place = 1;
    for (;;) {
      const byte = this.bytes[this.at++] ?? 0;
      value += (byte & 0x7f) * place;
      if (byte < 0x80) return value;
      place *= 0x80;
    }
  }
}
