/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { allDrawn, redrawCharts } from './chart-host.js';

const root = document.documentElement;

/** Prints the screen as it stands, or the open zone as one page to take to the machine. */
export function listenForPrint(): void {
  document.addEventListener('click', (event) => {
    const what = (event.target as Element).closest<HTMLElement>('[data-do]')?.dataset['do'];
    if (what !== undefined) void print(what === 'sheet' ? 'sheet' : 'screen');
  });
  window.addEventListener('beforeprint', unfoldHealthy);
  window.addEventListener('afterprint', () => {
    if (root.dataset['print'] === undefined) return;
    delete root.dataset['print'];
    delete root.dataset['printReady'];
    root.style.removeProperty('--sheet-zoom');
    redrawCharts();
  });
}

/** Charts are drawn again at the width of paper, so that their letters are as large as the others. */
async function print(how: 'sheet' | 'screen'): Promise<void> {
  root.dataset['print'] = how;
  redrawCharts();
  await allDrawn();
  if (how === 'sheet') fitSheet();
  root.dataset['printReady'] = how;
  window.print();
}

/** What is folded on the screen is not seen on paper; the list of healthy zones is short and belongs there. */
function unfoldHealthy(): void {
  for (const list of document.querySelectorAll<HTMLDetailsElement>('.view.open details.healthy')) list.open = true;
}

/** Height that A4 and US Letter both have, less their margins, in CSS pixels at 96 to the inch (CSS Values 4, 6.2). */
const sheetHeightPx = ((279.4 - 2 * 11 - 3) * 96) / 25.4;

/** Letters smaller than this share of the page's cannot be read at a machine. */
const smallestZoom = 0.4;

/** Makes the sheet as large as fits on one page, by halving the range in which the right size lies. */
function fitSheet(): void {
  const main = document.querySelector('main');
  if (!main) return;
  const fits = (zoom: number): boolean => {
    root.style.setProperty('--sheet-zoom', String(zoom));
    return main.getBoundingClientRect().height <= sheetHeightPx;
  };
  let [low, high] = [smallestZoom, 1];
  if (fits(high)) return;
  for (let i = 0; i < 6; i++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  fits(low);
}
