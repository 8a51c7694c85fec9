import { html, type Html } from './html.js';
import type { ZoneFinding } from '../../model/findings.js';

/** A name from the logs: its own reading direction, and it may break anywhere. */
export function nameHtml(name: string): Html {
  return html`<bdi class="name">${name}</bdi>`;
}

/** Zone names repeat from machine to machine, so a sentence says both. */
export function zoneOnMachine({ zone, machine }: Pick<ZoneFinding, 'zone' | 'machine'>): string {
  return machine === '' || machine === zone ? zone : `${zone} on ${machine}`;
}

const longest = 60;

/** A name short enough for a sentence; the zone's page has it whole. */
export function shortName(name: string): string {
  const signs = Array.from(name);
  return signs.length <= longest ? name : `${signs.slice(0, longest - 1).join('')}…`;
}
