import type { DetectorMeta, Episode } from '../../model/detector.js';
import { finiteFacts, withLeftOut } from '../shared/basics/capped-list.js';
import { limitsOf } from '../shared/blocks/heating-limit.js';
import { holeMsOf, resolutionDegCOf } from '../shared/basics/sampling.js';
import type { Strip } from '../shared/blocks/strip.js';
import { jumpRules, noJumps, type NotedJumps } from '../shared/blocks/noted-jumps.js';
import { windowWatcher } from '../shared/blocks/window-watcher.js';

export interface SpikeSettings {
  /** Smaller spikes are noise or rounding (own choice: above the noise of a healthy input). */
  readonly smallestDegC: number;
  /** Nor may a spike be a few steps of a coarse log (own choice). */
  readonly smallestSteps: number;
  /** The readings on both sides agree within this share of the spike (own choice). */
  readonly largestLeftShare: number;
}

/** Samples a spike may last; longer ones are excursions, which settled-step and impossible-step see. */
const MOST_SAMPLES = 3;
/** Spikes further apart in the list than this cannot share a sample. */
const NEAR = 2 * MOST_SAMPLES;

const meta: DetectorMeta<SpikeSettings> = {
  id: 'spike',
  sees: 'one to three readings far out and back again, faster than heat allows',
  needs: ['reading'],
  source: 'Common practice; rate against the heating limit measured in the log itself.',
  defaults: { smallestDegC: 2, smallestSteps: 4, largestLeftShare: 0.4 },
};

interface Spike {
  startMs: number;
  endMs: number;
  sampleCount: number;
  beforeDegC: number;
  peakDegC: number;
  /** The faster one of the way out and the way back, and whether that one rose. */
  fastestDegCPerS: number;
  isFastestRising: boolean;
  running: number;
}

interface Found extends NotedJumps<Spike> {
  readonly zone: number;
  readonly smallestDegC: number;
  readonly largestLeftShare: number;
  readonly holeMs: number;
}

/** Lists short excursions of which at least one side is too fast to be heat. */
export const spike = windowWatcher<Found, SpikeSettings>({
  meta,
  scanMemory: () => MOST_SAMPLES + 1,
  ...jumpRules<Spike, Found>(),
  start: (zone, settings) => ({
    zone: zone.index,
    smallestDegC: Math.max(settings.smallestDegC, settings.smallestSteps * resolutionDegCOf(zone)),
    largestLeftShare: settings.largestLeftShare,
    holeMs: holeMsOf(zone),
    ...noJumps<Spike>(zone),
  }),
  isQuiet: ({ smallestDegC }, { largestStepDegC }) => largestStepDegC < smallestDegC,
  scan(found, strip) {
    const { degC, from, to } = strip;
    const { smallestDegC } = found;
    // A whole window also for short spikes: the piece of the log before may hold its beginning.
    for (let i = Math.max(MOST_SAMPLES + 1, from); i < to; i++) {
      if (!(Math.abs(degC[i]! - degC[i - 1]!) >= smallestDegC)) continue; // the way back must be one step
      for (let length = 1; length <= MOST_SAMPLES; length++) noteSpike(found, strip, i, length);
    }
  },
  finish({ zone, limit, jumps }) {
    const limits = limitsOf(limit);
    const tooFast = jumps.items.filter(
      (s) => s.fastestDegCPerS > (s.isFastestRising ? limits.heatingDegCPerS : limits.coolingDegCPerS),
    );
    const apart = tooFast.filter((s, i) => !tooFast.slice(Math.max(0, i - NEAR), i + NEAR).some((o) => isInside(s, o)));
    return withLeftOut(
      apart.map((s) => episodeOf(zone, s)),
      jumps.leftOutCount,
    );
  },
});

/** Notes the spike of `length` samples that ends before place `after`, if there is one. */
function noteSpike(found: Found, { timeMs, degC, running }: Strip, after: number, length: number): void {
  const before = after - length - 1;
  const sign = Math.sign(degC[after - 1]! - degC[after]!);
  let leastDegC = Infinity;
  let peakDegC = degC[after - 1]!;
  for (let i = before + 1; i < after; i++) {
    const outDegC = Math.min(sign * (degC[i]! - degC[before]!), sign * (degC[i]! - degC[after]!));
    leastDegC = Math.min(leastDegC, outDegC);
    if (sign * degC[i]! > sign * peakDegC) peakDegC = degC[i]!;
  }
  const isOut = leastDegC >= found.smallestDegC; // NaN anywhere fails
  const leftDegC = Math.abs(degC[after]! - degC[before]!);
  if (!isOut || !(leftDegC <= found.largestLeftShare * leastDegC)) return;
  if (timeMs[after]! - timeMs[before]! > found.holeMs * (length + 1)) return;
  const outRate = (Math.abs(degC[before + 1]! - degC[before]!) * 1000) / (timeMs[before + 1]! - timeMs[before]!);
  const backRate = (Math.abs(degC[after]! - degC[after - 1]!) * 1000) / (timeMs[after]! - timeMs[after - 1]!);
  found.jumps.push({
    startMs: timeMs[before + 1]!,
    endMs: timeMs[after - 1]!,
    sampleCount: length,
    beforeDegC: degC[before]!,
    peakDegC,
    fastestDegCPerS: Math.max(outRate, backRate),
    isFastestRising: outRate >= backRate ? sign > 0 : sign < 0,
    running: running[after - 1]!,
  });
}

/** A spike on top of a longer one is part of it. */
function isInside(inner: Spike, outer: Spike): boolean {
  return outer.sampleCount > inner.sampleCount && inner.startMs >= outer.startMs && inner.endMs <= outer.endMs;
}

function episodeOf(zone: number, s: Spike): Episode {
  return {
    kind: meta.id,
    zone,
    startMs: s.startMs,
    endMs: s.endMs,
    facts: finiteFacts({
      sizeDegC: s.peakDegC - s.beforeDegC,
      sampleCount: s.sampleCount,
      beforeDegC: s.beforeDegC,
      peakDegC: s.peakDegC,
      rateDegCPerS: s.fastestDegCPerS,
      runningShare: s.running,
    }),
  };
}
