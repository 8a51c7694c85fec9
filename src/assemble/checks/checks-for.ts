import { causes, type Cause } from '../../model/cause.js';
import type { Check } from '../../model/check.js';
import type { Zone } from '../../model/zone.js';
import { zoneChecks, type ZoneSite } from '../../sensors/zone-checks.js';
import type { Verdict } from '../../weigh/weigh-plant.js';
import { heaterChecks } from './heater-checks.js';
import { inputChecks, recordingChecks } from './other-checks.js';

/** A cause from this share on has its own measurements listed. Our own choice: one in ten. */
const measuredShare = 0.1;

/** Below this the reading is taken for right, and what measures it is left out beside the likelier walk. Our own choice. */
const doubtedShare = 0.05;

/** Sensor and wiring are measured on one walk, from the tip to the cabinet. */
type Walk = 'circuit' | 'input' | 'heater' | 'recording';
const walkOf: Readonly<Record<Exclude<Cause, 'none'>, Walk>> = {
  sensor: 'circuit',
  wiring: 'circuit',
  input: 'input',
  heater: 'heater',
  recording: 'recording',
};

/** What the faults have shown that changes the walk. */
export interface WalkSigns {
  /** Other zones fail or move together with this one. */
  readonly isShared: boolean;
  /** The zone heats although its output is zero. */
  readonly isStuckOn: boolean;
}

/**
 * What to measure at a zone, the likeliest cause first: caution and preparation, then one walk after the other. A
 * healthy zone keeps the values of its sensor and input, so that they can be looked up.
 */
export function checksFor(
  zone: Zone,
  { status, probabilities }: Pick<Verdict, 'status' | 'probabilities'>,
  site: ZoneSite,
  { isShared, isStuckOn }: WalkSigns = { isShared: false, isStuckOn: false },
): readonly Check[] {
  const ofSensor = zoneChecks(zone, site);
  const isFault = status === 'faulty' || status === 'watch';
  const isLikely = (cause: Cause): boolean => isFault && probabilities[cause] >= measuredShare;
  const doubt = probabilities.sensor + probabilities.wiring + probabilities.input;
  const isReadingDoubted = !isFault || doubt >= doubtedShare;
  const measured = ofSensor.filter(({ kind }) => kind === 'measure' && isReadingDoubted);
  const walks: Readonly<Record<Walk, readonly Check[]>> = {
    circuit: measured.filter(({ where }) => where !== 'card'),
    input: [
      ...(isLikely('input') ? inputChecks(zone.card, isShared) : []),
      ...measured.filter(({ where }) => where === 'card'),
    ],
    heater: isLikely('heater') ? heaterChecks({ ratedW: zone.heaterW, ratedV: zone.heaterV ?? null }, isStuckOn) : [],
    recording: isLikely('recording') ? recordingChecks() : [],
  };
  const order = isFault ? ranked(probabilities) : (['circuit', 'input'] as const);
  // How to prepare is told for the sensor's values, so it goes with them.
  const before = ofSensor.filter(({ kind }) => kind === 'caution' || (kind === 'prepare' && isReadingDoubted));
  return [...before, ...order.flatMap((walk) => walks[walk])];
}

/** Every walk once, in the order of the likeliest cause that it can find; the circuit before the input on a tie. */
function ranked(probabilities: Verdict['probabilities']): readonly Walk[] {
  const faults = causes.filter((cause): cause is Exclude<Cause, 'none'> => cause !== 'none');
  const byShare = [...faults].sort((a, b) => probabilities[b] - probabilities[a]);
  return [...new Set(byShare.map((cause) => walkOf[cause]))];
}
