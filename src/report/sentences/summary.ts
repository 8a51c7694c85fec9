import type { Findings, ZoneFinding } from '../../model/findings.js';
import { counted, listText } from '../text/numbers.js';
import { shortName, zoneOnMachine } from '../text/names.js';
import { causeText } from './verdict.js';

/** Named in full up to this many; the table below has the rest. */
const mostNamed = 3;

/** The sentence above everything: how many zones need somebody, which, and what the others are. */
export function summary({ zones }: Findings): string {
  if (zones.length === 0) return 'No zone was found in these logs, so nothing could be judged.';
  const of = (status: ZoneFinding['status']): readonly ZoneFinding[] => zones.filter((zone) => zone.status === status);
  const faulty = of('faulty');
  const need = `${faulty.length === 0 ? 'None' : faulty.length} of ${counted(zones.length, 'zone')} ${faulty.length === 1 ? 'needs' : 'need'} a fitter`;
  const named = faulty.length === 0 ? '.' : `: ${listText(namedZones(faulty))}.`;
  return [
    `${need}${named}`,
    ...restText(of('watch').length, of('insufficient-data').length, of('healthy').length),
  ].join(' ');
}

function namedZones(zones: readonly ZoneFinding[]): readonly string[] {
  const named = zones.slice(0, mostNamed).map((zone) => `${shortName(zoneOnMachine(zone))} (${causeText(zone)})`);
  return zones.length > mostNamed ? [...named, `${zones.length - mostNamed} more`] : named;
}

function restText(watch: number, untold: number, healthy: number): readonly string[] {
  const parts = [
    ...(watch > 0 ? [`${watch} more to keep an eye on`] : []),
    ...(healthy > 0 ? [`${healthy} healthy`] : []),
    ...(untold > 0 ? [`${untold} could not be judged`] : []),
  ];
  if (parts.length === 0) return [];
  const text = listText(parts);
  return [`${text.charAt(0).toUpperCase()}${text.slice(1)}.`];
}
