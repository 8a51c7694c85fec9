/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { allDrawn } from './chart-host.js';

/** Prints the screen as it stands, or the open zone as one page to take to the machine. */
export function listenForPrint(): void {
  document.addEventListener('click', (event) => {
    const what = (event.target as Element).closest<HTMLElement>('[data-do]')?.dataset['do'];
    if (what !== undefined) void print(what === 'sheet');
  });
  window.addEventListener('afterprint', () => delete document.documentElement.dataset['print']);
}

async function print(asSheet: boolean): Promise<void> {
  await allDrawn();
  if (asSheet) layOutSheet();
  window.print();
}

/** Height that A4 and US Letter both have, less their margins, in CSS pixels at 96 to the inch (CSS Values 4, 6.2). */
const sheetHeightPx = ((279.4 - 2 * 11 - 3) * 96) / 25.4;

/** Lays the open zone out as one page; a long list of measurements is made smaller until it fits. */
function layOutSheet(): void {
  const root = document.documentElement;
  root.style.removeProperty('--sheet-zoom');
  root.dataset['print'] = 'sheet';
  const main = document.querySelector('main');
  for (let i = 0; main && i < 4; i++) {
    const tall = main.getBoundingClientRect().height;
    if (tall <= sheetHeightPx) break;
    const zoom = Number(root.style.getPropertyValue('--sheet-zoom') || 1);
    // Width stays the page's: narrower letters need fewer lines, so the height falls faster than the zoom.
    root.style.setProperty('--sheet-zoom', String(Math.max(0.4, zoom * Math.max(0.8, sheetHeightPx / tall))));
  }
}
