import type { TimeFormat } from '../../model/log-file.js';
import { decodeBytes, type Encoding } from '../sources/encoding.js';
import { compileTime } from './time-format.js';
import { countedTime, parseDateTime } from './time-text.js';

const longestCell = 64;
const minusSign = 45;
const plusSign = 43;
const zero = 48;
const nine = 57;
const colon = 58;
const point = 46;
const comma = 44;
const blank = 32;
/** What may stand before a clock: blank, comma, T, underscore. After another sign the numbers may be date or fraction. */
const beforeClock = [blank, comma, 84, 95];

/**
 * Reads time cells straight from bytes and gives exactly what compileTime gives for the same text. Most cells say what the
 * one before said or differ in their seconds only; of others the date part is remembered and only the clock is read;
 * anything unusual goes the long way.
 */
export class TimeBytes {
  /** Clock of the cell that `skim` or `read` read last, NaN when it is no time. */
  ms = NaN;
  private readonly slow: (cell: string) => number;
  private readonly lastCell = new Uint8Array(longestCell);
  private lastLength = -1;
  /** Where the seconds stand in the last cell; -1 = the cell is known as a whole only. */
  private secondsAt = -1;
  /** Clock of the last cell less its seconds, or of all of it. */
  private baseMs = NaN;
  private readonly datePart = new Uint8Array(longestCell);
  private dateLength = -1;
  private dateMs = NaN;

  constructor(
    private readonly format: TimeFormat,
    private readonly encoding: Encoding,
  ) {
    this.slow = compileTime(format);
  }

  /**
   * Looks whether the bytes at `start` say what the cell before said, up to its seconds.
   *
   * @returns Behind the time, `ms` set; -1 when they do not. The caller must see that the cell ends there.
   */
  skim(bytes: Buffer, start: number): number {
    const { lastCell, lastLength, secondsAt } = this;
    if (lastLength < 0) return -1;
    // Compared from the end, where times differ first.
    for (let i = secondsAt - 1; i >= 0; i--) if (bytes[start + i] !== lastCell[i]) return -1;
    let rest = 0;
    let ms = this.baseMs;
    if (secondsAt >= 0) {
      const tens = bytes[start + secondsAt]! - zero;
      const ones = bytes[start + secondsAt + 1]! - zero;
      if (tens < 0 || tens > 5 || ones < 0 || ones > 9) return -1;
      ms += (tens * 10 + ones) * 1000;
      rest = secondsAt + 2;
    }
    for (let i = rest; i < lastLength; i++) if (bytes[start + i] !== lastCell[i]) return -1;
    this.ms = ms;
    return start + lastLength;
  }

  /** Clock of the cell from `from` to `to`, NaN when it is no time. */
  read(bytes: Buffer, from: number, to: number): number {
    let start = from;
    let end = to;
    while (start < end && bytes[start]! === blank) start++;
    while (end > start && bytes[end - 1]! === blank) end--;
    if (this.skim(bytes, start) === end) return this.ms;
    this.ms = this.format.kind === 'date' ? this.readDate(bytes, start, end) : this.readCount(bytes, start, end);
    this.keepLast(bytes, start, end);
    return this.ms;
  }

  private keepLast(bytes: Buffer, start: number, end: number): void {
    this.lastLength = end > start && end - start <= longestCell ? end - start : -1;
    for (let i = 0; i < this.lastLength; i++) this.lastCell[i] = bytes[start + i]!;
    this.secondsAt = this.format.kind === 'date' && !Number.isNaN(this.ms) ? this.findSeconds() : -1;
    const seconds = this.secondsAt < 0 ? 0 : twoDigits(this.lastCell, this.secondsAt, this.lastLength);
    this.baseMs = this.ms - seconds * 1000;
  }

  /** Place of SS in a clock "H:MM:SS" that stands alone in the last cell; -1 where there is none whose seconds may be any. */
  private findSeconds(): number {
    const { lastCell, lastLength } = this;
    for (let i = 1; i + 6 <= lastLength; i++) {
      if (lastCell[i] !== colon || lastCell[i + 3] !== colon || !isDigit(lastCell[i - 1]!)) continue;
      const hourStart = i >= 2 && isDigit(lastCell[i - 2]!) ? i - 2 : i - 1;
      const isClock = hourStart === 0 || beforeClock.includes(lastCell[hourStart - 1]!);
      const isAlone = i + 6 === lastLength || !isDigit(lastCell[i + 6]!);
      // 24:00:00 and a leap second exist, but not the seconds beside them.
      const isUsual = twoDigits(lastCell, hourStart, i) !== 24 && twoDigits(lastCell, i + 4, lastLength) <= 59;
      if (isClock && isAlone && isUsual && isDigit(lastCell[i + 5]!)) return i + 4;
    }
    return -1;
  }

  private readCount(bytes: Buffer, start: number, end: number): number {
    if (end - start > 15 || end === start) return this.readSlow(bytes, start, end);
    let count = 0;
    for (let i = start; i < end; i++) {
      const digit = bytes[i]! - zero;
      if (digit < 0 || digit > 9) return this.readSlow(bytes, start, end);
      count = count * 10 + digit;
    }
    return countedTime(count, this.format);
  }

  private readDate(bytes: Buffer, start: number, end: number): number {
    if (this.isKnownDate(bytes, start, end)) {
      const clock = readClock(bytes, start + this.dateLength, end);
      if (!Number.isNaN(clock)) return this.dateMs + clock;
    }
    const text = decodeBytes(bytes.subarray(start, end), this.encoding);
    const time = parseDateTime(text, this.format.order);
    if (!time) return NaN;
    this.keepDate(bytes, start, text, time.clockStart);
    return time.ms;
  }

  private isKnownDate(bytes: Buffer, start: number, end: number): boolean {
    if (end - start <= this.dateLength || this.dateLength < 0) return false;
    for (let i = this.dateLength - 1; i >= 0; i--) if (bytes[start + i] !== this.datePart[i]) return false;
    return true;
  }

  private keepDate(bytes: Buffer, start: number, text: string, clockStart: number): void {
    const date = text.slice(0, clockStart);
    const ms = parseDateTime(date.replace(/[T_ ,:]+$/, ''), this.format.order)?.ms ?? NaN;
    // Only plain letters: then one character is one byte.
    const isUsable =
      clockStart < text.length && clockStart <= longestCell && /^[\x20-\x7e]*$/.test(date) && !Number.isNaN(ms);
    this.dateLength = isUsable ? clockStart : -1;
    this.dateMs = ms;
    for (let i = 0; i < this.dateLength; i++) this.datePart[i] = bytes[start + i]!;
  }

  private readSlow(bytes: Buffer, start: number, end: number): number {
    return this.slow(decodeBytes(bytes.subarray(start, end), this.encoding));
  }
}

/** "H:MM", "HH:MM:SS", ".fff", " AM", "Z", "+02:00"; NaN for anything else, which is then read the long way. */
function readClock(bytes: Buffer, start: number, end: number): number {
  let at = start;
  let hour = digitAt(bytes, at++, end);
  const second = digitAt(bytes, at, end);
  if (second >= 0) {
    hour = hour * 10 + second;
    at++;
  }
  const separator = bytes[at];
  if (hour < 0 || at >= end || (separator !== colon && separator !== point)) return NaN;
  const minutes = twoDigits(bytes, at + 1, end);
  if (minutes < 0 || minutes > 59) return NaN;
  at += 3;
  let ms = minutes * 60_000;
  if (at < end && (bytes[at] === colon || bytes[at] === point)) {
    const seconds = twoDigits(bytes, at + 1, end);
    if (seconds < 0 || seconds > 59) return NaN;
    ms += seconds * 1000;
    at += 3;
    if (at < end && (bytes[at] === point || bytes[at] === comma)) {
      const digitsStart = ++at;
      let scale = 100;
      for (; at < end && isDigit(bytes[at]!); at++, scale = scale === 1 ? 0 : Math.floor(scale / 10))
        ms += (bytes[at]! - zero) * scale;
      if (at === digitsStart || at - digitsStart > 9) return NaN;
    }
  }
  return at === end ? plainHour(hour, ms) : readTail(bytes, at, end, hour, ms);
}

function plainHour(hour: number, ms: number): number {
  return hour <= 23 ? hour * 3_600_000 + ms : NaN;
}

function readTail(bytes: Buffer, start: number, end: number, hour: number, ms: number): number {
  let at = start;
  while (at < end && bytes[at] === blank) at++;
  const letter = bytes[at]! | 32;
  if (end - at === 2 && (bytes[at + 1]! | 32) === 109 && (letter === 97 || letter === 112)) {
    if (hour < 1 || hour > 12) return NaN;
    return ((hour % 12) + (letter === 112 ? 12 : 0)) * 3_600_000 + ms;
  }
  if (end - at === 1 && letter === 122) return plainHour(hour, ms);
  const sign = bytes[at] === plusSign ? 1 : bytes[at] === minusSign ? -1 : 0;
  if (sign === 0) return NaN;
  const hours = twoDigits(bytes, at + 1, end);
  const minutesAt = bytes[at + 3] === colon ? at + 4 : at + 3;
  const minutes = twoDigits(bytes, minutesAt, end);
  if (hours < 0 || minutes < 0 || minutesAt + 2 !== end) return NaN;
  return plainHour(hour, ms) - sign * (hours * 60 + minutes) * 60_000;
}

function isDigit(byte: number): boolean {
  return byte >= zero && byte <= nine;
}

function digitAt(bytes: Uint8Array, at: number, end: number): number {
  return at < end && isDigit(bytes[at]!) ? bytes[at]! - zero : -1;
}

function twoDigits(bytes: Uint8Array, at: number, end: number): number {
  const tens = digitAt(bytes, at, end);
  const ones = digitAt(bytes, at + 1, end);
  return tens < 0 || ones < 0 ? -1 : tens * 10 + ones;
}
