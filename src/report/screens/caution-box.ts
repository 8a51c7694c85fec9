import { html, type Html } from '../text/html.js';
import { cautions } from '../sentences/cautions.js';
import { mark } from './marks.js';

/** The cautions, on every screen from which somebody may walk to a machine. */
export function cautionBox(): Html {
  return html`<div class="caution" role="note" aria-label="Caution">
    ${mark('caution')}
    <p><strong>Caution.</strong> ${cautions.danger} <strong>${cautions.doubt}</strong></p>
  </div>`;
}
