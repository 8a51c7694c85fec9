import type { DetectorMeta, Episode } from '../../model/detector.js';
import { finiteFacts, withLeftOut } from '../shared/basics/capped-list.js';
import { FASTEST_HEAT_DEG_C_PER_S } from '../shared/basics/fastest-heat.js';
import { limitsOf, type HeatingRates } from '../shared/blocks/heating-limit.js';
import { holeMsOf, resolutionDegCOf } from '../shared/basics/sampling.js';
import type { Strip } from '../shared/blocks/strip.js';
import { WARMEST_ROOM_DEG_C } from '../shared/basics/warmest-room.js';
import { jumpRules, noJumps, type NotedJumps } from '../shared/blocks/noted-jumps.js';
import { windowWatcher } from '../shared/blocks/window-watcher.js';

export interface ImpossibleStepSettings {
  /** Smaller jumps may be noise, product or a door; settled-step looks at those (own choice). */
  readonly smallestJumpDegC: number;
  /** Nor may a jump be a few steps of a coarse log (own choice). */
  readonly smallestJumpSteps: number;
}

const meta: DetectorMeta<ImpossibleStepSettings> = {
  id: 'impossible-step',
  sees: 'a reading that moves faster than the zone can heat or cool',
  needs: ['reading'],
  source: 'Lumped-body energy balance dT/dt = P/(m·c), Incropera ch. 5; the limit is measured in the log itself.',
  defaults: { smallestJumpDegC: 8, smallestJumpSteps: 4 },
};

interface Step {
  fromMs: number;
  toMs: number;
  fromDegC: number;
  toDegC: number;
  outputPercent: number;
  running: number;
}

interface Found extends NotedJumps<Step> {
  readonly zone: number;
  readonly smallestDegC: number;
  readonly holeMs: number;
}

/** Lists every step between neighbouring good readings that is too fast to be heat, by the limit of the whole log. */
export const impossibleStep = windowWatcher<Found, ImpossibleStepSettings>({
  meta,
  scanMemory: () => 1,
  ...jumpRules<Step, Found>(),
  start: (zone, settings) => ({
    zone: zone.index,
    smallestDegC: Math.max(settings.smallestJumpDegC, settings.smallestJumpSteps * resolutionDegCOf(zone)),
    holeMs: holeMsOf(zone),
    ...noJumps<Step>(zone),
  }),
  isQuiet: ({ smallestDegC }, { largestStepDegC }) => largestStepDegC < smallestDegC,
  scan({ limit, jumps, smallestDegC, holeMs }, strip) {
    const { timeMs, degC, outputPercent, running, from, to } = strip;
    const limits = limitsOf(limit);
    for (let i = Math.max(1, from); i < to; i++) {
      const jumpDegC = degC[i]! - degC[i - 1]!;
      if (!(Math.abs(jumpDegC) >= smallestDegC)) continue; // NaN, a bad sample, ends here too
      const gapMs = timeMs[i]! - timeMs[i - 1]!;
      if (gapMs > holeMs || !isTooFast(jumpDegC, gapMs, limits) || isAskedFor(strip, i)) continue;
      jumps.push({
        fromMs: timeMs[i - 1]!,
        toMs: timeMs[i]!,
        fromDegC: degC[i - 1]!,
        toDegC: degC[i]!,
        outputPercent: outputPercent[i - 1]!,
        running: running[i]!,
      });
    }
  },
  finish({ zone, limit, jumps }) {
    const limits = withColdStarts(limitsOf(limit), jumps.items);
    const kept = jumps.items.filter((step) => isTooFast(step.toDegC - step.fromDegC, step.toMs - step.fromMs, limits));
    return withLeftOut(
      kept.map((step) => episodeOf(zone, step, limits)),
      jumps.leftOutCount,
    );
  },
});

/** Output near its end counts as full power. */
const FULL_POWER_PERCENT = 90;
/** Overshoot that full power may leave at the end of a fast heat-up (own choice). */
const OVERSHOOT_DEG_C = 15;

/** A log too slow for the zone shows a heat-up, or a new set point, as one step, from which no rate can be learned. */
function isAskedFor(strip: Strip, i: number): boolean {
  return isCommandedHeat(strip, i) || followsSetpoint(strip, i);
}

/** A rise towards the set point under full power is a heat-up, however fast. */
function isCommandedHeat({ degC, setpointDegC, outputPercent }: Strip, i: number): boolean {
  const isRising = degC[i]! > degC[i - 1]!;
  const isFullPower = outputPercent[i - 1]! >= FULL_POWER_PERCENT || outputPercent[i]! >= FULL_POWER_PERCENT;
  return isRising && isFullPower && degC[i]! <= setpointDegC[i]! + OVERSHOOT_DEG_C;
}

/** The set point moved the same way, and the reading is where it asks it to be. */
function followsSetpoint({ degC, setpointDegC }: Strip, i: number): boolean {
  const jumpDegC = degC[i]! - degC[i - 1]!;
  const askedDegC = setpointDegC[i]! - setpointDegC[i - 1]!;
  return askedDegC * jumpDegC > 0 && Math.abs(degC[i]! - setpointDegC[i]!) <= OVERSHOOT_DEG_C;
}

/** Fewer may be sensors that were put right (own choice). */
const FEWEST_STARTS = 3;

/**
 * A log too slow for its zone shows each start from cold in one step or two, from which `limit` learns nothing. Rises from
 * the lower half of their way above the room, to which no step brought the reading, are such starts, and heat may move
 * the zone as fast at other times.
 */
function withColdStarts(limits: HeatingRates, steps: readonly Step[]): HeatingRates {
  const isFallenTo = (i: number): boolean =>
    i >= 0 && steps[i]!.toDegC < steps[i]!.fromDegC && isLow(steps[i]!.toDegC, steps[i]!.fromDegC);
  const rates = steps.flatMap((step, i) => {
    const rate = rateOf(step);
    const isStart = isLow(step.fromDegC, step.toDegC) && !isFallenTo(i - 1);
    return isStart && rate <= FASTEST_HEAT_DEG_C_PER_S ? [rate] : [];
  });
  if (rates.length < FEWEST_STARTS) return limits;
  return { ...limits, heatingDegCPerS: Math.max(limits.heatingDegCPerS, ...rates) };
}

/** In the lower half between the warmest room and a zone that is hot. */
function isLow(degC: number, hotDegC: number): boolean {
  return hotDegC > WARMEST_ROOM_DEG_C && degC <= WARMEST_ROOM_DEG_C + (hotDegC - WARMEST_ROOM_DEG_C) / 2;
}

/** °C/s, below zero where the reading falls. */
function rateOf({ fromMs, toMs, fromDegC, toDegC }: Step): number {
  return ((toDegC - fromDegC) * 1000) / (toMs - fromMs);
}

function isTooFast(jumpDegC: number, gapMs: number, limits: HeatingRates): boolean {
  const limitDegCPerS = jumpDegC > 0 ? limits.heatingDegCPerS : limits.coolingDegCPerS;
  return Math.abs(jumpDegC) * 1000 > limitDegCPerS * gapMs;
}

function episodeOf(zone: number, step: Step, limits: HeatingRates): Episode {
  const jumpDegC = step.toDegC - step.fromDegC;
  return {
    kind: meta.id,
    zone,
    startMs: step.fromMs,
    endMs: step.toMs,
    facts: finiteFacts({
      jumpDegC,
      fromDegC: step.fromDegC,
      toDegC: step.toDegC,
      rateDegCPerS: rateOf(step),
      limitDegCPerS: jumpDegC > 0 ? limits.heatingDegCPerS : limits.coolingDegCPerS,
      outputPercent: step.outputPercent,
      runningShare: step.running,
    }),
  };
}
