/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import type { View } from 'vega';
import { plantCharts, zoneCharts } from '../charts/index.js';
import type { PlantChartData, ZoneChartData } from '../embed/chart-data.js';
import { lookOf } from './look.js';

interface Drawn {
  readonly view: View;
  readonly data: ZoneChartData | PlantChartData;
}

const drawn = new Map<HTMLElement, Drawn>();
let drawing: Promise<void> = Promise.resolve();

/** The chart drawn in a place, once it is. */
export function chartIn(place: HTMLElement): Drawn | undefined {
  return drawn.get(place);
}

/** Settles when every chart asked for so far stands. */
export function allDrawn(): Promise<void> {
  return drawing;
}

/** Draws the charts of one screen that are not drawn yet, one after the other. */
export function drawCharts(screen: HTMLElement): void {
  const places = [...screen.querySelectorAll<HTMLElement>('[data-chart]')].filter((place) => !drawn.has(place));
  if (places.length === 0) return;
  drawing = drawing.then(async () => {
    for (const place of places) await drawOne(place, screen);
  });
}

/** Draws the open screen's charts again, after the unit, the colours or the width have changed. */
export function redrawCharts(): void {
  for (const [place, { view }] of drawn) {
    view.finalize();
    place.replaceChildren();
  }
  drawn.clear();
  const screen = document.querySelector<HTMLElement>('.view.open');
  if (screen) drawCharts(screen);
}

async function drawOne(place: HTMLElement, screen: HTMLElement): Promise<void> {
  const name = place.dataset['chart'] ?? '';
  const zoneData = document.getElementById(`data-${screen.id}`);
  const block = zoneData ?? document.getElementById('data-plant');
  if (drawn.has(place) || !block) return;
  try {
    const data = JSON.parse(block.textContent) as ZoneChartData & PlantChartData;
    const make = zoneData ? zoneCharts[name] : plantCharts[name];
    if (!make) throw new Error(`There is no chart "${name}".`);
    const { draw } = await import('./draw.js');
    const spec = make(data, lookOf(place));
    drawn.set(place, { view: await draw(place, spec), data });
    place.dispatchEvent(new CustomEvent('drawn', { bubbles: true }));
  } catch (error) {
    place.textContent = `This chart could not be drawn (${error instanceof Error ? error.message : String(error)}). The numbers stand beside it.`;
    place.removeAttribute('role');
  }
}

let widthPx = window.innerWidth;
let timer = 0;

window.addEventListener('resize', () => {
  if (window.innerWidth === widthPx) return; // a phone's address bar changes the height only
  widthPx = window.innerWidth;
  clearTimeout(timer);
  timer = window.setTimeout(redrawCharts, 200);
});
