/** Markup that is safe to put into the page as it stands. Made by `html` and `raw` only. */
export class Html {
  constructor(readonly markup: string) {}

  toString(): string {
    return this.markup;
  }
}

export type Content = Html | string | number | null | undefined | false | readonly Content[];

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * The one escape function: safe between tags and inside quoted attributes. Control characters that no text needs
 * become a visible box, so that a name cannot hide what it is.
 */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => entities[sign]!).replace(unprintable, '\uFFFD');
}

const unprintable = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F]/g;

/** Markup with every value escaped, except markup made by `html` or `raw`. Lists are joined without a sign between. */
export function html(parts: TemplateStringsArray, ...values: readonly Content[]): Html {
  return new Html(tightened(parts).reduce((text, part, i) => text + markupOf(values[i - 1]) + part));
}

const tight = new WeakMap<TemplateStringsArray, readonly string[]>();

/** The indentation of our own source is a third of a page with many zones: one blank says as much. */
function tightened(parts: TemplateStringsArray): readonly string[] {
  let texts = tight.get(parts);
  if (!texts) {
    texts = parts.map((part) => part.replace(/\s*\n\s*/g, ' '));
    tight.set(parts, texts);
  }
  return texts;
}

/** Markup from a trusted place: our own page, style and script. */
export function raw(markup: string): Html {
  return new Html(markup);
}

/** List with markup between, as a comma or a line break. */
export function joined(contents: readonly Content[], between: Content): Html {
  return new Html(contents.map(markupOf).join(markupOf(between)));
}

function markupOf(content: Content): string {
  if (content === null || content === undefined || content === false) return '';
  if (content instanceof Html) return content.markup;
  if (typeof content === 'string') return escapeHtml(content);
  if (typeof content === 'number') return String(content);
  return content.map(markupOf).join('');
}

/** JSON that may stand inside a script element: no `<`, and no line ends that only JavaScript knows. */
export function scriptJson(value: unknown): Html {
  const text = JSON.stringify(value)
    .replace(/</g, '\\u003c')
    .replace(/\u2028/g, '\\u2028')
    .replace(/\u2029/g, '\\u2029');
  return new Html(text);
}
