import { factOf, ramp, standsOut, surprise, symptomsOf, type Term, type ZoneEvidence } from '../term.js';

const stepCount = (zone: ZoneEvidence): number => symptomsOf(zone, 'returning-steps')[0]?.count ?? 0;
const spikeCount = (zone: ZoneEvidence): number => factOf(zone, 'spikes', 'spikeCount');
/** Hunting loops and coarse digits make steps on all zones; a contact makes them on one. */
const stepsAlone = (zone: ZoneEvidence): number => standsOut(zone, stepCount);

/** Jumps that come and go, spikes and scatter. */
export const stepTerms: readonly Term[] = [
  {
    id: 'steps-return',
    detector: 'returning-steps',
    says: 'The reading jumps by a few degrees and back, while heat cannot move so fast.',
    for: ['wiring'],
    against: ['none'],
    start: 1.5,
    value: stepsAlone,
  },
  {
    id: 'steps-large',
    detector: 'returning-steps',
    says: 'The jumps are large beside the noise.',
    for: ['wiring'],
    against: ['none'],
    value: (zone) =>
      stepsAlone(zone) *
      ramp(
        Math.log10(factOf(zone, 'returning-steps', 'medianStepDegC') / factOf(zone, 'returning-steps', 'noiseDegC')),
        0.9,
        2,
      ),
  },
  {
    id: 'steps-one-way',
    detector: 'returning-steps',
    says: 'The jumps go one way and back, as ohms that come and go make them.',
    for: ['wiring'],
    against: [],
    value: (zone) => stepsAlone(zone) * ramp(factOf(zone, 'returning-steps', 'turnShare'), 0.3, 0.9),
  },
  {
    id: 'pulled-back-jumps',
    detector: 'lone-excursions',
    says: 'From some time on the settled reading jumps up and down, pulled back within minutes, on this zone alone.',
    for: ['wiring'],
    against: ['none'],
    // Its own exact test lets 1 in 100 sound zones pass, and the peers' rate fewer; half of such contacts show: ln(0.5 / 0.02).
    start: 3,
    value: (zone) => Number(symptomsOf(zone, 'lone-excursions').length > 0),
  },
  {
    id: 'spikes-many',
    detector: 'spikes',
    says: 'Single readings jump out and come back, again and again.',
    for: ['sensor', 'wiring', 'input'],
    against: ['none'],
    value: (zone) => standsOut(zone, spikeCount) * ramp(Math.log10(spikeCount(zone)), 0.5, 2),
  },
  {
    id: 'spikes-while-moving',
    detector: 'spikes',
    says: 'Spikes come while the machine moves.',
    for: ['wiring'],
    against: ['sensor'],
    value: (zone) => ramp(surprise(factOf(zone, 'spikes', 'runningHigherPValue')), 1, 4),
  },
  {
    id: 'scatter-grows',
    detector: 'scatter-growth',
    says: 'The reading scatters more and more, on this zone alone.',
    for: ['sensor', 'wiring'],
    against: ['none'],
    start: 1,
    value: (zone) => ramp(Math.log2(factOf(zone, 'scatter-growth', 'growthRatio')), 0.7, 2.5),
  },
];
