import type { ZoneFinding } from '../model/findings.js';
import type { Zone } from '../model/zone.js';
import { explainOffset } from '../sensors/explain-offset.js';
import { parseSensorType, sensorTypes } from '../sensors/sensor-types.js';
import { factOf } from '../weigh/term.js';
import { likeliestFault } from '../weigh/verdict.js';
import type { Verdict } from '../weigh/weigh-plant.js';
import { rounded } from './rounded.js';

type Ohms = Pick<ZoneFinding, 'seriesOhm' | 'shuntOhm'>;

const NONE: Ohms = { seriesOhm: null, shuntOhm: null };

/**
 * The ohms that would explain a wiring fault: in series for steps that come and go, in parallel for a reading that
 * falls when wet. Told only for a known RTD at a known temperature.
 */
export function ohmsOf(zone: Zone, { evidence, probabilities }: Verdict, setpointDegC: number | null): Ohms {
  const id = zone.sensor === null ? undefined : parseSensorType(zone.sensor);
  const sensor = id && sensorTypes[id];
  if (!sensor || setpointDegC === null || likeliestFault(probabilities) !== 'wiring') return NONE;
  const stepDegC = signedStep(evidence);
  const dipDegC = -Math.abs(factOf(evidence, 'wet-recovery', 'hotDepthDegC'));
  const shiftDegC = Number.isNaN(stepDegC) ? dipDegC : stepDegC;
  if (Number.isNaN(shiftDegC)) return NONE;
  const explained = explainOffset({
    sensor,
    trueDegC: setpointDegC,
    readingDegC: setpointDegC + shiftDegC,
    ...(zone.wires === null ? {} : { wires: zone.wires }),
  });
  return {
    seriesOhm: Number.isNaN(stepDegC) ? null : ohmOrNull(explained.seriesOhm),
    shuntOhm: Number.isNaN(stepDegC) ? ohmOrNull(explained.shuntOhm) : null,
  };
}

/** Size of the steps with the sign that most of them have; where both are alike often, up, as ohms in series shift it. */
function signedStep(evidence: Verdict['evidence']): number {
  const up = factOf(evidence, 'returning-steps', 'medianUpDegC');
  const down = factOf(evidence, 'returning-steps', 'medianDownDegC');
  const upShare = factOf(evidence, 'returning-steps', 'upShare');
  if (Number.isNaN(upShare)) return NaN;
  return upShare >= 0.5 || Number.isNaN(down) ? up : -down;
}

function ohmOrNull(ohm: number | null): number | null {
  return ohm === null || !Number.isFinite(ohm) ? null : rounded(ohm, 2);
}
