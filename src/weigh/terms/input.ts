import { factOf, ramp, surprise, symptomsOf, type Term } from '../term.js';

/** What points at the input card, the channel or the recording. */
export const inputTerms: readonly Term[] = [
  {
    id: 'fails-with-its-card',
    detector: 'card-events',
    says: 'Several zones fail at the same second, as one card or supply makes them.',
    for: ['input'],
    against: ['sensor', 'wiring', 'none'],
    value: (zone) => ramp(surprise(factOf(zone, 'card-events', 'chancePValue')), 1, 4),
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
    value: (zone) => (symptomsOf(zone, 'stuck-reading').length > 0 ? 1 : 0),
  },
  {
    id: 'reading-still-for-hours',
    detector: 'stuck-reading',
    says: 'The reading stands still for hours.',
    for: ['input'],
    against: ['none'],
    value: (zone) => ramp(Math.log10(factOf(zone, 'stuck-reading', 'totalMinutes')), 1.5, 3),
  },
  {
    id: 'reading-still-like-no-peer',
    detector: 'stuck-reading',
    says: 'The reading stands still many times longer than it ever does.',
    for: ['input'],
    against: ['none'],
    value: (zone) => ramp(Math.log10(factOf(zone, 'stuck-reading', 'timesUsualRatio')), 0.7, 2),
  },
  {
    id: 'tag-stands-still',
    detector: 'frozen-record',
    says: "Reading, set point and output of this zone stand still together while the machine's other zones move.",
    for: ['recording'],
    against: ['none', 'input'],
    value: (zone) => ramp(Math.log10(factOf(zone, 'frozen-record', 'tagFrozenMinutes')), 1, 2.5),
  },
  {
    id: 'own-rows-missing',
    detector: 'frozen-record',
    says: 'Rows of this zone alone are missing.',
    for: ['recording'],
    against: ['none'],
    value: (zone) => ramp(Math.log10(factOf(zone, 'frozen-record', 'ownGapMinutes')), 1, 3),
  },
  {
    id: 'repeated-code',
    detector: 'code-value',
    says: 'One exact value returns again and again, reached faster than heat can move: a code, not a temperature.',
    for: ['sensor', 'wiring', 'input'],
    against: ['none'],
    value: (zone) => ramp(factOf(zone, 'code-value', 'spanCount'), 0, 3),
  },
];
