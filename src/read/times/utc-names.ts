import type { TimeFormat } from '../../model/log-file.js';

/** "Time (UTC)", "utc_time", "TimeUTC"; not "UTC+2", which is another clock, nor "UTC offset". */
const utcName = /(?:(?<!\p{L})(?:utc|gmt|zulu)|(?<=\p{Ll})(?:UTC|GMT))(?!\p{L}|\s*[-+−]\s*\d)/iu;
const otherName = /offset|versatz|local|lokal|difference/i;
/** "Time zone: UTC", "All times in UTC" above the rows (common practice, several languages). */
const utcLine =
  /(?:(?:time|zeit)[ -]?zone|fuseau|fuso|zona horaria|tidssone|tidszon|tijdzone|strefa)[^\p{L}]*\b(?:utc|gmt)\b(?!\s*[-+−]\s*\d)|\btimes?(?: are)? in (?:utc|gmt)\b(?!\s*[-+−]\s*\d)/iu;

/** Whether the name of a column says that its times are in UTC. Never throws. */
export function saysUtc(name: string): boolean {
  return utcName.test(name) && !otherName.test(name);
}

/**
 * A format of times whose columns, or a line above them, say that they are in UTC.
 *
 * @param names Of the columns of the time.
 * @returns The format as it is where nothing says so, or its cells hold offsets. Never throws.
 */
export function inUtc(format: TimeFormat, names: readonly string[], preamble: readonly string[]): TimeFormat {
  if (format.kind !== 'date' || format.isAbsolute) return format;
  const isNamed = names.some(saysUtc) && !names.some((name) => otherName.test(name));
  if (!isNamed && !preamble.some((line) => utcLine.test(line))) return format;
  return {
    ...format,
    isAbsolute: true,
    why: `${format.why}; in UTC, as ${isNamed ? 'its name' : 'a line above'} says`,
  };
}
