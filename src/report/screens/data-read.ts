import type { Findings, RejectedExample, SourceNote } from '../../model/findings.js';
import { html, type Html } from '../text/html.js';
import { nameHtml } from '../text/names.js';
import { counted, listText, numberText } from '../text/numbers.js';
import { filesInOrder } from '../text/file-order.js';
import { alike } from '../text/alike.js';
import { idWords } from '../text/words.js';
import { dataTable, wide } from './figure.js';

const kindWords: Readonly<Record<SourceNote['kind'], string>> = {
  temperature: 'temperatures',
  alarm: 'alarms',
  maintenance: 'maintenance list',
  stops: 'stop list',
  plant: 'plant file',
};

/** Every file, what it was taken for and what was left out; files that were read alike, as a log split by day, in one row. */
export function dataRead({ sources }: Findings): Html {
  if (sources.length === 0) return html`<p>No file is named in these findings.</p>`;
  const groups = alike(filesInOrder(sources), ({ kind, layout, notes }) => JSON.stringify([kind, layout, notes]));
  const rows = groups.map((files) => {
    const [first] = files;
    const sum = (of: (file: SourceNote) => number): number => files.reduce((total, file) => total + of(file), 0);
    return [
      fileNames(files),
      kindWords[first.kind],
      first.layout,
      numberText(sum(({ rowsRead }) => rowsRead)),
      html`${numberText(sum(({ rowsRejected }) => rowsRejected))} ${reasons(files)} ${examples(files)}`,
      html`<ul>
        ${first.notes.map((note) => html`<li>${note}</li>`)}
      </ul>`,
    ];
  });
  return wide(
    'Data read',
    dataTable(['File', 'Holds', 'Taken for', 'Rows read', 'Rows left out', 'How it was understood'], rows),
  );
}

function fileNames(files: readonly SourceNote[]): Html {
  const [first, ...others] = files;
  if (others.length === 0) return nameHtml(first!.file);
  return html`${nameHtml(first!.file)}
    <details class="numbers">
      <summary>and ${counted(others.length, 'more file')} like it</summary>
      ${others.map(
        ({ file, rowsRead, rowsRejected }) =>
          html`<span class="stacked"
            >${nameHtml(file)}
            <span class="faint">${numberText(rowsRead)} read, ${numberText(rowsRejected)} left out</span></span
          >`,
      )}
    </details>`;
}

/** The first row of each reason, from the first file that has one. */
function examples(files: readonly SourceNote[]): Html | null {
  const firsts = new Map<string, RejectedExample & { readonly file: string }>();
  for (const { file, rejectedExamples = [] } of files)
    for (const example of rejectedExamples)
      if (!firsts.has(example.reason)) firsts.set(example.reason, { ...example, file });
  if (firsts.size === 0) return null;
  const shown = [...firsts.values()].map(
    ({ reason, line, text, file }) =>
      html`<span class="stacked faint"
        >${idWords(reason)}, line
        ${line}${files.length > 1 && html` of ${nameHtml(file)}`}${text !== '' && html`: <code>${text}</code>`}</span
      >`,
  );
  return html`<details class="numbers">
    <summary>show ${counted(shown.length, 'example')}</summary>
    ${shown}
  </details>`;
}

function reasons(files: readonly SourceNote[]): Html | null {
  const counts = new Map<string, number>();
  for (const { rejectedByReason } of files) {
    for (const [reason, count] of Object.entries(rejectedByReason ?? {})) {
      counts.set(reason, (counts.get(reason) ?? 0) + count);
    }
  }
  if (counts.size === 0) return null;
  return html`<span class="faint"
    >(${listText([...counts].map(([reason, count]) => `${count} ${idWords(reason)}`))})</span
  >`;
}
