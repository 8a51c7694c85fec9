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
  minuter: 60_000,
  minuti: 60_000,
  minuto: 60_000,
  minutos: 60_000,
  minuty: 60_000,
  minut: 60_000,
  mn: 60_000,
  h: 3_600_000,
  hr: 3_600_000,
  hrs: 3_600_000,
  hour: 3_600_000,
  hours: 3_600_000,
  std: 3_600_000,
  stunde: 3_600_000,
  stunden: 3_600_000,
  heure: 3_600_000,
  heures: 3_600_000,
  ora: 3_600_000,
  ore: 3_600_000,
  hora: 3_600_000,
  horas: 3_600_000,
  uur: 3_600_000,
  godz: 3_600_000,
  timer: 3_600_000,
  timmar: 3_600_000,
  d: 86_400_000,
  day: 86_400_000,
  days: 86_400_000,
};

const minuteMs = 60_000;
const hourMs = 3_600_000;

/** Milliseconds of the unit a header names ("Duration (min)"); null where it names none. */
export function headerUnitMs(header: string): number | null {
  const unit = wordsOf(header).findLast((word) => Object.hasOwn(unitMs, word));
  return unit === undefined ? null : unitMs[unit]!;
}

/** No stop that people write down as hours and minutes lasts longer (own choice). */
const mostHours = 23;

/**
 * Milliseconds of the second part of "0:20" in a list of stops: a minute, as people and spreadsheets write hours and
 * minutes, unless the header says minutes or seconds or a first part is too large for hours.
 */
export function secondPartMs(header: string, cells: readonly string[]): number {
  const unit = headerUnitMs(header);
  if (unit !== null) return unit >= hourMs ? minuteMs : 1000;
  const firsts = cells.map((cell) => Number(/^\s*(\d+):\d{2}\s*$/u.exec(cell)?.[1] ?? 0));
  return Math.max(0, ...firsts) > mostHours ? 1000 : minuteMs;
}

/**
 * Reads a duration: "00:13:05" (h:m:s), "13:05" (m:s), "1 d 02:03:04", "1h 5m", "1h15", "20'", "93 s", or a plain number.
 *
 * @param plainMs Milliseconds that a plain number counts.
 * @param secondMs Milliseconds that the second of two parts counts: a minute where "0:20" is 20 min.
 * @returns Milliseconds; NaN for anything else. Never throws.
 */
export function parseDurationMs(cell: string, plainMs: number, secondMs = 1000): number {
  const text = plainMarks(cell.trim().toLowerCase());
  const two = /^(\d+):(\d{2})$/u.exec(text);
  if (two) return (Number(two[1]) * 60 + Number(two[2])) * secondMs;
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

/** "20'" and "20\u2032" as 20 min, "1h15" as 1h15min. */
function plainMarks(text: string): string {
  return text.replace(/(\d)\s*['\u2019\u2032]$/u, '$1 min').replace(/^(\d+\s*h)\s*(\d{1,2})$/u, '$1 $2 min');
}
