import { copperOhm, type Wire } from './copper-lead.js';
import type { CurrentSpan } from './current-loop.js';
import type { MeasureState } from './measure-values.js';
import type { Wires } from './rtd-wiring.js';
import type { SensorSpec } from './sensor-types.js';
import { usualClass, type ToleranceClass } from './tolerance.js';

/** All that is known about one sensor and its place; every key may be left out. */
export interface MeasureOptions {
  /** The sensor's usual class unless given. */
  readonly toleranceClass?: ToleranceClass | undefined;
  /** RTD only; 3 unless given (common practice in heater zones). */
  readonly wires?: Wires | undefined;
  /** From the log's cold soak if there is one; 21 °C unless given, and then the texts say that it is assumed. */
  readonly roomDegC?: number | undefined;
  readonly roomFrom?: 'soak' | 'stated' | 'assumed' | undefined;
  /** How well the temperature of tip and room is known; 2 °C unless given (common practice). */
  readonly plusMinusDegC?: number | undefined;
  readonly setpointDegC?: number | undefined;
  /** Cable from sensor to cabinet, one way. */
  readonly lead?: { readonly wire: Wire; readonly lengthM: number; readonly leadDegC?: number | undefined } | undefined;
  /** 4–20 mA only. */
  readonly span?: CurrentSpan | undefined;
}

/** The same with the gaps filled, as the lists of checks use it. */
export interface MeasurePlan {
  readonly toleranceClass: ToleranceClass | undefined;
  readonly wires: Wires;
  readonly roomDegC: number;
  readonly states: readonly MeasureState[];
  /** Resistance of one conductor of the cable; null = not known. */
  readonly leadOhm: number | null;
  readonly span: CurrentSpan | undefined;
}

/** An ordinary workshop, where neither log nor user says better. Common practice. */
export const assumedRoomDegC = 21;
/** A tip's temperature is rarely known better without a thermometer beside it. Common practice. */
export const usualPlusMinusDegC = 2;

/** Fills the gaps in what is known. Never throws. */
export function planOf(sensor: SensorSpec, options: MeasureOptions): MeasurePlan {
  const { roomDegC = assumedRoomDegC, setpointDegC, plusMinusDegC = usualPlusMinusDegC, lead } = options;
  const cable = lead ? copperOhm(lead.wire, lead.lengthM, lead.leadDegC ?? roomDegC) : undefined;
  const room: MeasureState = { condition: 'room', atDegC: roomDegC, plusMinusDegC };
  const hot: MeasureState[] =
    setpointDegC === undefined ? [] : [{ condition: 'set-point', atDegC: setpointDegC, plusMinusDegC }];
  return {
    toleranceClass: options.toleranceClass ?? usualClass(sensor),
    wires: options.wires ?? 3,
    roomDegC,
    states: [room, ...hot],
    leadOhm: cable?.ok ? cable.leadOhm : null,
    span: options.span,
  };
}

/** Where the room temperature comes from, for the text that says so. */
export function roomSource({ roomDegC, roomFrom }: MeasureOptions): 'soak' | 'stated' | 'assumed' {
  return roomFrom ?? (roomDegC === undefined ? 'assumed' : 'stated');
}
