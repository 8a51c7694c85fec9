import type { Cause } from '../model/cause.js';

/**
 * A thing a fitter can do at the machine, as a yes-or-no question about the cause.
 * Minutes and shares are common practice (no published source): a fitter's rough times, lockout included, and how
 * often the answer is yes when that cause is the true one.
 */
export interface Measurement {
  readonly id: string;
  readonly says: string;
  readonly minutes: number;
  /**
   * What it needs of the fault: `present` = it must show itself meanwhile; `provokes` = the check itself brings it out;
   * `repaired` = only asked once the fault is over.
   */
  readonly asks: 'present' | 'provokes' | 'repaired';
  /** Share of yes answers by true cause while the fault shows, 0 to 1. */
  readonly yes: Readonly<Record<Cause, number>>;
}

export const measurements: readonly Measurement[] = [
  {
    id: 'reading-on-controller',
    says: "Read the controller's own display: does it show the same as the log?",
    minutes: 3,
    asks: 'present',
    yes: { sensor: 0.97, wiring: 0.95, input: 0.95, heater: 0.98, recording: 0.1, none: 0.98 },
  },
  {
    id: 'both-ends',
    says: "Locked out and isolated: measure at the sensor's own connector and again at the cabinet end. Wrong at the sensor already?",
    minutes: 25,
    asks: 'present',
    yes: { sensor: 0.9, wiring: 0.06, input: 0.02, heater: 0.02, recording: 0.02, none: 0.02 },
  },
  {
    id: 'move-the-cable',
    says: 'Locked out, meter on the cabinet end: move cable, plug and terminals. Does the value jump?',
    minutes: 20,
    asks: 'provokes',
    yes: { sensor: 0.08, wiring: 0.85, input: 0.04, heater: 0.02, recording: 0.02, none: 0.02 },
  },
  {
    id: 'swap-inputs',
    says: 'Locked out: swap the sensor with a healthy neighbour at the input card. Does the fault stay with the input?',
    minutes: 30,
    asks: 'present',
    yes: { sensor: 0.03, wiring: 0.03, input: 0.9, heater: 0.05, recording: 0.5, none: 0.05 },
  },
  {
    id: 'reference-thermometer',
    says: 'Cold machine: hold a checked thermometer beside the sensor. Does the reading differ by more than its tolerance?',
    minutes: 15,
    asks: 'present',
    yes: { sensor: 0.75, wiring: 0.35, input: 0.4, heater: 0.04, recording: 0.1, none: 0.04 },
  },
  {
    id: 'heater-circuit',
    says: 'Authorised person, locked out: measure heater resistance, fuse and contactor. Is one of them wrong?',
    minutes: 25,
    asks: 'present',
    yes: { sensor: 0.02, wiring: 0.03, input: 0.02, heater: 0.92, recording: 0.02, none: 0.02 },
  },
  {
    id: 'warm-up-with-meter',
    says: 'Authorised person, guards in place: meter on the cabinet end while the zone warms up. Does the circuit open only when hot?',
    minutes: 40,
    asks: 'provokes',
    yes: { sensor: 0.7, wiring: 0.2, input: 0.03, heater: 0.02, recording: 0.02, none: 0.02 },
  },
  {
    id: 'ask-about-wiring',
    says: 'The fault is over: ask who worked there and look in the maintenance list. Was a cable, plug or terminal put right?',
    minutes: 5,
    asks: 'repaired',
    yes: { sensor: 0.2, wiring: 0.85, input: 0.15, heater: 0.05, recording: 0.02, none: 0.05 },
  },
  {
    id: 'ask-about-heater',
    says: 'The fault is over: ask who worked there and look in the maintenance list. Was the heater, its fuse or its relay replaced?',
    minutes: 5,
    asks: 'repaired',
    yes: { sensor: 0.05, wiring: 0.05, input: 0.05, heater: 0.85, recording: 0.02, none: 0.05 },
  },
  {
    id: 'ask-about-sensor',
    says: 'The fault is over: ask who worked there and look in the maintenance list. Was a sensor replaced?',
    minutes: 5,
    asks: 'repaired',
    yes: { sensor: 0.85, wiring: 0.2, input: 0.1, heater: 0.05, recording: 0.02, none: 0.05 },
  },
];
