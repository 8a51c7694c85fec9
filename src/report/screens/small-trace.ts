import type { FaultMark, Findings, ZoneFinding } from '../../model/findings.js';
import { thinTrace } from '../embed/thin-trace.js';
import { html, type Html } from '../text/html.js';

const widthPx = 220;
const heightPx = 30;
/** Room above the curve for the faults. */
const faultsPx = 5;
/** One place every two pixels: more cannot be seen. */
const places = widthPx / 2;

/**
 * A zone's whole window in a row of a table: the lowest and highest readings as a band, faults above it. All curves
 * have the same time from left to right; each has its own scale of temperature, since the shape is what is compared.
 */
export function smallTrace({ trace, faultMarks }: ZoneFinding, { window }: Findings): Html | null {
  if (!trace || trace.timeMs.length < 2) return null;
  const [startMs, endMs] = [Date.parse(window.start), Date.parse(window.end)];
  const x = (timeMs: number) => Math.round(((timeMs - startMs) / (endMs - startMs)) * widthPx);
  const { timeMs, minDegC, maxDegC } = thinTrace(trace, places);
  const lowest = extreme(minDegC, Math.min);
  const highest = extreme(maxDegC, Math.max);
  const perDegC = (heightPx - faultsPx - 2) / Math.max(1, highest - lowest);
  const y = (degC: number) => Math.round(heightPx - 1 - (degC - lowest) * perDegC);
  const bars = timeMs.flatMap((ms, i) => {
    const [low, high] = [minDegC[i] ?? null, maxDegC[i] ?? null];
    return low === null || high === null ? [] : [`M${x(ms)} ${y(low)}V${y(high) - 1}`];
  });
  return html`<svg class="small-trace" aria-hidden="true" width="${widthPx}" height="${heightPx}">
    <path class="band" d="${bars.join('')}" />
    <path class="faults" d="${faultBars(faultMarks ?? [], x)}" />
  </svg>`;
}

function extreme(column: readonly (number | null)[], of: (...values: number[]) => number): number {
  const known = column.filter((value) => value !== null);
  return known.length === 0 ? 0 : of(...known);
}

/** Faults that fall on the same pixel are one bar. */
function faultBars(marks: readonly FaultMark[], x: (timeMs: number) => number): string {
  const bars = marks.map(({ start, end }) => {
    const from = x(Date.parse(start));
    return `M${from} ${faultsPx / 2}h${Math.max(1, x(Date.parse(end)) - from)}`;
  });
  return [...new Set(bars)].join('');
}
