/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { drawCharts } from './chart-host.js';

/** The address after # names the screen; anything else opens the first one. */
function wantedView(): HTMLElement {
  const id = location.hash.slice(1);
  const wanted = id === '' ? null : document.getElementById(id);
  const view = wanted?.closest<HTMLElement>('.view') ?? document.querySelector<HTMLElement>('.view');
  if (!view) throw new Error('The page holds no screen.');
  return view;
}

/** Shows the wanted screen alone and draws its charts. */
export function openView(): HTMLElement {
  const view = wantedView();
  for (const other of document.querySelectorAll('.view.open')) other.classList.remove('open');
  view.classList.add('open');
  for (const link of document.querySelectorAll<HTMLAnchorElement>('nav a')) {
    const screen = view.classList.contains('zone') ? 'zones' : view.id;
    if (link.hash === `#${screen}`) link.setAttribute('aria-current', 'page');
    else link.removeAttribute('aria-current');
  }
  drawCharts(view);
  return view;
}

/** A new screen starts at its top, with the heading in focus so that a screen reader says it. */
export function listenForViews(): void {
  window.addEventListener('hashchange', () => {
    if (location.hash === '#main') return;
    const view = openView();
    scrollTo({ top: 0, behavior: 'instant' });
    view.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true });
  });
}
