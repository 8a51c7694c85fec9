/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { HOUR_MS } from '../../model/time-units.js';
import type { View } from 'vega';
import type { ZoneChartData } from '../embed/chart-data.js';
import { chartIn } from './chart-host.js';

/** Closer than this the buckets of the thinned trace hold nothing more to see. */
const closestMs = 2 * HOUR_MS;

/** Moves along a trace: buttons and keys for everybody, dragging for those with a pointer, and from the list of faults. */
export function listenForZoom(): void {
  document.addEventListener('click', (event) => {
    const target = event.target as Element;
    const button = target.closest<HTMLElement>('[data-zoom], [data-from]');
    const screen = button?.closest<HTMLElement>('.view');
    const place = screen?.querySelector<HTMLElement>('[data-chart="trace"]');
    if (!button || !place) return;
    if (button.dataset['from'] !== undefined)
      showFault(place, Number(button.dataset['from']), Number(button.dataset['to']));
    else move(place, button.dataset['zoom'] ?? 'all');
  });
  document.addEventListener('drawn', (event) => {
    const place = event.target as HTMLElement;
    if (place.dataset['chart'] === 'trace') listenForDrag(place);
  });
}

function move(place: HTMLElement, how: string): void {
  const chart = chartIn(place);
  if (!chart) return;
  const { startMs, endMs } = chart.data as ZoneChartData;
  const from = chart.view.signal('fromMs') as number;
  const width = (chart.view.signal('toMs') as number) - from;
  const moves: Readonly<Record<string, readonly [number, number]>> = {
    all: [startMs, endMs - startMs],
    earlier: [from - width / 2, width],
    later: [from + width / 2, width],
    closer: [from + width / 4, width / 2],
    wider: [from - width / 2, width * 2],
  };
  const [at, wanted] = moves[how] ?? moves['all']!;
  show(place, at, wanted);
}

/** The fault in the middle, with some of what was before and after. */
function showFault(place: HTMLElement, fromMs: number, toMs: number): void {
  const width = Math.max((toMs - fromMs) * 1.6, 12 * HOUR_MS);
  show(place, (fromMs + toMs - width) / 2, width);
  place.scrollIntoView({ block: 'center', behavior: isCalm() ? 'instant' : 'smooth' });
}

function show(place: HTMLElement, wantedFromMs: number, wantedWidthMs: number): void {
  const chart = chartIn(place);
  if (!chart) return;
  const { startMs, endMs } = chart.data as ZoneChartData;
  const width = Math.min(endMs - startMs, Math.max(closestMs, wantedWidthMs));
  const from = Math.min(Math.max(startMs, wantedFromMs), endMs - width);
  void chart.view
    .signal('fromMs', from)
    .signal('toMs', from + width)
    .runAsync();
  const shown = place.closest('.figure')?.querySelector('.shown');
  if (shown) shown.textContent = `${wallText(from)} to ${wallText(from + width)}`;
}

/** Times in the chart are the plant's wall clock written as UTC. */
function wallText(ms: number): string {
  const at = new Date(ms);
  const day = at.toLocaleDateString('en-GB', { timeZone: 'UTC', day: 'numeric', month: 'short' });
  return `${day} ${at.toISOString().slice(11, 16)}`;
}

/** After a drag across the chart, what was picked fills it. */
function listenForDrag(place: HTMLElement): void {
  const view = chartIn(place)?.view;
  if (!view) return;
  let picked: readonly number[] | undefined;
  view.addSignalListener('pick', (_name: string, value: unknown) => {
    picked = (value as { t?: readonly number[] }).t;
  });
  place.addEventListener('pointerup', () => {
    window.setTimeout(() => {
      if (picked && picked.length === 2) takePick(place, view, picked);
      picked = undefined;
    }, 0);
  });
  place.addEventListener('dblclick', () => move(place, 'all'));
}

function takePick(place: HTMLElement, view: View, picked: readonly number[]): void {
  const from = Math.min(Number(picked[0]), Number(picked[1]));
  const to = Math.max(Number(picked[0]), Number(picked[1]));
  view.data('pick_store', []);
  if (to - from > 60_000) show(place, from, to - from);
}

function isCalm(): boolean {
  return matchMedia('(prefers-reduced-motion: reduce)').matches;
}
