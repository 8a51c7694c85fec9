import type { Findings, ZoneFinding } from '../../model/findings.js';
import { counted, listText } from '../text/numbers.js';
import { shortName, zoneOnMachine } from '../text/names.js';
import { standingOf, type Standing } from './standing.js';
import { causeText } from './verdict.js';

/** Named in full up to this many; the table below has the rest. */
const mostNamed = 4;

/** The sentence above everything: how many zones need somebody, which, and what the others are. */
export function summary({ zones }: Findings): string {
  if (zones.length === 0) return 'No zone was found in these logs, so nothing could be judged.';
  const of = (wanted: Standing): readonly ZoneFinding[] => zones.filter((zone) => standingOf(zone) === wanted);
  const faulty = of('faulty');
  const need = needText(faulty.length, zones.length);
  const rest = listText(restTexts(of));
  if (faulty.length === 0) return `${need}: ${rest}.`;
  return `${need}${namedText(faulty)}.${rest === '' ? '' : ` The others: ${rest}.`}`;
}

/** "2 of 16 zones need a fitter". */
export function needText(needing: number, all: number): string {
  if (all === 1) return `The one zone needs ${needing === 0 ? 'no' : 'a'} fitter`;
  return `${needing === 0 ? 'None' : needing} of ${counted(all, 'zone')} ${needing <= 1 ? 'needs' : 'need'} a fitter`;
}

function namedText(zones: readonly ZoneFinding[]): string {
  const named = zones.map(
    (zone) => `${shortName(zoneOnMachine(zone))} (${causeText(zone)}${zone.uncheckedHeat ? ', may overheat' : ''})`,
  );
  const shown =
    zones.length > mostNamed ? [...named.slice(0, mostNamed - 1), `${zones.length - mostNamed + 1} more`] : named;
  return `: ${listText(shown)}`;
}

function restTexts(of: (wanted: Standing) => readonly ZoneFinding[]): readonly string[] {
  const [watch, fixed, healthy, untold] = [of('watch'), of('fixed'), of('healthy'), of('insufficient-data')];
  return [
    ...(watch.length > 0 ? [`${watch.length} to keep an eye on`] : []),
    ...(fixed.length > 0 ? [`${fixed.length} put right since`] : []),
    ...(healthy.length > 0 ? [`${healthy.length} healthy`] : []),
    ...(untold.length > 0 ? [`${untold.length} that could not be judged`] : []),
  ];
}
