import { factOf, ramp, standsOut, surprise, symptomsOf, type Term, type ZoneEvidence } from '../term.js';

const stuckMinutes = (zone: ZoneEvidence): number => factOf(zone, 'stuck-reading', 'totalMinutes');
/** Stays at codes of this zone; a number that the recording writes in all columns at once is none. */
const codeStays = (zone: ZoneEvidence): number =>
  symptomsOf(zone, 'code-value').find(({ facts }) => facts['isInAllColumnsCount'] !== 1)?.facts['spanCount'] ?? 0;
/** A restart or a power cut takes every zone of the log; a card takes its own. */
const notEverywhere = (zone: ZoneEvidence): number =>
  ramp(1 - factOf(zone, 'card-events', 'everywhereShare'), 0.2, 0.8);

/** One moment that zones share is a restart of their machine; a failing card comes again. */
const repeats = (zone: ZoneEvidence): number => ramp(factOf(zone, 'card-events', 'sharedCount'), 1, 2);

/** Zones that move as one are the surer the less chance makes it, and as far as it was these that moved, not the rest. */
function cardShift(zone: ZoneEvidence): number {
  const isTheseShare = 1 - factOf(zone, 'card-offset', 'otherSideShare');
  return ramp(surprise(factOf(zone, 'card-offset', 'chancePValue')), 1, 3) * ramp(isTheseShare, 0.5, 0.9);
}

/** Range of the set point behind a reading that stands still: no stale tag follows it so far (own choice, as in stuck-reading). */
const movedSetpointDegC = 5;

/**
 * 1 where nothing that is logged tells an input that stands still from a stale tag: a tag keeps its output and set point
 * as well, and shows no value that was put in its place.
 */
const mayBeStaleTag = (zone: ZoneEvidence): number =>
  !zone.zone.has.output &&
  !(factOf(zone, 'stuck-reading', 'setpointRangeDegC') >= movedSetpointDegC) &&
  factOf(zone, 'stuck-reading', 'jumpedToCount') === 0
    ? standsOut(zone, stuckMinutes)
    : 0;

/** What points at the input card, the channel or the recording. */
export const inputTerms: readonly Term[] = [
  {
    id: 'fails-with-its-card',
    detector: 'card-events',
    says: 'Several zones fail at the same second, as one card or supply makes them.',
    for: ['input'],
    against: ['sensor', 'wiring', 'none'],
    value: (zone) =>
      notEverywhere(zone) * repeats(zone) * ramp(surprise(factOf(zone, 'card-events', 'chancePValue')), 1, 4),
  },
  {
    id: 'fails-with-its-card-often',
    says: 'They do so again and again.',
    detector: 'card-events',
    for: ['input'],
    against: ['sensor', 'wiring', 'none'],
    value: (zone) => notEverywhere(zone) * ramp(Math.log10(factOf(zone, 'card-events', 'sharedCount')), 0.4, 1.4),
  },
  {
    id: 'all-zones-often',
    says: 'All zones of the log fail together, again and again: more than restarts explain.',
    detector: 'card-events',
    for: ['input', 'recording'],
    against: ['none'],
    value: (zone) => (1 - notEverywhere(zone)) * ramp(Math.log10(factOf(zone, 'card-events', 'sharedCount')), 0.9, 1.6),
  },
  {
    id: 'opens-shared',
    says: 'The input opens together with at least two other zones.',
    detector: 'sensor-opens',
    for: ['input'],
    against: ['sensor', 'wiring', 'none'],
    value: (zone) => notEverywhere(zone) * ramp(Math.log10(1 + factOf(zone, 'sensor-opens', 'sharedCount')), 0.3, 1.3),
  },
  {
    id: 'card-shifts',
    says: 'All zones of the card shifted together when cold.',
    detector: 'card-offset',
    for: ['input'],
    against: ['none', 'sensor'],
    // Alone it must outweigh the many sound zones: what the zone's own soaks and duty show of the shift counts no more.
    start: 3,
    value: cardShift,
  },
  {
    id: 'whole-machine-at-once',
    detector: 'card-events',
    says: 'All zones of the log fail at the same moment.',
    for: ['input', 'recording'],
    against: [],
    value: (zone) => ramp(factOf(zone, 'card-events', 'everywhereShare'), 0.3, 0.8),
  },
  {
    id: 'reading-does-not-move',
    detector: 'stuck-reading',
    says: 'The reading stands still although output or neighbours move.',
    for: ['input'],
    against: ['none', 'sensor', 'heater'],
    start: 1,
    value: (zone) => standsOut(zone, stuckMinutes),
  },
  {
    id: 'reading-still-for-hours',
    detector: 'stuck-reading',
    says: 'The reading stands still for hours.',
    for: ['input'],
    against: ['none'],
    value: (zone) =>
      standsOut(zone, stuckMinutes) * ramp(Math.log10(factOf(zone, 'stuck-reading', 'longestMinutes')), 1.8, 3.3),
  },
  {
    id: 'reading-still-like-no-peer',
    detector: 'stuck-reading',
    says: 'The reading stands still many times longer than it ever does.',
    for: ['input'],
    against: ['none'],
    value: (zone) =>
      standsOut(zone, stuckMinutes) * ramp(Math.log10(factOf(zone, 'stuck-reading', 'timesUsualRatio')), 0.7, 2),
  },
  {
    id: 'still-and-nothing-beside-it',
    detector: 'stuck-reading',
    says: 'No output of the zone is logged and its set point rests as well, so a tag that hangs looks the same.',
    for: ['recording'],
    against: ['input'],
    value: mayBeStaleTag,
  },
  {
    id: 'tag-stands-still',
    detector: 'frozen-record',
    says: "All that is logged of this zone stands still together while the machine's other zones move.",
    for: ['recording'],
    against: ['none', 'input'],
    start: 1.5,
    value: (zone) => ramp(Math.log10(factOf(zone, 'frozen-record', 'tagFrozenMinutes')), 1, 2.5),
  },
  {
    id: 'own-rows-missing',
    detector: 'frozen-record',
    says: 'Rows of this zone alone are missing.',
    for: ['recording'],
    against: ['none'],
    value: (zone) =>
      standsOut(zone, (other) => factOf(other, 'frozen-record', 'ownGapMinutes')) *
      ramp(Math.log10(factOf(zone, 'frozen-record', 'ownGapMinutes')), 1, 3),
  },
  {
    id: 'repeated-code',
    detector: 'code-value',
    says: 'One exact value returns again and again, reached faster than heat can move: a code, not a temperature.',
    for: ['sensor', 'wiring', 'input'],
    against: ['none'],
    start: 1.5,
    value: (zone) => ramp(codeStays(zone), 0, 3),
  },
];
