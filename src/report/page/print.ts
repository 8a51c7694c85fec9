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
  if (asSheet) document.documentElement.dataset['print'] = 'sheet';
  window.print();
}
