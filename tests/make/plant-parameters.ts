import type { FaultPlan } from './faults/fault.js';
import type { LogFormat } from './log/log-format.js';
import type { ControllerParameters } from './temperature-controller.js';
import type { ThermalParameters } from './thermal-zone.js';

export type SensorKind = 'pt100' | 'pt1000' | 'tc-k' | 'tc-j';

/** One element with its cable. */
export interface SensorParameters {
  readonly kind: SensorKind;
  readonly wires: 2 | 3 | 4;
  /** Which leg of a three-wire circuit a bad contact sits in: +1 reads high, −1 reads low. */
  readonly badLeg: 1 | -1;
  /** A healthy sensor has an offset and a gain error inside its tolerance class. */
  readonly offsetDegC: number;
  readonly gainError: number;
  readonly noiseDegC: number;
  /** Offset and gain error of the sensor that a repair puts in. */
  readonly spareOffsetDegC: number;
}

/** The input channel that the sensor ends in. */
export interface CardParameters {
  readonly filterS: number;
  /** How fast an open input climbs to full scale; 0 = at once. */
  readonly openRampS: number;
  /** An open input shows its last reading for so long; 0 = it does not. */
  readonly holdsLastS: number;
  /** After an open the reading comes back through the filter instead of at once. */
  readonly settlesAfterOpen: boolean;
  readonly rangeTopDegC: number;
  readonly opensLow: boolean;
  readonly resolutionDegC: number;
  /** A short of a thermocouple reads this share of the way from room to zone temperature. */
  readonly shortPlace: number;
}

export interface AlarmParameters {
  readonly lowK: number;
  readonly highK: number;
  readonly deviationDelayS: number;
  readonly inputDelayS: number;
  /** Deviation alarms wait until the zone was in band once after switching on. */
  readonly waitsForBand: boolean;
}

export interface ZoneParameters {
  readonly name: string;
  /** Index of the machine. */
  readonly machine: number;
  readonly card: string;
  readonly thermal: ThermalParameters;
  readonly controller: ControllerParameters;
  readonly sensor: SensorParameters;
  readonly input: CardParameters;
  readonly alarms: AlarmParameters;
  /** Heat path to the next zone of the machine, W/K. */
  readonly neighbourWPerK: number;
  /** Heat drawn by the product at full speed, W per K above the room. */
  readonly loadWPerK: number;
  /** Share of the load that comes and goes with each machine cycle. */
  readonly cycleShare: number;
  /** Air at this place against the room. */
  readonly airOffsetDegC: number;
  /** Set point per recipe. */
  readonly setpointsDegC: readonly number[];
  /** An independent thermostat cuts the power this far above the highest set point. */
  readonly cutoutAboveK: number;
}

export type ShiftPattern = '24x7' | '3shift5' | '3shift6' | '2shift' | '2shift6' | '1shift' | '1shift4' | 'long-day';

export interface MachineParameters {
  readonly name: string;
  /** What a zone does outside production: off, or a lower set point. */
  readonly rest: 'off' | 'standby';
  readonly standbyDegC: number;
  readonly warmUpS: number;
  readonly breaksPerShift: number;
  readonly cycleS: number;
  /** Other stops: how many an hour, and their median length. */
  readonly stopsPerHour: number;
  readonly stopMedianS: number;
  readonly longStopsPerDay: number;
  /** A standing zone alarm stops the machine after this long; Infinity = never. */
  readonly stopsAfterInputS: number;
  readonly stopsAfterDeviationS: number;
  /** Operator's time to come, reset and start. */
  readonly restartS: number;
  readonly washDownsPerDay: number;
  readonly speedChangesPerShift: number;
  readonly changeoversPerDay: number;
  readonly nudgesPerDay: number;
}

/** Things that happen to healthy zones and fool people. */
export interface LookAlike {
  readonly kind: 'draught' | 'thick-product' | 'fast-line' | 'hot-day' | 'power-cut' | 'restart';
  /** Index of a machine; −1 = the whole plant. */
  readonly machine: number;
  /** One zone only (draught), or −1 for all of the machine. */
  readonly zone: number;
  readonly startS: number;
  readonly endS: number;
  /** Factor on loss or load; °C for a hot day. */
  readonly size: number;
}

/** What the recorder does to the samples, the same for all zones. */
export interface RecorderParameters {
  readonly everyS: number;
  /** Rows missing from the file. */
  readonly gaps: readonly { readonly startS: number; readonly endS: number }[];
  /** Recorder hung: rows go on with the last values. */
  readonly freezes: readonly { readonly startS: number; readonly endS: number }[];
  /** Readings are means over the interval, codes mixed in. */
  readonly logsMean: boolean;
  /** After a controller restart this many rows hold 0.0. */
  readonly zeroRows: number;
  /** Sampling times wander by up to this much. */
  readonly jitterS: number;
}

export interface PlantParameters {
  readonly seed: number;
  readonly name: string;
  /** Local midnight at which the log starts, as UTC ms. */
  readonly startMs: number;
  readonly days: number;
  readonly pattern: ShiftPattern;
  readonly air: {
    readonly meanDegC: number;
    readonly daySwingK: number;
    readonly weekendDropK: number;
    readonly wanderK: number;
    readonly trendKPerDay: number;
    /** Air inside the machine, K above the room per K of zone temperature. */
    readonly enclosureShare: number;
  };
  readonly machines: readonly MachineParameters[];
  readonly zones: readonly ZoneParameters[];
  readonly faults: readonly FaultPlan[];
  readonly lookAlikes: readonly LookAlike[];
  readonly recorder: RecorderParameters;
  readonly format: LogFormat;
}
