/** Something that can have stopped a machine. */
export interface Claim {
  readonly startMs: number;
  /** When the alarm or fault was gone. */
  readonly endMs: number;
  /** Name in the table: the zone, the alarm's text, or the reason of the stop list. */
  readonly name: string;
  /** Zone index, or null for another named cause. */
  readonly zone: number | null;
  /**
   * Until then the stop is the cause's own; after it the machine only waits to be started again. Later than `endMs`
   * for a zone that is still too cold when its alarm clears.
   */
  readonly faultEndMs: number;
  /** Told by the readings alone, or by an alarm with words unknown: counts only for a stop that nothing else explains. */
  readonly isQuiet: boolean;
}
