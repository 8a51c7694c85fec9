/** One measurement to make, with the values to expect. Filled by src/sensors. */
export interface Check {
  /** Stable id of the check. */
  readonly id: string;
}
