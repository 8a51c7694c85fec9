import { factOf, ramp, surprise, symptomsOf, type Term, type ZoneEvidence } from '../term.js';

const moving = (evidence: ZoneEvidence, name: string): number => factOf(evidence, 'opens-by-running', name);
const heat = (evidence: ZoneEvidence, name: string): number => factOf(evidence, 'opens-by-heat', name);
const growth = (evidence: ZoneEvidence, name: string): number => factOf(evidence, 'opens-growth', name);

/** Under what conditions opens come: movement points to the cable, heat alone to the element. */
export const whenOpenTerms: readonly Term[] = [
  {
    id: 'opens-while-moving',
    detector: 'opens-by-running',
    says: 'Opens come while the machine moves, more than chance would have it.',
    for: ['wiring'],
    against: ['sensor'],
    value: (zone) => ramp(surprise(moving(zone, 'runningHigherPValue')), 1, 4),
  },
  {
    id: 'opens-also-standing',
    detector: 'opens-by-running',
    says: 'Opens come as often while the machine stands hot.',
    for: ['sensor'],
    against: ['wiring'],
    value: (zone) =>
      symptomsOf(zone, 'opens-by-running').length > 0
        ? ramp(moving(zone, 'stoppedBurstCount'), 0, 4) * ramp(3 - moving(zone, 'rateRatio'), 0, 1.5)
        : 0,
  },
  {
    id: 'opens-at-rest',
    detector: 'opens-by-running',
    says: 'Short opens come while the machine is at rest, hot or cold: no movement is needed.',
    for: ['sensor'],
    against: ['wiring'],
    start: 1,
    value: (zone) => {
      const atRest = moving(zone, 'stoppedBurstCount');
      return ramp(atRest, 0, 3) * ramp(atRest / (atRest + moving(zone, 'runningBurstCount')), 0.1, 0.5);
    },
  },
  {
    id: 'opens-when-hot',
    detector: 'opens-by-heat',
    says: 'Opens come near working temperature and not when cold.',
    for: ['sensor', 'wiring'],
    against: [],
    value: (zone) => ramp(surprise(heat(zone, 'hotHigherPValue')), 1, 4),
  },
  {
    id: 'opens-hot-and-standing',
    detector: 'opens-by-heat',
    says: 'Opens come hot while nothing moves.',
    for: ['sensor'],
    against: ['wiring'],
    value: (zone) =>
      heat(zone, 'hotStoppedHours') >= 1 && heat(zone, 'hotCount') > 0
        ? ramp(heat(zone, 'hotStoppedCount') / heat(zone, 'hotCount'), 0.1, 0.5)
        : 0,
  },
  {
    id: 'opens-also-cold',
    detector: 'opens-by-heat',
    says: 'Opens come when the zone is cold, too.',
    for: ['wiring', 'sensor'],
    against: [],
    value: (zone) => ramp(heat(zone, 'coldBurstCount'), 0, 4),
  },
  {
    id: 'opens-grow',
    detector: 'opens-growth',
    says: 'Opens become more from day to day.',
    for: ['wiring'],
    against: ['none'],
    value: (zone) => ramp(surprise(growth(zone, 'growthPValue')), 1, 5),
  },
  {
    id: 'opens-in-bursts',
    detector: 'opens-growth',
    says: 'Opens come in bursts.',
    for: ['wiring'],
    against: ['sensor'],
    value: (zone) => ramp(growth(zone, 'opensPerBurstRatio'), 1.2, 4),
  },
];
