import type { FaultMark, Findings, Trace, ZoneFinding } from '../../model/findings.js';
import { html, type Html } from '../text/html.js';

const widthPx = 180;
const heightPx = 30;
/** Room above the curve for the faults. */
const faultsPx = 5;
/** A stroke is two pixels wide: more of them cannot be seen, and with 200 zones would make the page too large to send. */
const strokePx = 2;

/**
 * A zone's whole window in a row of a table: the lowest and highest readings as a band, faults above it. All curves
 * have the same time from left to right; each has its own scale of temperature, since the shape is what is compared.
 */
export function smallTrace({ trace, faultMarks }: ZoneFinding, { window }: Findings): Html | null {
  if (!trace || trace.timeMs.length < 2) return null;
  const [startMs, endMs] = [Date.parse(window.start), Date.parse(window.end)];
  const x = (timeMs: number) => Math.round(((timeMs - startMs) / (endMs - startMs)) * widthPx);
  const strokes = strokesOf(trace, x);
  const lowest = Math.min(...strokes.map(({ low }) => low));
  const highest = Math.max(...strokes.map(({ high }) => high));
  const perDegC = (heightPx - faultsPx - 2) / Math.max(1, highest - lowest);
  const y = (degC: number) => Math.round(heightPx - 1 - (degC - lowest) * perDegC);
  const bars = strokes.map(({ atPx, low, high }) => `M${atPx} ${y(low)}V${y(high) - 1}`);
  return html`<svg class="small-trace" aria-hidden="true" width="${widthPx}" height="${heightPx}">
    <path class="band" d="${bars.join('')}" />
    <path class="faults" d="${faultBars(faultMarks ?? [], x)}" />
  </svg>`;
}

/** The lowest and highest reading under each stroke that has one. */
function strokesOf({ timeMs, minDegC, maxDegC }: Trace, x: (timeMs: number) => number) {
  const strokes: { readonly atPx: number; low: number; high: number }[] = [];
  for (let i = 0; i < timeMs.length; i++) {
    const [low, high] = [minDegC[i] ?? null, maxDegC[i] ?? null];
    if (low === null || high === null) continue;
    const px = x(timeMs[i]!);
    const atPx = px - (px % strokePx);
    const last = strokes.at(-1);
    if (last?.atPx !== atPx) strokes.push({ atPx, low, high });
    else [last.low, last.high] = [Math.min(last.low, low), Math.max(last.high, high)];
  }
  return strokes;
}

/** Faults that fall on the same pixel are one bar. */
function faultBars(marks: readonly FaultMark[], x: (timeMs: number) => number): string {
  const bars = marks.map(({ start, end }) => {
    const from = x(Date.parse(start));
    return `M${from} ${faultsPx / 2}h${Math.max(1, x(Date.parse(end)) - from)}`;
  });
  return [...new Set(bars)].join('');
}
