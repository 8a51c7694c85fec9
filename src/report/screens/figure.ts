import { html, raw, type Content, type Html } from '../text/html.js';

export interface ChartPlace {
  /** Name of the chart in `charts`. */
  readonly chart: string;
  readonly title: string;
  /** What a reader sees in it, for one who cannot see it. */
  readonly says: string;
  /** How to read it. */
  readonly note: Content;
  /** The numbers, as a table that can be opened; 'made in the page' where they are many. */
  readonly numbers?:
    'made in the page' | { readonly head: readonly string[]; readonly rows: readonly (readonly Content[])[] };
  /** Buttons above the chart. */
  readonly tools?: Content;
}

/** A place that the page fills with a chart, with its words and its numbers. */
export function figure({ chart, title, says, note, numbers, tools }: ChartPlace): Html {
  return html`<figure class="figure figure-${chart}">
    <figcaption><h3>${title}</h3></figcaption>
    ${tools}
    <div class="chart" data-chart="${chart}" role="img" aria-label="${says}"></div>
    <p class="note">${note}</p>
    ${numbers && numbersTable(chart, title, numbers)}
  </figure>`;
}

function numbersTable(chart: string, title: string, numbers: NonNullable<ChartPlace['numbers']>): Html {
  const isMadeThere = numbers === 'made in the page';
  return html`<details class="numbers">
    <summary>The numbers<span class="unseen">: ${title}</span></summary>
    <div
      class="wide"
      tabindex="0"
      role="region"
      aria-label="Numbers: ${title}"
      ${isMadeThere && raw(`data-numbers="${chart}"`)}
    >
      ${!isMadeThere && dataTable(numbers.head, numbers.rows)}
    </div>
  </details>`;
}

/** A table of which the first column names the row and the others are numbers or short texts. */
export function dataTable(head: readonly string[], rows: readonly (readonly Content[])[]): Html {
  return html`<table class="plain">
    <thead>
      <tr>
        ${head.map((name) => html`<th scope="col">${name}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        ([first, ...rest]) =>
          html`<tr>
            <th scope="row">${first}</th>
            ${rest.map((cell) => html`<td>${cell}</td>`)}
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** A place that scrolls sideways where its table is wider than the screen; in reach of the keyboard. */
export function wide(name: string, content: Content): Html {
  return html`<div class="wide" tabindex="0" role="region" aria-label="${name}">${content}</div>`;
}
