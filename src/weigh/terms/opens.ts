import { factOf, ramp, surprise, symptomsOf, type Term, type ZoneEvidence } from '../term.js';

const detector = 'sensor-opens';
const fact = (evidence: ZoneEvidence, name: string): number => factOf(evidence, detector, name);

function hasLongOpen(evidence: ZoneEvidence): boolean {
  return fact(evidence, 'longCount') >= 1 && fact(evidence, 'openCount') >= 1;
}

/** Hours of movement, or of heat where movement is not logged, from the first short open to the long one. */
function warningHours(evidence: ZoneEvidence): number {
  const running = fact(evidence, 'warningRunningHours');
  return Number.isNaN(running) ? fact(evidence, 'warningHotHours') : running;
}

/** Opens that came and went, none of them long. */
function comesAndGoes(evidence: ZoneEvidence): boolean {
  return symptomsOf(evidence, detector).length > 0 && !(fact(evidence, 'longCount') >= 1);
}

/** How surely opens became fewer after a repair of one kind, 0 to 1; 0 without such a repair. */
function fewerAfter(evidence: ZoneEvidence, repair: 'replacementCount' | 'wiringRepairCount'): number {
  const sure = symptomsOf(evidence, 'repairs')
    .filter(({ facts }) => facts[repair] === 1)
    .map(({ facts }) => ramp(surprise(facts['fewerAfterPValue'] ?? NaN), 1, 3));
  return Math.max(0, ...sure);
}

/** Bursts of opens since a new sensor that came at a rate of half of before or more; 0 without one. */
function burstsSinceNewSensor(evidence: ZoneEvidence): number {
  const since = symptomsOf(evidence, 'repairs')
    .filter(({ facts }) => facts['replacementCount'] === 1 && facts['afterRatio']! >= 0.5)
    .map(({ facts }) => facts['burstsAfterCount'] ?? 0);
  return Math.max(0, ...since);
}

/** What the input lost, and how it came. Thresholds follow the detector's own: long = 20 min, brief = 2 min. */
export const openTerms: readonly Term[] = [
  {
    id: 'long-open-out-of-nothing',
    detector,
    says: 'The input was open for 20 min or more, with no short opens before it.',
    for: ['sensor', 'wiring', 'input'],
    against: ['none'],
    value: (zone) => (hasLongOpen(zone) && fact(zone, 'opensBeforeLongCount') <= 1 ? 1 : 0),
  },
  {
    id: 'long-open-after-hours',
    detector,
    says: 'The input was open for 20 min or more after some hours of short opens.',
    for: ['sensor', 'wiring'],
    against: ['none'],
    value: (zone) => (hasLongOpen(zone) && fact(zone, 'opensBeforeLongCount') > 1 ? 1 : 0),
  },
  {
    id: 'long-open-after-days',
    detector,
    says: 'Short opens went on through hours of production before the input was open for 20 min or more.',
    for: ['wiring'],
    against: ['sensor'],
    value: (zone) =>
      hasLongOpen(zone) && fact(zone, 'opensBeforeLongCount') > 1 ? ramp(warningHours(zone), 3, 15) : 0,
  },
  {
    id: 'shorted-for-long',
    detector,
    says: 'The input read below scale, as a short does, for long.',
    for: ['wiring'],
    against: ['none', 'sensor'],
    value: (zone) => (fact(zone, 'shortCount') >= 1 && fact(zone, 'longCount') >= 1 ? 1 : 0),
  },
  {
    id: 'shorts-come-and-go',
    detector,
    says: 'The input read below scale several times, briefly.',
    for: ['wiring'],
    against: ['none'],
    value: (zone) => (comesAndGoes(zone) ? ramp(fact(zone, 'shortCount'), 0, 5) : 0),
  },
  {
    id: 'opens-come-and-go',
    detector,
    says: 'The input opened and closed again; none of the opens lasted.',
    for: ['sensor', 'wiring'],
    against: ['none'],
    value: (zone) => (comesAndGoes(zone) ? ramp(fact(zone, 'openCount'), 0, 3) : 0),
  },
  {
    id: 'opens-many',
    detector,
    says: 'Short opens are many.',
    for: ['sensor', 'wiring'],
    against: ['none'],
    value: (zone) => (comesAndGoes(zone) ? ramp(Math.log10(1 + fact(zone, 'openCount')), 0.6, 2.3) : 0),
  },
  {
    id: 'opens-very-many',
    detector,
    says: 'Short opens come by the hundred, as a chafed or loose contact makes them.',
    for: ['wiring'],
    against: ['sensor'],
    value: (zone) => ramp(Math.log10(1 + fact(zone, 'openCount')), 1.5, 2.7),
  },
  {
    id: 'opens-last-minutes',
    detector,
    says: 'Short opens last minutes rather than seconds.',
    for: ['sensor'],
    against: ['wiring'],
    value: (zone) => (comesAndGoes(zone) ? ramp(Math.log10(fact(zone, 'medianOpenMinutes')), -0.6, 0.8) : 0),
  },
  {
    id: 'opens-last-seconds',
    detector,
    says: 'Short opens last seconds.',
    for: ['wiring'],
    against: ['sensor'],
    value: (zone) => (comesAndGoes(zone) ? ramp(-Math.log10(fact(zone, 'medianOpenMinutes')), 0.3, 1.2) : 0),
  },
  {
    id: 'came-back-cooled',
    detector,
    says: 'When the reading came back the zone had cooled: the controller had lost it and cut the heat.',
    for: ['sensor', 'wiring', 'input'],
    against: ['none', 'recording'],
    value: (zone) => ramp(fact(zone, 'cooledRatio'), 0.2, 0.6),
  },
  {
    id: 'opens-go-on-with-new-sensor',
    detector: 'repairs',
    says: 'Opens go on as before although the sensor was replaced.',
    for: ['wiring', 'input'],
    against: ['sensor'],
    // No made plant has a list: the start value is what counts. A new sensor hardly fails as the old one did.
    start: 2,
    value: (zone) => ramp(burstsSinceNewSensor(zone), 0, 4),
  },
  {
    id: 'opens-end-with-new-sensor',
    detector: 'repairs',
    says: 'Opens became fewer, or ended, when the sensor was replaced.',
    for: ['sensor'],
    against: ['wiring', 'input'],
    // Weaker than the other way round: who replaces a sensor makes its connections anew.
    start: 1,
    value: (zone) => fewerAfter(zone, 'replacementCount'),
  },
  {
    id: 'opens-end-with-wiring-repair',
    detector: 'repairs',
    says: 'Opens became fewer, or ended, when the wiring was put right.',
    for: ['wiring'],
    against: ['sensor', 'input'],
    start: 2,
    value: (zone) => fewerAfter(zone, 'wiringRepairCount'),
  },
];
