import { factOf, ramp, standsOut, surprise, symptomsOf, type Term, type ZoneEvidence } from '../term.js';

const stepCount = (zone: ZoneEvidence): number => symptomsOf(zone, 'returning-steps')[0]?.count ?? 0;
const spikeCount = (zone: ZoneEvidence): number => factOf(zone, 'spikes', 'spikeCount');
/** Product and coarse digits make as many steps on other zones, but small ones: it is the degrees that stand out. */
const stepsDegC = (zone: ZoneEvidence): number => stepCount(zone) * factOf(zone, 'returning-steps', 'medianStepDegC');
/** Hunting loops and coarse digits make steps on all zones; a contact makes them on one. */
const stepsAlone = (zone: ZoneEvidence): number => standsOut(zone, stepsDegC);

/**
 * Share of a lead's ohms that reaches the reading: a thermocouple reads volts, and four wires carry the ohms past it
 * (trade: contact resistance hardly matters there). 1 where the sensor is not known.
 */
const ohmsReach = ({ zone }: ZoneEvidence): number => (zone.wires === 4 || zone.sensor?.startsWith('tc-') ? 0 : 1);
/** Jumps of whichever detector sees them: they need a reason even where no lead can make them. */
const jumpsAlone = (zone: ZoneEvidence): number =>
  Math.max(stepsAlone(zone), symptomsOf(zone, 'lone-excursions').length > 0 ? 1 : 0);

const scatterGrows = (zone: ZoneEvidence): number =>
  ramp(Math.log2(factOf(zone, 'scatter-growth', 'ownGrowthRatio')), 0.7, 2.5);

const stepStays = (zone: ZoneEvidence): number => (symptomsOf(zone, 'lasting-step').length > 0 ? 1 : 0);
const isOfSeveral = (zone: ZoneEvidence): boolean => factOf(zone, 'lasting-step', 'togetherCount') > 0;

/** Jumps that come and go, or stay, spikes and scatter. */
export const stepTerms: readonly Term[] = [
  {
    id: 'steps-return',
    detector: 'returning-steps',
    says: 'The reading jumps by a few degrees and back, while heat cannot move so fast.',
    for: ['wiring'],
    against: ['none'],
    start: 1.5,
    value: (zone) => ohmsReach(zone) * stepsAlone(zone),
  },
  {
    id: 'steps-large',
    detector: 'returning-steps',
    says: 'The jumps are large beside the noise.',
    for: ['wiring'],
    against: ['none'],
    value: (zone) =>
      ohmsReach(zone) *
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
    value: (zone) => ohmsReach(zone) * stepsAlone(zone) * ramp(factOf(zone, 'returning-steps', 'turnShare'), 0.3, 0.9),
  },
  {
    id: 'jumps-beyond-leads',
    detector: 'returning-steps',
    says: 'The reading jumps and comes back, and no lead can do that to a thermocouple or through four wires.',
    for: ['sensor', 'input'],
    against: ['none', 'wiring'],
    start: 1,
    value: (zone) => (1 - ohmsReach(zone)) * jumpsAlone(zone),
  },
  {
    id: 'step-stays',
    detector: 'lasting-step',
    says: 'The reading jumped once, on this zone alone, and nothing took it back.',
    for: ['sensor', 'input'],
    against: ['none'],
    start: 2,
    value: (zone) => (isOfSeveral(zone) ? 0 : stepStays(zone)),
  },
  {
    id: 'step-stays-as-of-a-lead',
    detector: 'lasting-step',
    says: 'A lead or terminal that takes more ohms, or leaks, can make such a jump.',
    for: ['wiring'],
    against: [],
    start: 1.5,
    value: (zone) => (isOfSeveral(zone) ? 0 : ohmsReach(zone) * stepStays(zone)),
  },
  {
    id: 'duty-follows-step',
    detector: 'lasting-step',
    says: 'The zone needs less or more heat since the jump, by as much as it asks: the reading is wrong, not the heat.',
    for: ['sensor', 'wiring', 'input'],
    against: ['none', 'heater'],
    start: 1,
    value: (zone) => ramp(Math.log10(factOf(zone, 'lasting-step', 'hotZScoreRatio')), 0.6, 1.3),
  },
  {
    id: 'step-of-several',
    detector: 'lasting-step',
    says: 'The readings of several zones jumped in the same moment, the same way, for good.',
    for: ['input'],
    against: ['none'],
    // By chance two zones hardly ever jump in one moment of a week (common practice: what zones share is the card).
    start: 4,
    value: (zone) => (isOfSeveral(zone) ? 1 : 0),
  },
  {
    id: 'pulled-back-jumps',
    detector: 'lone-excursions',
    says: 'From some time on the settled reading jumps up and down, pulled back within minutes, on this zone alone.',
    for: ['wiring'],
    against: ['none'],
    // Its own exact test lets 1 in 100 sound zones pass, and the peers' rate fewer; half of such contacts show: ln(0.5 / 0.02).
    start: 3,
    value: (zone) => ohmsReach(zone) * Number(symptomsOf(zone, 'lone-excursions').length > 0),
  },
  {
    id: 'pulled-back-jumps-sure',
    detector: 'lone-excursions',
    says: 'Such jumps are many, none came before, and the neighbours make hardly any.',
    for: ['wiring'],
    against: ['none'],
    start: 1,
    value: (zone) =>
      ohmsReach(zone) *
      ramp(surprise(factOf(zone, 'lone-excursions', 'beginsPValue')), 2, 5) *
      ramp(Math.log10(factOf(zone, 'lone-excursions', 'peersRatio')), 0.6, 1.3),
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
    value: scatterGrows,
  },
  {
    id: 'output-hunts-with-scatter',
    detector: 'scatter-growth',
    says: 'The output hunts more and more, too: the controller sees the scatter.',
    for: ['sensor'],
    against: ['none'],
    // A loop hunts for reasons of its own, too: the output confirms the scatter and is never the louder of the two.
    value: (zone) =>
      scatterGrows(zone) * ramp(Math.log2(factOf(zone, 'scatter-growth', 'outputGrowthRatio')), 0.7, 2.5),
  },
];
