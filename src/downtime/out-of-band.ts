import type { Interval } from '../maths/intervals.js';
import { mergeIntervals } from '../maths/intervals.js';
import { median } from '../maths/quantile.js';
import type { PlantDigest } from '../model/digest.js';
import { deviationOn } from './band.js';
import type { Machine } from './machine-minutes.js';
import { outAloneOn, type Side } from './out-together.js';
import type { DowntimeSettings } from './settings.js';

/** Nearer than this to where it belongs no zone is held against a machine (common practice: narrow alarm bands). */
const NARROWEST_BAND_DEG_C = 5;
/** Loops that hunt need a wider band: so many times the usual distance of the machine's zones (own choice). */
const TIMES_USUAL = 6;

export interface OutSpan extends Interval {
  readonly zone: number;
}

/**
 * Spans in which a zone's own reading shows it too hot or too cold while its machine's other zones are not: what keeps
 * a machine from running where no alarm was logged. After all zones were out together, the last to come back is only
 * the slowest, unless it takes longer than `slowestHeatUpMs`.
 *
 * @returns By zone and time, ms; gaps up to `longestFlickerMs` bridged. None on machines with one zone, which has no
 *   others to be held against. Never throws.
 */
export function outOfBandSpans(
  machine: Machine,
  digest: PlantDigest,
  running: Float32Array,
  settings: DowntimeSettings,
): OutSpan[] {
  if (machine.zones.length < 2) return [];
  const deviation = deviationOn(machine, digest);
  const isAlone = outAloneOn(machine, digest);
  const awayOf = machine.zones.map(({ index }) =>
    Float32Array.from({ length: digest.length }, (_, place) => deviation(index, place)),
  );
  const bandDegC = Math.max(NARROWEST_BAND_DEG_C, TIMES_USUAL * usualDistanceDegC(awayOf, running));
  return machine.zones.flatMap(({ index }, i) => {
    const spans = ([1, -1] as const).flatMap((side) =>
      spansOnSide(awayOf[i]!, side, bandDegC, (place) => isAlone(index, place, side), digest, settings),
    );
    return mergeIntervals(spans, settings.longestFlickerMs).map((span) => ({ ...span, zone: index }));
  });
}

/** Median over the zones, so that one which stands far out for days does not widen its own band. */
function usualDistanceDegC(awayOf: readonly Float32Array[], running: Float32Array): number {
  return median(awayOf.map((away) => median(away.map((degC, i) => (running[i]! > 0 ? Math.abs(degC) : NaN)))));
}

/**
 * Of each time out of the band, the parts in which the zone is out alone. A part soon after which the others follow is
 * the beginning of a fall of all of them; one that comes after such a fall must last `slowestHeatUpMs`.
 */
function spansOnSide(
  away: Float32Array,
  side: Side,
  bandDegC: number,
  isAlone: (place: number) => boolean,
  { startMs, periodMs }: PlantDigest,
  { othersFollowMs, slowestHeatUpMs }: DowntimeSettings,
): Interval[] {
  const spans: Interval[] = [];
  const isOut = (place: number) => side * away[place]! > bandDegC;
  for (let i = 0; i < away.length; i++) {
    if (!isOut(i) || !isAlone(i)) continue;
    const from = i;
    while (isOut(i) && isAlone(i)) i++;
    const leastMs = isOut(from - 1) ? slowestHeatUpMs : isOut(i) ? othersFollowMs : 0;
    if ((i - from) * periodMs > leastMs) spans.push({ start: startMs + from * periodMs, end: startMs + i * periodMs });
  }
  return spans;
}
