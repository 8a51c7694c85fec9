import { DateTime } from 'luxon';
import type { TimeStyle } from './log-format.js';

const hourMs = 3_600_000;
const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const two = Array.from({ length: 100 }, (_, i) => String(i).padStart(2, '0'));

/** Minutes that local time is ahead of UTC; asked once per hour, as no zone changes inside one. */
class ZoneOffsets {
  readonly #timezone: string;
  readonly #known = new Map<number, number>();

  constructor(timezone: string) {
    this.#timezone = timezone;
  }

  minutesAt(utcMs: number): number {
    const hour = Math.floor(utcMs / hourMs);
    const known = this.#known.get(hour);
    if (known !== undefined) return known;
    const minutes = DateTime.fromMillis(utcMs, { zone: this.#timezone }).offset;
    this.#known.set(hour, minutes);
    return minutes;
  }
}

export function isSplit(style: TimeStyle): boolean {
  return style.startsWith('split-');
}

/** Makes the function that writes a time; a split style gives date and time with the separator between. */
export function timeWriter(style: TimeStyle, timezone: string | null, separator: string): (utcMs: number) => string {
  const offsets = timezone === null ? null : new ZoneOffsets(timezone);
  return (utcMs) => {
    if (style === 'epoch-ms') return String(Math.round(utcMs));
    if (style === 'epoch-s') return String(Math.round(utcMs / 1000));
    const minutes = style === 'iso-t-z' ? 0 : (offsets?.minutesAt(utcMs) ?? 0);
    return clockText(style, new Date(Math.round(utcMs / 1000) * 1000 + minutes * 60_000), minutes, separator);
  };
}

function clockText(style: TimeStyle, local: Date, offsetMinutes: number, separator: string): string {
  const year = String(local.getUTCFullYear());
  const month = two[local.getUTCMonth() + 1] ?? '';
  const day = two[local.getUTCDate()] ?? '';
  const time = `${two[local.getUTCHours()]}:${two[local.getUTCMinutes()]}:${two[local.getUTCSeconds()]}`;
  switch (style) {
    case 'iso-t':
      return `${year}-${month}-${day}T${time}`;
    case 'iso-t-z':
      return `${year}-${month}-${day}T${time}.000Z`;
    case 'iso-t-offset':
      return `${year}-${month}-${day}T${time}${offsetText(offsetMinutes)}`;
    case 'iso-ms':
      return `${year}-${month}-${day} ${time}.000`;
    case 'slash-ymd':
      return `${year}/${month}/${day} ${time}`;
    case 'dots-dmy':
      return `${day}.${month}.${year} ${time}`;
    case 'dots-dmy-short':
      return `${day}.${month}.${year.slice(2)} ${time}`;
    case 'slash-dmy':
      return `${day}/${month}/${year} ${time}`;
    case 'slash-mdy-12h':
      return `${local.getUTCMonth() + 1}/${local.getUTCDate()}/${year} ${twelveHours(local)}`;
    case 'month-name':
      return `${day}-${monthNames[local.getUTCMonth()]}-${year} ${time}`;
    case 'compact':
      return `${year}${month}${day}T${time.replaceAll(':', '')}`;
    case 'split-iso':
      return `${year}-${month}-${day}${separator}${time}`;
    case 'split-dots':
      return `${day}.${month}.${year}${separator}${time}`;
    case 'split-us':
      return `${local.getUTCMonth() + 1}/${local.getUTCDate()}/${year}${separator}${twelveHours(local)}`;
    default:
      return `${year}-${month}-${day} ${time}`;
  }
}

function twelveHours(local: Date): string {
  const hour = local.getUTCHours();
  return `${hour % 12 || 12}:${two[local.getUTCMinutes()]}:${two[local.getUTCSeconds()]} ${hour < 12 ? 'AM' : 'PM'}`;
}

function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${two[Math.floor(size / 60)]}:${two[size % 60]}`;
}
