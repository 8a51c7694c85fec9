/** Limits of the alarm measures. The texts differ, so each is a setting; measures.md cites the source of each. */
export interface AlarmThresholds {
  /** A flood begins when more alarms than this come within ten minutes. */
  readonly floodStartsAbove: number;
  /** A flood ends when fewer alarms than this come within ten minutes. */
  readonly floodEndsBelow: number;
  /** An alarm chatters when it comes this often within `chatterWindowSeconds`. */
  readonly chatterCount: number;
  readonly chatterWindowSeconds: number;
  /** A fleeting alarm is gone within this time. */
  readonly fleetingSeconds: number;
  /** A stale alarm stands without a break for longer than this. */
  readonly staleHours: number;
  readonly mostFrequent: number;
}

export const alarmDefaults: AlarmThresholds = {
  floodStartsAbove: 10, // ISA-18.2
  floodEndsBelow: 5, // ISA-18.2
  chatterCount: 3, // trade article; ISA-18.2 names the term without a count
  chatterWindowSeconds: 60, // the same
  fleetingSeconds: 10, // "a few seconds", trade article; the figure is common practice
  staleHours: 24, // ISA-18.2
  mostFrequent: 10, // ISA-18.2
};
