import type { AlarmKind } from '../../model/alarm.js';
import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS } from '../../model/time-units.js';
import { isCovered, lengthOf, mergeIntervals, type Interval } from '../../maths/intervals.js';
import { judgeZones, symptomOf, windowOf } from '../shared/basics/judge-zones.js';
import { fullOutputPercentOf } from '../shared/readings/full-output.js';
import { hasBetween } from '../shared/opens/opens.js';
import { samplingMsOf } from '../shared/basics/sampling.js';
import { maskOf } from '../shared/readings/mask.js';
import { highest, lowest } from '../../maths/extremes.js';
import { matesOf } from '../shared/basics/mates.js';

export interface AlarmsAloneSettings {
  /** Alarms of one side that stand for less than this in all are lags behind the others (own choice: a heat-up). */
  readonly leastMinutes: number;
  /** Share of the machine's other zones with the same alarm from which on it is the machine's. */
  readonly sharedShare: number;
}

/** Alarms of zones that start within this are of one cause: they come as each zone passes its own limit (own choice). */
const TOGETHER_MS = 5 * MINUTE_MS;

const sides = { low: ['temperature-low', 'deviation-low'], high: ['temperature-high', 'deviation-high'] } as const;

type Side = keyof typeof sides;

/** An alarm that a jump of the reading raises comes within its delay (common practice). */
const LONGEST_DELAY_MS = 60_000;

/** A low or high alarm that stands on one zone while those of its machine do not: heat is missing there, or too much. */
export const alarmsAlone: Judge<AlarmsAloneSettings> = {
  meta: {
    id: 'alarms-alone',
    sees: 'a zone whose low or high temperature alarm stands while the other zones of its machine have none',
    needs: ['alarms', 'peers'],
    source: 'Common practice: a start, a stop or a power cut raises the alarms of all zones of a machine.',
    defaults: { leastMinutes: 30, sharedShare: 0.5 },
  },
  judge(evidence, settings) {
    const alone = { low: aloneOf(evidence, 'low', settings), high: aloneOf(evidence, 'high', settings) };
    return judgeZones(evidence, 'alarms-alone', (zone) => {
      if (!evidence.hasAlarmLog) return `Zone ${zone.name}: no alarm log was given.`;
      if (matesOf(evidence.zones, zone).length === 0) return `Zone ${zone.name}: it is the only zone of its machine.`;
      const [low, high] = [alone.low[zone.index]!, alone.high[zone.index]!];
      const told = [low, high].filter((times) => minutesOf(times) >= settings.leastMinutes);
      if (told.length === 0) return [];
      const startMs = lowest(told.map((times) => times[0]!.start));
      const endMs = highest(told.map((times) => times.at(-1)!.end));
      return [
        symptomOf('alarms-alone', startMs, endMs, told.flat().length, {
          lowMinutes: minutesOf(low),
          lowCount: low.length,
          lowFullOutputShare: fullOutputShare(evidence, zone, low),
          highMinutes: minutesOf(high),
          highCount: high.length,
        }),
      ];
    });
  },
};

/** Times of alarms of one side by zone index, without those that half of the machine has at the same time. */
function aloneOf(
  evidence: Evidence,
  side: Side,
  { sharedShare }: AlarmsAloneSettings,
): readonly (readonly Interval[])[] {
  const all = alarmTimesOf(evidence, side);
  const near = all.map((times) => mergeIntervals(times.map(({ start, end }) => widened(start, end))));
  return evidence.zones.map((zone) => {
    if (all[zone.index]!.length === 0) return [];
    const mates = matesOf(evidence.zones, zone).map(({ index }) => near[index]!);
    const isShared = (start: number) =>
      mates.filter((times) => isCovered(times, start)).length >= sharedShare * mates.length;
    return mergeIntervals(all[zone.index]!).filter(({ start }) => !isShared(start) && !isBlind(evidence, zone, start));
  });
}

const widened = (start: number, end: number): Interval => ({ start: start - TOGETHER_MS, end: end + TOGETHER_MS });

/** An alarm without an end has no length: lists that hold no ends would have all of them stand for ever. */
function alarmTimesOf(evidence: Evidence, side: Side): readonly (readonly Interval[])[] {
  const kinds: readonly AlarmKind[] = sides[side];
  const lastMs = windowOf(evidence).endMs;
  const byZone = evidence.zones.map((): Interval[] => []);
  for (const { zone, startMs, endMs } of evidence.alarms.about(
    ({ zone, kind }) => zone !== null && kinds.includes(kind),
  ))
    byZone[zone!]?.push({ start: startMs, end: Number.isNaN(endMs) ? startMs : Math.min(endMs, lastMs) });
  return byZone;
}

/** Watchers of readings that move as no heat does. */
const jumpWatchers = ['settled-step', 'impossible-step', 'spike'] as const;

/** Where the zone's reading says nothing at the time, or jumped just before, its alarm says nothing of heat. */
function isBlind(evidence: Evidence, zone: Zone, startMs: number): boolean {
  const { digest, episodes } = evidence;
  const hasJumped = jumpWatchers.some((id) => {
    const jumpsMs = (episodes.get(id)?.[zone.index] ?? []).map((jump) => jump.endMs);
    // The jump came up to a sampling time before it was logged, so the alarm may stand before it in the log.
    return hasBetween(jumpsMs, startMs - LONGEST_DELAY_MS, startMs + samplingMsOf(zone));
  });
  if (hasJumped) return true;
  const place = Math.floor((startMs - digest.startMs) / digest.periodMs);
  return maskOf(evidence)[zone.index]![place] !== 0;
}

const minutesOf = (times: readonly Interval[]): number => lengthOf(times) / MINUTE_MS;

/** Share of the alarms' time in which the output was as high as it goes; NaN where no output is logged. */
function fullOutputShare(evidence: Evidence, zone: Zone, times: readonly Interval[]): number {
  const { digest } = evidence;
  const { outputPercent } = digest.zones[zone.index]!;
  const fullPercent = fullOutputPercentOf(evidence)[zone.index]!;
  let [known, full] = [0, 0];
  for (const { start, end } of times) {
    const from = Math.max(0, Math.floor((start - digest.startMs) / digest.periodMs));
    const to = Math.min(digest.length - 1, Math.floor((end - digest.startMs) / digest.periodMs));
    for (let i = from; i <= to; i++) {
      if (Number.isNaN(outputPercent[i]!)) continue;
      known++;
      if (outputPercent[i]! >= fullPercent) full++;
    }
  }
  return full / known;
}
