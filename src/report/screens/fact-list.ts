import { html, type Content, type Html } from '../text/html.js';

/** Names with one value each, side by side; those without a value are left out. */
export function factList(facts: readonly (readonly [name: string, value: Content])[]): Html {
  const told = facts.filter(([, value]) => value !== null);
  return html`<dl class="facts">
    ${told.map(
      ([name, value]) =>
        html`<div>
          <dt>${name}</dt>
          <dd>${value}</dd>
        </div>`,
    )}
  </dl>`;
}
