import { numberText } from './numbers.js';
import { html, type Html } from './html.js';

/** A temperature inside a sentence: a level (151 °C = 304 °F) or a difference (1 °C = 1.8 °F). */
export interface Temperature {
  readonly degC: number;
  readonly kind: 'level' | 'difference';
  readonly digits: number;
  /** Follows the unit: "/min". */
  readonly per: string;
  readonly isSigned: boolean;
}

/** A sentence whose temperatures are still numbers, so that the reader can choose °C or °F. */
export type Phrase = readonly (string | Temperature)[];

export type ShownUnit = 'degC' | 'degF';

type Part = string | number | Temperature | Phrase;

/** Makes a phrase from a template; numbers are written as they are. */
export function phrase(texts: TemplateStringsArray, ...values: readonly Part[]): Phrase {
  const parts: (string | Temperature)[] = [texts[0] ?? ''];
  values.forEach((value, i) => {
    if (typeof value === 'object' && 'degC' in value) parts.push(value);
    else if (typeof value === 'object') parts.push(...value);
    else parts.push(String(value));
    parts.push(texts[i + 1] ?? '');
  });
  return parts.filter((part) => part !== '');
}

/** A plain text is a phrase without temperatures. */
export function plain(text: string): Phrase {
  return [text];
}

/** A temperature: turned into °F with the offset of 32. */
export function level(degC: number, digits = 1): Temperature {
  return { degC, kind: 'level', digits, per: '', isSigned: false };
}

/** A difference, or a rate (`per` such as " a day"): turned into °F by the factor alone. */
export function difference(degC: number, digits = 1, per = ''): Temperature {
  return { degC, kind: 'difference', digits, per, isSigned: false };
}

/** A difference that shows its plus. */
export function signed(degC: number, digits = 1, per = ''): Temperature {
  return { degC, kind: 'difference', digits, per, isSigned: true };
}

export function toFahrenheit(degC: number, kind: Temperature['kind']): number {
  return kind === 'level' ? degC * 1.8 + 32 : degC * 1.8;
}

/** With a space that does not break and the sign of the unit: "181.5 °C". */
export function temperatureText(temperature: Temperature, unit: ShownUnit): string {
  const { degC, kind, digits, per, isSigned } = temperature;
  const value = unit === 'degC' ? degC : toFahrenheit(degC, kind);
  const plus = isSigned && Number(value.toFixed(digits)) > 0 ? '+' : '';
  return `${plus}${numberText(value, digits)}\u00A0°${unit === 'degC' ? 'C' : 'F'}${per}`;
}

/** For the terminal and for attributes. */
export function phraseText(parts: Phrase, unit: ShownUnit = 'degC'): string {
  return parts.map((part) => (typeof part === 'string' ? part : temperatureText(part, unit))).join('');
}

/** For the page: both units stand in it, and the style sheet shows the chosen one. */
export function phraseHtml(parts: Phrase): Html {
  return html`${parts.map((part) => (typeof part === 'string' ? part : temperatureHtml(part)))}`;
}

export function temperatureHtml(temperature: Temperature): Html {
  return html`<span class="in-c">${temperatureText(temperature, 'degC')}</span
    ><span class="in-f">${temperatureText(temperature, 'degF')}</span>`;
}

const degreesInText = /(−|-)?(\d+(?:\.\d+)?)[ \u00A0]?°C/g;

/**
 * A sentence written elsewhere, with its temperatures made switchable. Every "21.0 °C" in it is taken as of one kind, so
 * use it only on texts that speak of levels alone, or of differences alone.
 */
export function phraseFromText(text: string, kind: Temperature['kind'] = 'level'): Phrase {
  const parts: (string | Temperature)[] = [];
  let from = 0;
  for (const match of text.matchAll(degreesInText)) {
    parts.push(text.slice(from, match.index));
    const digits = match[2]!.split('.')[1]?.length ?? 0;
    parts.push((kind === 'level' ? level : difference)(Number(match[2]) * (match[1] ? -1 : 1), digits));
    from = match.index + match[0].length;
  }
  parts.push(text.slice(from));
  return parts.filter((part) => part !== '');
}
