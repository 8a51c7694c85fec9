import { html, type Html } from './html.js';
import type { ZoneFinding } from '../../model/findings.js';

/** A name from the logs: its own reading direction, and it may break anywhere. */
export function nameHtml(name: string): Html {
  return html`<bdi class="name">${name}</bdi>`;
}

/** The machine where it tells something that the zone's name does not say already; else ''. */
export function machineBeside({ zone, machine }: Pick<ZoneFinding, 'zone' | 'machine'>): string {
  return zone === machine || zone.startsWith(`${machine} `) ? '' : machine;
}

/** Whether an entry speaks of a zone; entries of older findings do not name the machine. */
export function isSameZone(
  entry: { readonly zone: string; readonly machine?: string },
  { zone, machine }: Pick<ZoneFinding, 'zone' | 'machine'>,
): boolean {
  return entry.zone === zone && (entry.machine ?? machine) === machine;
}

/** Zone names repeat from machine to machine, so a sentence says both. */
export function zoneOnMachine(zone: Pick<ZoneFinding, 'zone' | 'machine'>): string {
  const machine = machineBeside(zone);
  return machine === '' ? zone.zone : `${zone.zone} on ${machine}`;
}

const longest = 60;

/** A name short enough for a sentence; the zone's page has it whole. */
export function shortName(name: string): string {
  const signs = Array.from(name);
  return signs.length <= longest ? name : `${signs.slice(0, longest - 1).join('')}…`;
}

/** The machine as a line below the zone's name; nothing where the name holds it. */
export function machineLine(zone: Pick<ZoneFinding, 'zone' | 'machine'>): Html | null {
  const machine = machineBeside(zone);
  return machine === '' ? null : html`<span class="machine">${nameHtml(machine)}</span>`;
}
