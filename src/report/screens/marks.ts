import { causes } from '../../model/cause.js';
import type { Probabilities } from '../../model/cause.js';
import type { ZoneFinding } from '../../model/findings.js';
import { html, joined, raw, type Html } from '../text/html.js';
import { percentText, wholePercents } from '../text/numbers.js';
import { standingOf, standingWords, type Standing } from '../sentences/standing.js';
import { causeWords, trendWords } from '../text/words.js';

/**
 * Shapes and fills that every screen refers to. Each cause has a fill of its own (solid, stripes, dots …), each status
 * a shape of its own, so nothing depends on colour.
 */
export const shapes: Html = raw(`<svg class="shapes" aria-hidden="true" width="0" height="0"><defs>
<pattern id="fill-sensor" width="8" height="8" patternUnits="userSpaceOnUse"><rect class="bg-sensor" width="8" height="8"/></pattern>
<pattern id="fill-wiring" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="bg-wiring" width="7" height="7"/><rect class="fg" width="2.2" height="7"/></pattern>
<pattern id="fill-input" width="6" height="6" patternUnits="userSpaceOnUse"><rect class="bg-input" width="6" height="6"/><circle class="fg" cx="3" cy="3" r="1.3"/></pattern>
<pattern id="fill-heater" width="6" height="6" patternUnits="userSpaceOnUse"><rect class="bg-heater" width="6" height="6"/><rect class="fg" width="6" height="1.8"/></pattern>
<pattern id="fill-recording" width="6" height="6" patternUnits="userSpaceOnUse"><rect class="bg-recording" width="6" height="6"/><rect class="fg" width="1.6" height="6"/></pattern>
<pattern id="fill-none" width="8" height="8" patternUnits="userSpaceOnUse"><rect class="bg-none" width="8" height="8"/></pattern>
</defs>
<symbol id="mark-faulty" viewBox="0 0 20 20"><path d="M10 1.5 19 18H1z"/><path class="cut" d="M9 7h2v6H9zm0 7h2v2H9z"/></symbol>
<symbol id="mark-watch" viewBox="0 0 20 20"><circle class="line" cx="10" cy="10" r="7.5"/><path d="M10 2.5a7.5 7.5 0 0 1 0 15z"/></symbol>
<symbol id="mark-healthy" viewBox="0 0 20 20"><path class="line" d="M3 10.5 8 15.5 17.5 4.5"/></symbol>
<symbol id="mark-fixed" viewBox="0 0 20 20"><circle class="line" cx="10" cy="10" r="7.5"/><path class="line" d="M6 10.2 9 13.2 14.2 7"/></symbol>
<symbol id="mark-insufficient-data" viewBox="0 0 20 20"><rect class="line dash" x="2.5" y="2.5" width="15" height="15"/><path class="line" d="M7 8a3 3 0 1 1 3.6 3v1.6M10.5 14.6v1"/></symbol>
<symbol id="mark-caution" viewBox="0 0 20 20"><path class="line" d="M10 2.5 18.5 17.5h-17z"/><path d="M9.1 7.5h1.8v5.4H9.1zm0 6.3h1.8v1.7H9.1z"/></symbol></svg>`);

export function mark(name: Standing | 'caution'): Html {
  return html`<svg class="mark mark-${name}" aria-hidden="true" width="20" height="20">
    <use href="#mark-${name}"></use>
  </svg>`;
}

export function statusMark(zone: Pick<ZoneFinding, 'status' | 'fixed'>): Html {
  const standing = standingOf(zone);
  return html`<span class="status status-${standing}">${mark(standing)} ${standingWords[standing]}</span>`;
}

/** Beside the status of a zone whose loop cannot hold its heat back; nothing for others. */
export function heatMark({ uncheckedHeat }: Pick<ZoneFinding, 'uncheckedHeat'>): Html | null {
  return uncheckedHeat ? html`<span class="status status-faulty">${mark('caution')} May overheat</span>` : null;
}

const arrows = { worse: '↗', steady: '→', better: '↘' } as const;

export function trendMark({ trend }: Pick<ZoneFinding, 'trend'>): Html {
  if (!trend) return html`<span class="faint">not told</span>`;
  return html`<span class="trend trend-${trend}"
    ><span aria-hidden="true">${arrows[trend]}</span> ${trendWords[trend]}</span
  >`;
}

/** Shares below this are left out of the words under the bar; the bar and the zone's page have them. */
const spokenShare = 0.04;

/** The bar of causes with its numbers in words below. */
export function causeBar(probabilities: Probabilities): Html {
  const percents = wholePercents(causes.map((cause) => probabilities[cause]));
  const spoken = causes
    .map((cause) => [cause, probabilities[cause]] as const)
    .filter(([, share]) => share >= spokenShare)
    .sort((a, b) => b[1] - a[1]);
  let from = 0;
  const parts = causes.map((cause, i) => {
    const width = percents[i]!;
    const part = html`<rect
      class="part"
      x="${from}%"
      y="0"
      width="${width}%"
      height="100%"
      fill="url(#fill-${cause})"
    ></rect>`;
    from += width;
    return width > 0 && part;
  });
  const words = spoken.map(
    ([cause, share]) => html`<span class="share">${swatch(cause)}${causeWords[cause]} ${percentText(share)}</span>`,
  );
  return html`<div class="cause-bar">
    <svg class="bar" aria-hidden="true" width="100%" height="14">${parts}</svg>
    <span class="shares">${joined(words, raw(' '))}</span>
  </div>`;
}

/** A small square with the cause's fill. */
export function swatch(cause: string): Html {
  return html`<svg class="swatch" aria-hidden="true" width="11" height="11">
    <rect width="11" height="11" fill="url(#fill-${cause})" />
  </svg>`;
}
