import type { Evidence } from '../../../model/detector.js';
import type { PlantDigest, ZoneDigest } from '../../../model/digest.js';
import { MINUTE_MS, HOUR_MS } from '../../../model/time-units.js';
import { fitExponential } from '../../../maths/exponential-fit.js';
import { median } from '../../../maths/quantile.js';
import { oncePer } from '../basics/memo.js';
import { samplesAhead } from '../basics/sampling.js';
import { lineOf } from '../readings/windows.js';
import { zoneState, zoneStatesOf } from '../readings/zone-state.js';

/** A cool-down must fall this far to show its time constant above noise and neighbours (own choice). */
const LEAST_FALL_DEG_C = 25;
/** Six hours show any heater zone's time constant (common practice); later the room itself moves. */
const LONGEST_MS = 6 * HOUR_MS;
/** A fit less certain than this share of its time constant is left out (own choice). */
const WORST_ERROR_SHARE = 0.25;
const POINTS = 72;
/** A fall shows above noise over this long … */
const FALL_STEP_MS = 3 * MINUTE_MS;
/** … by this much (own choices: slower falls are the tail, already in the stretch). */
const FALL_NOISE_DEG_C = 1;

export interface CoolDown {
  readonly startMs: number;
  readonly endMs: number;
  readonly fromDegC: number;
  readonly toDegC: number;
  readonly tauMinutes: number;
  readonly tauErrorMinutes: number;
}

/** Every cool-down with the output at zero that shows its time constant, per zone in time order. Never throws. */
export const coolDownsOf = oncePer((evidence: Evidence): readonly (readonly CoolDown[])[] =>
  evidence.zones.map((listed) => {
    const zone = evidence.digest.zones[listed.index]!;
    const step = samplesAhead(listed, FALL_STEP_MS, evidence.digest.periodMs);
    return offStretches(zoneStatesOf(evidence)[listed.index]!).flatMap(([from, to]) =>
      coolDownIn(evidence.digest, zone, fallStart(zone, from, step), to),
    );
  }),
);

/**
 * Time constant of each zone with zero output: the median over its cool-downs; where it has none, that of the zones of
 * its machine, else of all.
 *
 * @returns Hours per zone, NaN where nothing tells. Never throws.
 */
export const timeConstantsOf = oncePer((evidence: Evidence): readonly number[] => {
  const own = coolDownsOf(evidence).map((list) => median(list.map(({ tauMinutes }) => tauMinutes / 60)));
  return evidence.zones.map(({ index, machine }) => {
    if (!Number.isNaN(own[index]!)) return own[index]!;
    const near = median(evidence.zones.filter((z) => z.machine === machine).map((z) => own[z.index]!));
    return Number.isNaN(near) ? median(own) : near;
  });
});

/** Stretches [from, to) of places in state off. */
function offStretches(states: Uint8Array): [number, number][] {
  const stretches: [number, number][] = [];
  for (let from = 0; from < states.length;) {
    let to = from + 1;
    while (to < states.length && states[to] === states[from]) to++;
    if (states[from] === zoneState.off) stretches.push([from, to]);
    from = to;
  }
  return stretches;
}

/**
 * Where the fall into an off stretch began. With an output or set point that is the stretch's own start; without them,
 * off is known only once the zone is cold, so the fall before belongs to it.
 *
 * @param step Places over which a fall shows above noise.
 */
function fallStart(zone: ZoneDigest, from: number, step: number): number {
  if (!Number.isNaN(zone.outputPercent[from]!) || !Number.isNaN(zone.setpointDegC[from]!)) return from;
  let start = from;
  while (start >= step && zone.meanDegC[start - step]! > zone.meanDegC[start]! + FALL_NOISE_DEG_C) start -= step;
  return start;
}

function coolDownIn({ startMs, periodMs }: PlantDigest, zone: ZoneDigest, from: number, to: number): CoolDown[] {
  const end = Math.min(to, from + Math.ceil(LONGEST_MS / periodMs));
  const step = Math.max(1, Math.ceil((end - from) / POINTS));
  const minutes: number[] = [];
  const degC: number[] = [];
  for (let at = from; at + step <= end; at += step) {
    const { mean, count } = lineOf(zone.meanDegC, at, at + step);
    if (count === 0) continue; // slow logs leave places empty
    minutes.push(((at - from + step / 2) * periodMs) / MINUTE_MS);
    degC.push(mean);
  }
  const fromDegC = degC[0] ?? NaN;
  const toDegC = degC.at(-1) ?? NaN;
  if (!(fromDegC - toDegC >= LEAST_FALL_DEG_C)) return [];
  const fit = fitExponential(minutes, degC);
  if (!(fit.isResolved && fit.tauError <= WORST_ERROR_SHARE * fit.tau && fit.departure > 0)) return [];
  const at = (place: number) => startMs + place * periodMs;
  return [{ startMs: at(from), endMs: at(end), fromDegC, toDegC, tauMinutes: fit.tau, tauErrorMinutes: fit.tauError }];
}
