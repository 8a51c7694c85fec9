import type { Episode, Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { HOUR_MS, DAY_MS } from '../../../model/time-units.js';
import { median } from '../../../maths/quantile.js';
import { oncePer } from '../basics/memo.js';
import { resolutionDegCOf } from '../basics/sampling.js';
import { peersOf } from './movement.js';

/** Hours of the clock that are taken for the same time of the day, either way (own choice: sun and shifts move less). */
const SAME_TIME_HOURS = 2;
/** Stretches at the same time of other days without which nothing is usual. */
const FEWEST_OTHERS = 5;
/** Loud is so many times the usual noise of its time of the day; sound outdoor sensors reach three (measured on two). */
const LOUD_RATIO = 5;
/** Less noise than a class B sensor may be off by at 0 °C (IEC 60751) matters to nobody. */
const LEAST_NOISE_DEG_C = 0.3;
/** A neighbour at this many times its own usual is loud with it, and half of them are the machine, or the weather. */
const SHARED_RATIO = 2;
const SHARED_SHARE = 0.5;

/** A stretch of the scatter watcher that is louder than the zone is at that time of other days. */
export interface NoisyStretch {
  readonly startMs: number;
  readonly endMs: number;
  readonly noiseDegC: number;
  /** Noise over the usual one at that time of the day. */
  readonly timesUsual: number;
}

/**
 * Loud stretches of every zone alone, by zone index, in time order. Scatter has a daily course – sun and wind, shifts and
 * speeds – so like is compared with like: each stretch with those within two hours of its clock time on other days.
 */
export const noisyStretchesOf = oncePer((evidence: Evidence): readonly (readonly NoisyStretch[])[] => {
  const all = evidence.zones.map((zone) => ratiosOf(evidence, zone));
  return evidence.zones.map((zone) => {
    const peers = peersOf(evidence, zone).map(({ index }) => all[index]!);
    return all[zone.index]!.filter(
      (stretch) =>
        stretch.timesUsual >= LOUD_RATIO && stretch.noiseDegC >= LEAST_NOISE_DEG_C && !isShared(stretch, peers),
    );
  });
});

function isShared({ startMs, endMs }: NoisyStretch, peers: readonly (readonly NoisyStretch[])[]): boolean {
  const there = peers.flatMap(
    (stretches) => stretches.find((other) => other.endMs > startMs && other.startMs < endMs) ?? [],
  );
  const loud = there.filter(({ timesUsual }) => timesUsual >= SHARED_RATIO).length;
  return loud > 0 && loud >= SHARED_SHARE * there.length;
}

function ratiosOf({ episodes }: Evidence, zone: Zone): NoisyStretch[] {
  const stretches = episodes.get('scatter')?.[zone.index] ?? [];
  // Below a quarter of a digit noise is not seen, so a ratio to it would be of nothing.
  const floorDegC = resolutionDegCOf(zone) / 4;
  const byHour = Array.from({ length: 24 }, (): Episode[] => []);
  // A reading that stands still tells nothing of the usual noise.
  for (const stretch of stretches)
    if (stretch.facts['noiseDegC']! > floorDegC) byHour[clockHour(stretch)]!.push(stretch);
  const usual = byHour.map((_, hour) => {
    const near = Array.from(
      { length: 2 * SAME_TIME_HOURS + 1 },
      (__, k) => byHour[(hour + k - SAME_TIME_HOURS + 24) % 24]!,
    ).flat();
    const days = new Set(near.map(({ startMs }) => Math.floor(startMs / DAY_MS))).size;
    return days >= FEWEST_OTHERS ? Math.max(floorDegC, median(near.map(({ facts }) => facts['noiseDegC']!))) : NaN;
  });
  return stretches.flatMap((stretch) => {
    const noiseDegC = stretch.facts['noiseDegC']!;
    const timesUsual = noiseDegC / usual[clockHour(stretch)]!;
    return Number.isNaN(timesUsual) ? [] : [{ startMs: stretch.startMs, endMs: stretch.endMs, noiseDegC, timesUsual }];
  });
}

const clockHour = ({ startMs }: Episode): number => Math.floor(startMs / HOUR_MS) % 24;
