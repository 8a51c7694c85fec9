/** One heated place with one sensor, as found in the logs and filled in from the plant file. */
export interface Zone {
  /** Index, the same everywhere in one run. */
  readonly index: number;
  /** As a person would say it, without the suffix that says reading, set point or output. */
  readonly name: string;
  readonly machine: string;
  /** Sensor type id of src/sensors (pt100, tc-k …); null = not stated. */
  readonly sensor: string | null;
  readonly wires: 2 | 3 | 4 | null;
  /** Input card; zones on one card share its faults. null = not stated. */
  readonly card: string | null;
  /** Heater power in watts; null = not stated. */
  readonly heaterW: number | null;
  /** Rated volts of the heater; null = not stated. */
  readonly heaterV?: number | null;
  /** Tolerance class of IEC 60751 (AA, A, B, C) or ASTM E230 (standard, special); null = not stated. */
  readonly toleranceClass: string | null;
  /** Which columns the logs hold for this zone. */
  readonly has: {
    readonly reading: boolean;
    readonly setpoint: boolean;
    readonly output: boolean;
    readonly running: boolean;
  };
  /** Usual time between two samples; NaN until known. */
  readonly samplingMs: number;
  /** Smallest step between two readings, from the digits of the log; NaN until known. */
  readonly resolutionDegC: number;
  /**
   * True when the log holds rows only for changes: its readings are held on a grid, so a reading that stands still for
   * long says nothing of the sensor.
   */
  readonly isChangeLogged?: boolean;
  /**
   * True when nothing says that its readings are temperatures, and the log's other unnamed columns are unlike them:
   * then no fault is claimed of it.
   */
  readonly isQuantityUnknown?: boolean;
  /** True when its rows seem to be of two zones in turn, with nothing that tells them apart: then no fault is claimed of it. */
  readonly isMixed?: boolean;
}
