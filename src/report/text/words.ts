import type { Cause } from '../../model/cause.js';
import type { ChangeSinceLast } from '../../model/history-findings.js';
import type { ZoneFinding, ZoneStatus } from '../../model/findings.js';
import type { DowntimeBucket } from '../../model/downtime-findings.js';
import type { Check } from '../../model/check.js';

/** The words a reader sees for what the findings hold as ids. */
export const causeWords: Readonly<Record<Cause, string>> = {
  sensor: 'sensor',
  wiring: 'wiring',
  input: 'input card',
  heater: 'heater',
  recording: 'recording',
  none: 'no fault',
};

/** Inside a sentence: "probably the wiring". */
export const causePlaces: Readonly<Record<Cause, string>> = {
  sensor: 'the sensor itself',
  wiring: 'the wiring to the sensor',
  input: 'the input card or its supply',
  heater: 'the heater or what switches it',
  recording: 'the recording, not the machine',
  none: 'nothing wrong',
};

export const statusWords: Readonly<Record<ZoneStatus, string>> = {
  faulty: 'Needs a fitter',
  watch: 'Keep an eye on it',
  healthy: 'Healthy',
  'insufficient-data': 'Cannot be judged',
};

export const trendWords: Readonly<Record<NonNullable<ZoneFinding['trend']>, string>> = {
  worse: 'getting worse',
  steady: 'steady',
  better: 'getting better',
};

export const changeWords: Readonly<Record<ChangeSinceLast, string>> = {
  new: 'new',
  worse: 'worse',
  better: 'better',
  fixed: 'fixed',
  'still open': 'still open',
  unchanged: 'unchanged',
};

export const bucketWords: Readonly<Record<DowntimeBucket, string>> = {
  'zone-fault': 'sensor, wiring or heater zone',
  'other-cause': 'other known cause',
  unknown: 'cause not known',
  planned: 'planned',
};

/** Kinds of lost time in the order in which they are stacked: what a fitter can change comes first. */
export const lossKinds = ['zone-fault', 'restart', 'other-cause', 'unknown'] as const;
export type LossKind = (typeof lossKinds)[number];

export const lossWords: Readonly<Record<LossKind, string>> = {
  'zone-fault': 'fault of a heater zone',
  restart: 'restart after such a fault',
  'other-cause': 'other known cause',
  unknown: 'cause not known',
};

export const placeWords: Readonly<Record<Check['where'], string>> = {
  machine: 'At the machine',
  sensor: 'At the sensor’s own connector',
  cabinet: 'At the cabinet terminals',
  card: 'At the input card',
  heater: 'At the heater and what switches it',
};

/** A detector or term id as words: "soak-offset" → "soak offset". */
export function idWords(id: string): string {
  return id.replace(/[-_]+/g, ' ');
}
