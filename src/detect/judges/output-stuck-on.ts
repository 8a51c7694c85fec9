import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { highest } from '../../maths/extremes.js';
import { MINUTE_MS } from '../../model/time-units.js';
import { coolDownsOf } from '../shared/cold/cool-downs.js';
import { setpointsDegCOf } from '../shared/duty/chart-points.js';
import { judgeZones, symptomOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { maskOf } from '../shared/readings/mask.js';
import { settledHoursSince } from '../shared/readings/settled-since.js';
import { samplingMsOf } from '../shared/basics/sampling.js';
import { ZERO_OUTPUT_PERCENT } from '../shared/readings/zone-state.js';

export interface OutputStuckOnSettings {
  /** How far above its set point, or usual temperature, the reading must stand. */
  readonly leastAboveDegC: number;
  /** For so long with the output at zero: heat stored in the heater itself is gone by then. */
  readonly leastMinutes: number;
}

/** Single minutes between two parts of a run. */
const BRIDGE_PLACES = 3;

/** A reading that climbs, or stays far up, with the output at zero. */
export const outputStuckOn: Judge<OutputStuckOnSettings> = {
  meta: {
    id: 'output-stuck-on',
    sees: 'a zone that stays far above its set point although no heat is asked for',
    needs: ['reading', 'output'],
    source: 'Welded contactor or shorted solid-state relay; common practice.',
    defaults: { leastAboveDegC: 15, leastMinutes: 15 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'output-stuck-on', (zone) => judgeZone(evidence, zone, settings));
  },
};

interface Run {
  from: number;
  to: number;
  /** Largest, above what the zone should have at the time. */
  aboveDegC: number;
}

function judgeZone(evidence: Evidence, zone: Zone, settings: OutputStuckOnSettings): ZoneAnswer {
  if (!zone.has.output)
    return `Zone ${zone.name}: without its output, a stuck heater and a higher set point look the same.`;
  const usualDegC = setpointsDegCOf(evidence)[zone.index] ?? null;
  if (usualDegC === null) return `Zone ${zone.name} was never settled at a temperature.`;
  const { digest } = evidence;
  const data = digest.zones[zone.index]!;
  const mask = maskOf(evidence)[zone.index]!;
  const bridge = BRIDGE_PLACES + Math.ceil(samplingMsOf(zone) / digest.periodMs);
  const runs: Run[] = [];
  for (let i = 0; i < digest.length; i++) {
    const setpointDegC = data.setpointDegC[i]!;
    const target = setpointDegC > 0 && setpointDegC > usualDegC ? setpointDegC : usualDegC;
    const isUp = !mask[i] && data.meanDegC[i]! > target + settings.leastAboveDegC;
    if (!isUp || !(data.outputPercent[i]! <= ZERO_OUTPUT_PERCENT)) continue;
    const last = runs.at(-1);
    const aboveDegC = data.maxDegC[i]! - target;
    if (last && i - last.to <= bridge) {
      last.to = i + 1;
      last.aboveDegC = Math.max(last.aboveDegC, aboveDegC);
    } else runs.push({ from: i, to: i + 1, aboveDegC });
  }
  const minutesOf = ({ from, to }: Run) => ((to - from) * digest.periodMs) / MINUTE_MS;
  const long = runs.filter((run) => minutesOf(run) >= settings.leastMinutes && !isFalling(data.meanDegC, run));
  if (long.length === 0) return [];
  const at = (place: number) => digest.startMs + place * digest.periodMs;
  return [
    symptomOf('output-stuck-on', at(long[0]!.from), at(long.at(-1)!.to), long.length, {
      aboveMinutes: long.reduce((sum, run) => sum + minutesOf(run), 0),
      largestAboveDegC: highest(long.map(({ aboveDegC }) => aboveDegC)),
      coolDownCount: coolDownsOf(evidence)[zone.index]!.length,
      lastsToEndCount: long.at(-1)!.to >= digest.length - 2 ? 1 : 0,
      settledHoursSince: settledHoursSince(evidence, zone, at(long.at(-1)!.to)),
    }),
  ];
}

/** A zone that was turned down cools; one that is still heated does not. */
function isFalling(meanDegC: Float32Array, { from, to }: Run): boolean {
  const quarter = Math.max(1, Math.floor((to - from) / 4));
  const mean = (a: number, b: number) => {
    const there = Array.from(meanDegC.subarray(a, b)).filter(Number.isFinite);
    return there.reduce((sum, v) => sum + v, 0) / there.length;
  };
  return mean(from, from + quarter) - mean(to - quarter, to) > 5;
}
