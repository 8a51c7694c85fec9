/// <reference lib="dom" />
import type { Look } from '../charts/look.js';

/** On the sheet a chart is wide and low and made smaller with everything else. */
const sheetWidthPx = 1150;

/** The place less its axis and the axis' title. */
function roomFor(place: HTMLElement): number {
  return Math.max(240, Math.floor(place.clientWidth) - 90);
}

/**
 * The chart's look. Colours are the names that the style sheet gives them, so a chart turns dark or light with the
 * page and prints in the colours of paper without being drawn again.
 */
export function lookOf(place: HTMLElement): Look {
  const colour = (name: string): string => `var(--${name})`;
  return {
    unit: document.documentElement.dataset['unit'] === 'degF' ? 'degF' : 'degC',
    widthPx: document.documentElement.dataset['print'] === 'sheet' ? sheetWidthPx : roomFor(place),
    ink: colour('ink'),
    faint: colour('line'),
    paper: colour('paper'),
    reading: colour('reading'),
    setpoint: colour('setpoint'),
    fault: colour('fault'),
    output: colour('output'),
    running: colour('running'),
    alarm: colour('alarm'),
  };
}
