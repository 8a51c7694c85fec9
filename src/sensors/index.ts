/** The public face of sensor physics: what other folders call. */
export { say, type Answer, type Refused, type RefusedCode } from './answer.js';
export { copperOhm, parseWire, wireMm2, type Wire } from './copper-lead.js';
export { currentDegC, currentMa, currentState, namurLimits, spanPercent, type CurrentSpan } from './current-loop.js';
export { expectedMeasurements } from './expected-measurements.js';
export { explainOffset, sizeText } from './explain-offset.js';
export type { Explanation, OffsetExplained, OffsetQuestion, OffsetReason } from './explanation.js';
export { type MeasureOptions } from './measure-plan.js';
export { judgeSeries, judgeShunt, seriesOhmFor, shuntOhmFor } from './offset-ohms.js';
export { rtdDegC, rtdOhm, rtdOhmPerDegC } from './rtd.js';
export { parallelOhm, readThroughWiring, seenOhm, type RtdWiring, type Wires } from './rtd-wiring.js';
export { parseSensorType, sensorIds, sensorTypes, type SensorId, type SensorSpec } from './sensor-types.js';
export type { CurrentSpec, RtdSpec, ThermocoupleSpec } from './sensor-types.js';
export { emfDegC, emfMv, terminalMv, tipDegC } from './thermocouple.js';
export {
  copperExtension,
  extensionSwapped,
  reversedAtInput,
  shortedInCable,
  thermocoupleReadAs,
  thermocoupleThroughSeries,
} from './thermocouple-wiring.js';
export { className, parseToleranceClass, toleranceDegC, toleranceSignal, usualClass } from './tolerance.js';
export type { ToleranceClass } from './tolerance.js';
export { mixUpsThatRead, readAsOtherType } from './wrong-type.js';
export { zoneChecks, type ZoneSite } from './zone-checks.js';
