import { factOf, ramp, surprise, type Term, type ZoneEvidence } from '../term.js';

const moving = (evidence: ZoneEvidence, name: string): number => factOf(evidence, 'opens-by-running', name);
const heat = (evidence: ZoneEvidence, name: string): number => factOf(evidence, 'opens-by-heat', name);
const growth = (evidence: ZoneEvidence, name: string): number => factOf(evidence, 'opens-growth', name);

/** Under what conditions opens come: movement points to the cable, heat alone to the element. */
export const whenOpenTerms: readonly Term[] = [
  {
    id: 'opens-while-moving',
    detector: 'opens-by-running',
    says: 'Opens come while the machine moves and hardly ever while it stands.',
    for: ['wiring'],
    against: ['sensor'],
    start: 1,
    value: (zone) => ramp(-Math.log10(moving(zone, 'evenOverMovingRatio')), 0.3, 2),
  },
  {
    id: 'opens-also-standing',
    detector: 'opens-by-running',
    says: 'Opens come as often while the machine stands: no movement is needed.',
    for: ['sensor'],
    against: ['wiring'],
    start: 1,
    value: (zone) => ramp(Math.log10(moving(zone, 'evenOverMovingRatio')), 0.3, 2),
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
