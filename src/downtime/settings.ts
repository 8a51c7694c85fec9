import { MINUTE_MS } from '../model/time-units.js';
/** Numbers behind the attribution of stops. None has a standard; all are common practice and can be given. */
export interface DowntimeSettings {
  /** A stop belongs to a cause that came at most this long before it: the logs sample, and machines run out their cycle. */
  readonly lookBackMs: number;
  /** A cause that shows itself this long after the stop still counts as its start: alarms come late or clocks differ. */
  readonly lookAheadMs: number;
  /** An input alarm shorter than this does not stop a machine: interlocks have an on-delay of a few seconds. */
  readonly tripMs: number;
  /** A machine that tripped stands at least this long, however short the alarm: someone must see it and reset it. */
  readonly resetMs: number;
  /** From "the zone is hot again" until the machine runs: acknowledge, reset, start. Counted as restart, not as fault. */
  readonly restartMs: number;
  /** A stop that goes on this long after its last known cause is gone has another cause, which nobody logged. */
  readonly longestRestartMs: number;
  /** Without a running column: longest recovery of a zone too cold that is followed in its reading. */
  readonly longestRecoveryMs: number;
  /** Whatever cools a whole machine shows on its other zones within this: zones differ in mass by a few times. */
  readonly othersFollowMs: number;
  /** After the whole machine was cold, a zone that stays cold this much longer than the others has a fault of its own. */
  readonly slowestHeatUpMs: number;
  /** A zone that leaves its band stops its machine within this: the machine's own limit is wider, and has a delay. */
  readonly outOfBandLeadMs: number;
  /** A zone back in its band for no longer than this has not recovered. */
  readonly longestFlickerMs: number;
  /** A zone counts as heated above this share of its usual set point, or of its usual rise over the cold. */
  readonly heatedShare: number;
  /** Heats off for less than this inside production is not the end of a shift. */
  readonly shortestOffMs: number;
  /** Confidence of the MTBF limits, as in the example of NIST/SEMATECH 8.4.5.1. */
  readonly mtbfConfidence: number;
}

export const downtimeDefaults: DowntimeSettings = {
  lookBackMs: 120_000,
  lookAheadMs: 60_000,
  tripMs: 3_000,
  resetMs: 60_000,
  restartMs: 120_000,
  longestRestartMs: 15 * MINUTE_MS,
  longestRecoveryMs: 20 * MINUTE_MS,
  othersFollowMs: 5 * MINUTE_MS,
  slowestHeatUpMs: 10 * MINUTE_MS,
  outOfBandLeadMs: 10 * MINUTE_MS,
  longestFlickerMs: 10 * MINUTE_MS,
  heatedShare: 0.7,
  shortestOffMs: 20 * MINUTE_MS,
  mtbfConfidence: 0.9,
};
