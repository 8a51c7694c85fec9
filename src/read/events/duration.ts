import { wordsOf } from '../../words/fold.js';

const unitMs: Readonly<Record<string, number>> = {
  ms: 1,
  s: 1000,
  sec: 1000,
  secs: 1000,
  second: 1000,
  seconds: 1000,
  sek: 1000,
  sekunden: 1000,
  m: 60_000,
  min: 60_000,
  mins: 60_000,
  minute: 60_000,
  minutes: 60_000,
  minuten: 60_000,
  minutter: 60_000,
  h: 3_600_000,
  hr: 3_600_000,
  hrs: 3_600_000,
  hour: 3_600_000,
  hours: 3_600_000,
  std: 3_600_000,
  stunden: 3_600_000,
  timer: 3_600_000,
  d: 86_400_000,
  day: 86_400_000,
  days: 86_400_000,
};

/** Milliseconds of the unit a header names ("Duration (min)"); null where it names none. */
export function headerUnitMs(header: string): number | null {
  const unit = wordsOf(header).findLast((word) => Object.hasOwn(unitMs, word));
  return unit === undefined ? null : unitMs[unit]!;
}

/**
 * Reads a duration: "00:13:05" and "13:05" (h:m:s, m:s), "1 d 02:03:04", "1h 5m", "93 s", or a plain number.
 *
 * @param plainMs Milliseconds that a plain number counts.
 * @returns Milliseconds; NaN for anything else. Never throws.
 */
export function parseDurationMs(cell: string, plainMs: number): number {
  const text = cell.trim().toLowerCase();
  if (/^\d+(?:[.,]\d+)?$/u.test(text)) return Number(text.replace(',', '.')) * plainMs;
  const clock = /^(?:(\d+)\s*(?:d(?:ays?)?|\.)\s*)?(?:(\d+):)?(\d{1,2}):(\d{2}(?:[.,]\d+)?)$/u.exec(text);
  if (clock) {
    const [, days = '0', hours = '0', minutes = '0', seconds = '0'] = clock;
    return (
      Number(days) * 86_400_000 +
      Number(hours) * 3_600_000 +
      Number(minutes) * 60_000 +
      Number(seconds.replace(',', '.')) * 1000
    );
  }
  const parts = [...text.matchAll(/(\d+(?:[.,]\d+)?)\s*(\p{L}+)/gu)];
  if (parts.length === 0 || text.replace(/(\d+(?:[.,]\d+)?)\s*(\p{L}+)[\s,]*/gu, '') !== '') return NaN;
  return parts.reduce((sum, [, amount, unit]) => sum + Number(amount!.replace(',', '.')) * (unitMs[unit!] ?? NaN), 0);
}
