import type { Episode, Evidence } from '../../../model/detector.js';
import { readingState } from '../../../model/sample-block.js';
import type { Zone } from '../../../model/zone.js';
import { firstPlaceFrom } from '../../../maths/first-place.js';
import { windowOf } from '../basics/judge-zones.js';
import { matesOf } from '../basics/mates.js';
import { oncePer } from '../basics/memo.js';
import { samplingMsOf } from '../basics/sampling.js';

/** A time in which nothing of a zone was recorded: from the last sample before to the first one behind. */
export interface Hole {
  readonly startMs: number;
  readonly endMs: number;
}

/** Two holes are one event when their ends differ by less than this many sampling times (own choice). */
const SLACK_SAMPLES = 4;

/**
 * Holes in the record of every zone, by zone index and start: rows that are missing, cells that are empty together with
 * those of set point and output, and what is missing at the end while other zones of the machine go on.
 */
export const missingRowsOf = oncePer((evidence: Evidence): readonly (readonly Hole[])[] =>
  evidence.zones.map((zone) =>
    [...gapsOf(evidence, zone), ...emptyOf(evidence, zone), ...missingEnd(evidence, zone)].sort(
      (a, b) => a.startMs - b.startMs,
    ),
  ),
);

/** Whether another zone has a hole that begins and ends with this one, as far as its zone's sampling tells. */
export function isSharedBy(evidence: Evidence, other: Zone, zone: Zone, hole: Hole): boolean {
  const holes = missingRowsOf(evidence)[other.index]!;
  const slackMs = slackMsOf(zone);
  const first = firstPlaceFrom(startsOf(evidence)[other.index]!, hole.startMs - slackMs);
  for (let i = first; i < holes.length && holes[i]!.startMs <= hole.startMs + slackMs; i++)
    if (Math.abs(holes[i]!.endMs - hole.endMs) <= slackMs) return true;
  return false;
}

const startsOf = oncePer((evidence: Evidence): readonly (readonly number[])[] =>
  missingRowsOf(evidence).map((holes) => holes.map(({ startMs }) => startMs)),
);

function slackMsOf(zone: Zone): number {
  return SLACK_SAMPLES * samplingMsOf(zone);
}

function gapsOf({ episodes }: Evidence, zone: Zone): readonly Episode[] {
  return episodes.get('gap')?.[zone.index] ?? [];
}

/** A reading alone that is empty may be an open input, written so; also where nothing else of the zone is logged. */
function emptyOf(evidence: Evidence, zone: Zone): Hole[] {
  if (!zone.has.setpoint && !zone.has.output) return [];
  const runs = evidence.episodes.get('open-runs')?.[zone.index] ?? [];
  return runs
    .filter(({ facts }) => facts['stateCode'] === readingState.blank && facts['controlShare'] === 0)
    .map(({ startMs, endMs, facts }) => ({
      startMs: facts['beforeMs'] ?? startMs,
      endMs: facts['afterMs'] ?? endMs,
    }));
}

/** Where a whole machine ends early its export ended there, and zones logged at another time say nothing of this one. */
function missingEnd(evidence: Evidence, zone: Zone): Hole[] {
  const startMs = lastSamplesOf(evidence)[zone.index]!;
  const { endMs } = windowOf(evidence);
  const slackMs = slackMsOf(zone) + evidence.digest.periodMs;
  if (endMs - startMs <= slackMs) return [];
  const beside = matesOf(evidence.zones, zone).filter(({ index }) => isLoggedAt(evidence, index, startMs, slackMs));
  const goOn = beside.filter(({ index }) => lastSamplesOf(evidence)[index]! > startMs + slackMs);
  return goOn.length * 2 > beside.length ? [{ startMs, endMs }] : [];
}

function isLoggedAt({ digest }: Evidence, zone: number, atMs: number, withinMs: number): boolean {
  const { readingCount, badCount } = digest.zones[zone]!;
  const place = (ms: number): number => Math.floor((ms - digest.startMs) / digest.periodMs);
  const [from, to] = [Math.max(0, place(atMs - withinMs)), Math.min(digest.length, place(atMs))];
  for (let i = from; i < to; i++) if (readingCount[i]! + badCount[i]! > 0) return true;
  return false;
}

/** When each zone was sampled last, to the digest's period; the log's end for one without samples. */
const lastSamplesOf = oncePer((evidence: Evidence): readonly number[] =>
  evidence.zones.map(({ index }) => {
    const { digest } = evidence;
    const { readingCount, badCount } = digest.zones[index]!;
    for (let i = digest.length - 1; i >= 0; i--)
      if (readingCount[i]! + badCount[i]! > 0) return digest.startMs + (i + 1) * digest.periodMs;
    return windowOf(evidence).endMs;
  }),
);
