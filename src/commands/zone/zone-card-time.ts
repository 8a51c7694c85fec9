import { MINUTE_MS } from '../../model/time-units.js';
import { standingOf } from '../../report/sentences/standing.js';
import { minutesText } from '../../report/text/numbers.js';
import { largestPerPlace, sparkline } from '../terminal/sparkline.js';
import { wrapText } from '../terminal/text-width.js';
import type { Card } from './zone-card-parts.js';

/** Room for the names before the curves. */
const indent = 10;
const nothing = '·';

/** What a sign says of its part of the window, the firmest first. */
const faultSigns = { '×': 'a fault', '─': 'a fault lasts' } as const;

/** The window as small curves: reading, output, and where faults stand. */
export function timeLines({ zone, findings, clock, fromMs, width, colours }: Card): readonly string[] {
  const { trace } = zone;
  if (!trace || trace.timeMs.length === 0) return [];
  const shown = trace.timeMs.map((timeMs) => timeMs >= fromMs);
  const pick = <T>(values: readonly T[]): T[] => values.filter((_, i) => shown[i]);
  const times = pick(trace.timeMs);
  if (times.length === 0) return ['', 'The trace holds nothing in that time.'];
  const places = Math.min(width - indent, times.length);
  const signs = faultSignsAt(zone, times, places);
  const used = Object.entries(faultSigns).filter(([sign]) => signs.includes(sign));
  const end = Date.parse(findings.window.end);
  const key = [
    `each sign ${minutesText((end - times[0]!) / MINUTE_MS / places)}`,
    ...used.map(([sign, says]) => `${sign} ${says}`),
  ];
  return [
    '',
    `Reading   ${sparkline(pick(trace.maxDegC), places)}`,
    ...(trace.outputPercent.some((value) => value !== null)
      ? [`Output    ${sparkline(pick(trace.outputPercent), places)}`]
      : []),
    ...(used.length > 0 ? [`Faults    ${signs.join('')}`] : []),
    ...wrapText(`${clock.dateTime(times[0]!)} to ${clock.dateTime(end)}; ${key.join(', ')}`, width - indent).map(
      (line) => colours.faint(`${' '.repeat(indent)}${line}`),
    ),
  ];
}

/** One sign per place: a single fault in it, a fault that lasts over it, or nothing. */
function faultSignsAt(zone: Card['zone'], times: readonly number[], places: number): readonly string[] {
  const singles = (zone.faultMarks ?? []).map(({ start, end }) => [Date.parse(start), Date.parse(end)] as const);
  const lasting = faultSpan(zone);
  const ends = largestPerPlace(times, places).map((time) => time!);
  return ends.map((until, i) => {
    const from = i === 0 ? times[0]! : ends[i - 1]!;
    const meets = ([start, end]: readonly [number, number]) => start <= until && end >= from;
    return singles.some(meets) ? '×' : meets(lasting) ? '─' : nothing;
  });
}

/** From the onset to the repair, or to the last sign of the fault; nothing for a zone without one. */
function faultSpan(zone: Card['zone']): readonly [number, number] {
  if (!['faulty', 'watch', 'fixed'].includes(standingOf(zone))) return [NaN, NaN];
  const lastSign = Math.max(...zone.symptoms.map(({ end }) => Date.parse(end)));
  return [Date.parse(zone.onset ?? ''), zone.fixed === null ? lastSign : Date.parse(zone.fixed)];
}
