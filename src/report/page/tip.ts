/// <reference lib="dom" />

let box: HTMLElement | undefined;

/** Shows the numbers of the point under the pointer. Texts go in as text, so a name cannot become markup. */
export function showTip(_handler: unknown, event: MouseEvent, _item: unknown, value: unknown): void {
  box ??= makeBox();
  if (value === null || typeof value !== 'object') {
    box.hidden = true;
    return;
  }
  box.replaceChildren(
    ...Object.entries(value as Record<string, unknown>).flatMap(([name, text]) => lineOf(name, text)),
  );
  box.hidden = false;
  const { innerWidth, innerHeight } = window;
  const left = Math.min(event.clientX + 14, innerWidth - box.offsetWidth - 8);
  const top = Math.min(event.clientY + 14, innerHeight - box.offsetHeight - 8);
  box.style.transform = `translate(${Math.max(4, left)}px, ${Math.max(4, top)}px)`;
}

function lineOf(name: string, text: unknown): HTMLElement[] {
  if (text === null || text === undefined || text === 'null' || text === '') return [];
  const term = document.createElement('dt');
  term.textContent = name;
  const value = document.createElement('dd');
  value.textContent = String(text);
  return [term, value];
}

function makeBox(): HTMLElement {
  const made = document.createElement('dl');
  made.className = 'tip off-print';
  made.setAttribute('aria-hidden', 'true'); // the same numbers stand in tables and lists
  made.hidden = true;
  document.body.append(made);
  return made;
}
