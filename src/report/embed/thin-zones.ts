import type { ZoneFinding } from '../../model/findings.js';
import { thinTrace } from './thin-trace.js';

/** Up to this many zones every trace keeps all its places; the page stays below 2.5 MB (measured). */
const wholeTraces = 24;

/** Places of a whole trace; a screen cannot show more. */
const wholePlaces = 1500;

/** With more zones a healthy one keeps at least these: over two weeks a place holds some two hours. Our own choice. */
const leastPlaces = 150;

/**
 * Places that a zone's trace may have: all for whoever needs somebody, and what is left of the budget for the others.
 *
 * @returns A function of the zone; Infinity where nothing needs to be thinned.
 */
function placesFor(zones: readonly ZoneFinding[]): (zone: ZoneFinding) => number {
  if (zones.length <= wholeTraces) return () => Infinity;
  const needing = zones.filter(needsSomebody).length;
  const left = (wholeTraces * wholePlaces - needing * wholePlaces) / Math.max(1, zones.length - needing);
  const others = Math.max(leastPlaces, Math.floor(left));
  const own = Math.max(others, Math.min(wholePlaces, Math.floor((wholeTraces * wholePlaces) / Math.max(1, needing))));
  return (zone) => (needsSomebody(zone) ? own : others);
}

function needsSomebody({ status }: ZoneFinding): boolean {
  return status === 'faulty' || status === 'watch';
}

/** More points than this on a healthy zone's small charts tell nothing more. Our own choice. */
const mostPoints = 60;

/**
 * The zones as the page shows them: in a plant of many zones the healthy ones get coarser charts, so that the page
 * stays small enough to send and quick to open. Whoever needs somebody keeps every place.
 */
export function thinZones(zones: readonly ZoneFinding[]): readonly ZoneFinding[] {
  const places = placesFor(zones);
  return zones.map((zone) => {
    const trace = zone.trace ? thinTrace(zone.trace, places(zone)) : null;
    if (needsSomebody(zone) || zones.length <= wholeTraces) return { ...zone, trace };
    return { ...zone, trace, duty: thinList(zone.duty, mostPoints), soaks: thinList(zone.soaks, mostPoints) };
  });
}

/** Every nth of a list, so that at most `most` are left; the last one always stays, since it is the present state. */
function thinList<T>(items: readonly T[], most: number): readonly T[] {
  const each = Math.ceil(items.length / most);
  return each <= 1 ? items : items.filter((_, i) => (items.length - 1 - i) % each === 0);
}
