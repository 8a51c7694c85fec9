import { raw, html, type Html } from '../text/html.js';
import type { Context } from './context.js';

const screens = [
  ['act', 'Act on this'],
  ['zones', 'Zones'],
  ['lost', 'Lost time and alarms'],
  ['trust', 'How far to trust this'],
] as const;

/** Name of the report, its window, the four screens, and the reader's choices. */
export function pageHead({ findings, clock }: Context): Html {
  const { start, end } = findings.window;
  return html`<header class="page-head">
      <div class="title-line">
        <h1>Heater zones <span class="window">${clock.days(start, end)}</span></h1>
        <div class="choices off-print" role="group" aria-label="How to show it">${choices}</div>
      </div>
      <nav class="off-print" aria-label="Screens">
        <ul>
          ${screens.map(([id, name]) => html`<li><a href="#${id}">${name}</a></li>`)}
        </ul>
      </nav>
    </header>
    <noscript
      ><p class="no-script">
        Without its script this page shows all screens one below the other, and no charts.
      </p></noscript
    >`;
}

const choices = raw(`<fieldset><legend class="unseen">Unit of temperature</legend>
<label><input type="radio" name="unit" value="degC" checked> °C</label>
<label><input type="radio" name="unit" value="degF"> °F</label></fieldset>
<label class="theme">Colours <select id="theme"><option value="auto">as this device</option><option value="light">light</option><option value="dark">dark</option></select></label>
<button type="button" data-do="print">Print this screen</button>`);
