import { couldTell, factOf, ramp, symptomsOf, type Term, type ZoneEvidence } from '../term.js';

const z = (evidence: ZoneEvidence, detector: string, name = 'zScoreRatio'): number => factOf(evidence, detector, name);
const size = (evidence: ZoneEvidence, detector: string): number => Math.abs(factOf(evidence, detector, 'offsetDegC'));

/** Whether the cold soaks confirm what duty shows: 1 = the soak moved as much, 0 = it did not move. NaN = not known. */
function coldShare(evidence: ZoneEvidence): number {
  for (const detector of ['slow-drift', 'offset-step']) {
    const share = factOf(evidence, detector, 'coldShare');
    if (!Number.isNaN(share)) return share;
  }
  const soak = factOf(evidence, 'duty-shift', 'soakChangeDegC');
  return soak / factOf(evidence, 'duty-shift', 'residualDegC');
}

/**
 * Whether a growing error is as a leak's: low, and cold about a third of what it is hot, since a leak takes from the
 * resistance by its square (parallel resistance; 108 Ω at 20 °C and 176 Ω at 200 °C, IEC 60751). An error that is the
 * same cold as hot, or that grows from 0 °C as a wrong slope does, lies well to either side.
 */
function lowAsLeak(evidence: ZoneEvidence): number {
  const share = factOf(evidence, 'slow-drift', 'coldShare');
  const isLow = factOf(evidence, 'slow-drift', 'offsetDegC') < 0;
  return isLow ? ramp(share, 0.05, 0.15) * ramp(0.6 - share, 0, 0.2) : 0;
}

/** How far another zone's change of duty, the other way, outweighs this one's; 0 where cold soaks tell more. */
function neighbourDuty(evidence: ZoneEvidence): number {
  const ownPercent = factOf(evidence, 'duty-shift', 'residualPercent');
  if (Number.isNaN(ownPercent) || !Number.isNaN(coldShare(evidence))) return 0;
  const opposite = evidence.others
    .filter(({ zone }) => zone.machine === evidence.zone.machine)
    .map((other) => -Math.sign(ownPercent) * factOf(other, 'duty-shift', 'residualPercent'));
  return ramp(Math.max(0, ...opposite.filter((percent) => percent > 0)) / Math.abs(ownPercent), 2, 5);
}

/** Detectors that see a change in the cold soaks. */
const soakDetectors = ['cold-soak-offset', 'slow-drift', 'offset-step', 'wet-recovery', 'card-offset'];

/**
 * Detectors of faults that come and go, or stand still. They leave soaks and duty as they are, so of them quiet soaks
 * and quiet duty say nothing.
 */
const otherFaultDetectors = [
  'sensor-opens',
  'returning-steps',
  'lasting-step',
  'lone-excursions',
  'scatter-growth',
  'stuck-reading',
  'heater-dead',
  'output-stuck-on',
  'reading-low-shorted',
];

const hasOtherFault = (evidence: ZoneEvidence): boolean =>
  otherFaultDetectors.some((id) => symptomsOf(evidence, id).some(({ count }) => count > 0));

/** A shift and the card's are one where they differ by no more than this share of the larger (own choice). */
const SAME_SHIFT_SHARE = 0.5;

/** Whether the change that soaks and duty show is the one that the whole input card made. */
function isOfCard(evidence: ZoneEvidence): boolean {
  const cardDegC = factOf(evidence, 'card-offset', 'offsetDegC');
  if (Number.isNaN(cardDegC)) return false;
  const ownDegC = [
    factOf(evidence, 'slow-drift', 'offsetDegC'),
    factOf(evidence, 'offset-step', 'offsetDegC'),
    factOf(evidence, 'cold-soak-offset', 'changeDegC'),
    factOf(evidence, 'duty-shift', 'residualDegC'),
  ].find((degC) => !Number.isNaN(degC));
  if (ownDegC === undefined) return true;
  return Math.abs(ownDegC - cardDegC) <= SAME_SHIFT_SHARE * Math.max(Math.abs(ownDegC), Math.abs(cardDegC));
}

/** A change that the card explains says nothing of this sensor. */
const unlessOfCard = (term: Term): Term => ({
  ...term,
  value: (evidence) => (isOfCard(evidence) ? 0 : term.value(evidence)),
});

/** What soaks and duty say of a reading that walks away from the truth. */
const changeTerms: readonly Term[] = [
  {
    id: 'reading-drifts',
    says: 'The reading error grows over time, by cold soaks, duty or both.',
    detector: 'slow-drift',
    for: ['sensor'],
    against: ['none'],
    value: (zone) => (symptomsOf(zone, 'slow-drift').length > 0 ? 1 : 0),
  },
  {
    id: 'drift-clear',
    says: 'The drift stands far out of the scatter.',
    detector: 'slow-drift',
    for: ['sensor'],
    against: ['none'],
    value: (zone) => ramp(Math.log10(z(zone, 'slow-drift')), 0.8, 1.8),
  },
  {
    id: 'drift-large',
    says: 'The drift is large beside the tolerance.',
    detector: 'slow-drift',
    for: ['sensor'],
    against: ['none'],
    value: (zone) => ramp(Math.log2(size(zone, 'slow-drift')), -0.5, 3),
  },
  {
    id: 'drifts-low',
    says: 'The reading goes lower and lower, as a leak between the wires makes it, too.',
    detector: 'slow-drift',
    for: ['wiring'],
    against: [],
    value: (zone) => (factOf(zone, 'slow-drift', 'offsetDegC') < 0 ? 1 : 0),
  },
  {
    id: 'low-as-a-leak',
    says: 'It reads low, a few times more when hot than cold: a leak beside a resistance sensor does, a shifted element does not.',
    detector: 'slow-drift',
    for: ['wiring'],
    against: ['sensor'],
    start: 1,
    value: lowAsLeak,
  },
  {
    id: 'duty-of-a-neighbour',
    says: 'Another zone of the machine changed its duty several times as much the other way: heat flows between them.',
    detector: 'duty-shift',
    for: ['none'],
    against: ['sensor', 'wiring', 'heater'],
    // Too rare to learn from; one degree of a neighbour moves a zone by a few tenths (common practice).
    start: 1.5,
    value: neighbourDuty,
  },
  {
    id: 'reading-stepped',
    says: 'The reading error changed at once and stays.',
    detector: 'offset-step',
    for: ['sensor', 'wiring', 'input'],
    against: ['none'],
    value: (zone) => (symptomsOf(zone, 'offset-step').length > 0 ? 1 : 0),
  },
  {
    id: 'step-clear',
    says: 'The change of the reading error stands far out of the scatter.',
    detector: 'offset-step',
    for: ['sensor', 'wiring', 'input'],
    against: ['none'],
    value: (zone) => ramp(Math.log10(z(zone, 'offset-step')), 0.8, 1.8),
  },
  {
    id: 'soak-offset-changed',
    says: 'The cold offset changed from the first soaks to the last.',
    detector: 'cold-soak-offset',
    for: ['sensor', 'wiring', 'input'],
    against: ['none', 'heater'],
    value: (zone) => ramp(Math.log10(z(zone, 'cold-soak-offset', 'changeZScoreRatio')), 0.4, 1.3),
  },
  {
    id: 'soak-offset-beyond-tolerance',
    says: 'Cold, the zone reads further from its peers than its tolerance class allows.',
    detector: 'cold-soak-offset',
    for: ['sensor', 'wiring', 'input'],
    against: ['none', 'heater'],
    value: (zone) => ramp(factOf(zone, 'cold-soak-offset', 'toleranceRatio'), 1, 6),
  },
  {
    id: 'duty-shifted',
    says: 'The zone needs more or less heat than its peers explain.',
    detector: 'duty-shift',
    for: ['sensor', 'wiring', 'heater'],
    against: ['none'],
    value: (zone) => ramp(Math.log10(z(zone, 'duty-shift')), 0.5, 1.7),
  },
  {
    id: 'duty-up-at-once',
    says: 'The duty went up at once and stays.',
    detector: 'duty-shift',
    for: ['heater'],
    against: ['sensor'],
    value: (zone) =>
      factOf(zone, 'duty-shift', 'isStepCount') === 1 ? ramp(factOf(zone, 'duty-shift', 'dutyRatio'), 1.05, 1.4) : 0,
  },
  {
    id: 'duty-much-up',
    says: 'The zone needs much more duty than before.',
    detector: 'duty-shift',
    for: ['heater'],
    against: ['sensor'],
    value: (zone) => ramp(factOf(zone, 'duty-shift', 'dutyRatio'), 1.15, 1.8),
  },
  {
    id: 'duty-down',
    says: 'The zone needs less duty than before; a weak heater would need more.',
    detector: 'duty-shift',
    for: ['sensor'],
    against: ['heater'],
    value: (zone) =>
      ramp(-factOf(zone, 'duty-shift', 'residualPercent') / factOf(zone, 'duty-shift', 'dutyPercent'), 0, 0.15),
  },
  {
    id: 'soak-confirms',
    says: 'Cold soaks moved as the duty did: the reading changed, not the heat.',
    detector: 'duty-shift',
    for: ['sensor'],
    against: ['heater'],
    value: (zone) => ramp(coldShare(zone), 0.15, 0.6),
  },
  {
    id: 'soak-unmoved',
    says: 'Cold soaks did not move while the duty did: the heat changed, not the reading.',
    detector: 'duty-shift',
    for: ['heater'],
    against: ['sensor'],
    value: (zone) => ramp(0.4 - Math.abs(coldShare(zone)), 0, 0.3),
  },
];

const quietTerms: readonly Term[] = [
  {
    id: 'soaks-quiet',
    says: 'Cold soaks were looked at and show no change.',
    detector: 'cold-soak-offset',
    for: ['none'],
    against: ['sensor', 'wiring', 'input'],
    value: (zone) =>
      // Where a drift could hide behind the last soak, or between few of them, their rest says nothing of now.
      couldTell(zone, 'cold-soak-offset') && couldTell(zone, 'slow-drift') && !hasOtherFault(zone)
        ? Number(soakDetectors.every((id) => symptomsOf(zone, id).length === 0))
        : null,
  },
  {
    id: 'duty-quiet',
    says: 'Duty was looked at and is as its peers explain.',
    detector: 'duty-shift',
    for: ['none'],
    against: ['sensor', 'wiring', 'heater'],
    value: (zone) =>
      couldTell(zone, 'duty-shift') && !hasOtherFault(zone)
        ? Number(['duty-shift', 'wet-recovery', 'heater-weak'].every((id) => symptomsOf(zone, id).length === 0))
        : null,
  },
];

export const driftTerms: readonly Term[] = [...changeTerms.map(unlessOfCard), ...quietTerms];
