/// <reference lib="dom" />
import type { Look } from '../charts/look.js';

/** The chart's look, read from the style sheet of the page. */
export function lookOf(place: HTMLElement): Look {
  const style = getComputedStyle(document.documentElement);
  const colour = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    unit: document.documentElement.dataset['unit'] === 'degF' ? 'degF' : 'degC',
    widthPx: Math.max(240, Math.floor(place.clientWidth) - 90),
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
