import type { Config } from 'vega-lite';
import { toFahrenheit, type Temperature, type ShownUnit } from '../text/phrase.js';

/** How a chart is to look: the page reads it from its own style, so charts and page always agree. */
export interface Look {
  readonly unit: ShownUnit;
  /** Width of the place for the chart, pixels. */
  readonly widthPx: number;
  readonly ink: string;
  readonly faint: string;
  readonly paper: string;
  readonly reading: string;
  readonly setpoint: string;
  readonly fault: string;
  readonly output: string;
  readonly running: string;
  readonly alarm: string;
}

/** A level or a difference in the unit shown, to a hundredth; null stays null. */
export function inUnit(degC: number | null, kind: Temperature['kind'], { unit }: Look): number | null {
  if (degC === null || unit === 'degC') return degC;
  return Math.round(toFahrenheit(degC, kind) * 100) / 100;
}

/** The unit shown, as an axis names it. */
export function unitText({ unit }: Look): string {
  return unit === 'degC' ? '°C' : '°F';
}

/** A narrow place holds fewer ticks. */
export function tickCount({ widthPx }: Look): number {
  return Math.max(3, Math.min(14, Math.floor(widthPx / 80)));
}

/**
 * Label of a time axis: the day at midnight, the hour elsewhere. The charts' times are the plant's wall clock written
 * as UTC.
 */
export const timeLabel =
  "utchours(datum.value) + utcminutes(datum.value) > 0 ? utcFormat(datum.value, '%H:%M') : utcFormat(datum.value, '%a %-d %b')";

/** A day's label, for charts with one point or a few a day. */
export function dayAxis(look: Look) {
  return { title: null, tickCount: { interval: 'day', step: daysPerTick(look) }, format: '%-d %b', labelOverlap: true };
}

/** Two weeks and a month are the usual windows; labels that would touch are left out by the chart itself. */
function daysPerTick({ widthPx }: Look): number {
  return widthPx < 300 ? 4 : 2;
}

/** Letters and lines for every chart. */
export function chartConfig(look: Look): Config {
  const text = {
    labelColor: look.ink,
    titleColor: look.ink,
    labelFontSize: 12,
    titleFontSize: 12,
    titleFontWeight: 600,
  } as const;
  return {
    font: 'system-ui, sans-serif',
    background: 'transparent',
    aria: false,
    view: { stroke: look.faint },
    axis: { ...text, gridColor: look.faint, gridOpacity: 0.5, domainColor: look.faint, tickColor: look.faint },
    legend: { ...text, orient: 'top', symbolStrokeColor: look.ink },
    text: { color: look.ink },
  };
}
