import type { AlarmSpan } from '../../../model/alarm.js';
import type { Episode, Evidence } from '../../../model/detector.js';
import { quantile } from '../../../maths/quantile.js';
import { readingState } from '../../../model/sample-block.js';
import type { Zone } from '../../../model/zone.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { conditionAt, conditionsOf } from '../readings/exposure.js';
import { learnedCodesOf } from '../readings/learned-codes.js';
import { firstPlaceFrom } from '../../../maths/first-place.js';
import { oncePer } from '../basics/memo.js';
import { samplingMsOf } from '../basics/sampling.js';

/** One time in which the input had no sensor to read, from the log, the alarm log or both, counted once. */
export interface Open {
  readonly startMs: number;
  /** Last bad sample or end of the alarm; equal to startMs where no end is known. */
  readonly endMs: number;
  /** Still so at the zone's last sample. */
  readonly isStanding: boolean;
  /** `short` reads below the scale, `open` above it, as a word or as bad quality. */
  readonly kind: 'open' | 'short';
  readonly isInLog: boolean;
  readonly isInAlarms: boolean;
  /** Alarms that fall in it. */
  readonly alarmCount: number;
  /** Bad samples; 0 when only the alarm log knows of it. */
  readonly sampleCount: number;
  /** Good reading right before and first one after; NaN where there is none. */
  readonly beforeDegC: number;
  readonly afterDegC: number;
  /** Share of running, the larger of the open's minute and the one before; NaN = not known. */
  readonly runningShare: number;
  /** 1, 0 or NaN = not known. */
  readonly hot: number;
  /** Other zones that open within the same moment. */
  readonly othersAtOnceCount: number;
}

type Draft = { -readonly [key in keyof Open]: Open[key] };

const openStates: ReadonlySet<number> = new Set([
  readingState.openText,
  readingState.otherText,
  readingState.badQuality,
  readingState.aboveScale,
]);

/** An alarm may come and go this much beside the log's own samples (alarm delay and filter, common practice). */
const ALARM_SLACK_MS = 10_000;

/** Opens of every zone in time order, by zone index. Alarm times must be on the log's clock already. */
export const opensOf = oncePer((evidence: Evidence): readonly (readonly Open[])[] => {
  const drafts = evidence.zones.map((zone) => withAlarms(zone, opensInLog(evidence, zone), evidence));
  const conditions = conditionsOf(evidence);
  const starts = drafts.map((opens) => Float64Array.from(opens, (open) => open.startMs));
  drafts.forEach((opens, z) => {
    const { runningShare, hot } = conditions[z]!;
    const withinMs = momentMsOf(evidence.zones[z]!);
    // In place: an alarm list may tell of a million opens, and copies would double them.
    for (const open of opens) {
      const justBeforeMs = beforeMs(evidence, z, open.startMs);
      open.runningShare = Math.max(
        conditionAt(evidence, runningShare, open.startMs),
        conditionAt(evidence, runningShare, justBeforeMs),
      );
      open.hot = conditionAt(evidence, hot, justBeforeMs);
      open.othersAtOnceCount = othersAtOnce(starts, z, open.startMs, withinMs);
    }
  });
  return drafts;
});

/**
 * A time in the minute before an open. An open often stops the machine at once, so the log shows it standing in the
 * very row of the open; what counts is whether it moved when the contact broke, so the
 * larger share of this minute and the one before is taken.
 */
function beforeMs({ digest, zones }: Evidence, zone: number, startMs: number): number {
  return startMs - Math.max(digest.periodMs, samplingMsOf(zones[zone]!));
}

/** What counts as the same moment: one sampling time and a bit, since files of one machine may be logged in turn. */
export function momentMsOf(zone: Zone): number {
  return 1.1 * samplingMsOf(zone) + 1000;
}

/** Length of an open in minutes; 0 for one of a single sample, or of an alarm without an end. */
export function openMinutes(open: Open): number {
  return (open.endMs - open.startMs) / MINUTE_MS;
}

/** Opens that lie closer together than this are one disturbance of the same contact (own choice). */
const BURST_MS = 10 * MINUTE_MS;

/** First opens of bursts: opens in a burst are not independent, so tests of rates count bursts. */
export function burstStarts(opens: readonly Open[]): readonly Open[] {
  return opens.filter((open, i) => i === 0 || open.startMs - opens[i - 1]!.endMs > BURST_MS);
}

function opensInLog(evidence: Evidence, zone: Zone): Draft[] {
  const usualLowDegC = quantile(evidence.digest.zones[zone.index]!.meanDegC, 0.05);
  const runs = [...(evidence.episodes.get('open-runs')?.[zone.index] ?? [])].flatMap((run) => {
    const kind = kindOf(run, usualLowDegC);
    return kind === null ? [] : [{ run, kind }];
  });
  const codes = learnedCodesOf(evidence)[zone.index]!.filter((code) => code.side !== 'near');
  const lastMs = lastSampleMs(evidence, zone);
  const drafts = [
    ...runs.map(({ run, kind }) => draftOfRun(run, kindOn(zone, kind))),
    ...codes.flatMap((code) =>
      code.spans.map((span) => ({
        ...emptyDraft(span.startMs, span.endMs, kindOn(zone, code.side === 'above' ? 'open' : 'short')),
        isInLog: true,
        sampleCount: span.sampleCount,
        beforeDegC: span.beforeDegC,
        afterDegC: span.afterDegC,
      })),
    ),
  ].sort((a, b) => a.startMs - b.startMs);
  const joined = joinNeighbours(drafts, 1.5 * samplingMsOf(zone));
  for (const draft of joined) draft.isStanding = draft.endMs >= lastMs - 1.5 * samplingMsOf(zone);
  return joined;
}

/** A number below both frost and the usual readings by this much, marked bad, is the low end of a scale (own choice). */
const BELOW_USUAL_DEG_C = 40;

/** A bad quality says only that the value is wrong; the value beside it may still say which end of the scale it is. */
function kindOf({ facts }: Episode, usualLowDegC: number): Open['kind'] | null {
  const state = facts['stateCode']!;
  if (state === readingState.belowScale) return 'short';
  const isLowEnd = facts['sameShare'] === 1 && facts['valueDegC']! < Math.min(0, usualLowDegC) - BELOW_USUAL_DEG_C;
  if (state === readingState.badQuality && isLowEnd) return 'short';
  return openStates.has(state) ? 'open' : null;
}

/**
 * A shorted thermocouple reads the temperature of the short, so full scale low is an open one on a card whose burn-out
 * goes down (common practice).
 */
function kindOn(zone: Zone, kind: Open['kind']): Open['kind'] {
  return zone.sensor?.startsWith('tc-') ? 'open' : kind;
}

function emptyDraft(startMs: number, endMs: number, kind: Open['kind']): Draft {
  return {
    startMs,
    endMs,
    isStanding: false,
    kind,
    isInLog: false,
    isInAlarms: false,
    alarmCount: 0,
    sampleCount: 0,
    beforeDegC: NaN,
    afterDegC: NaN,
    runningShare: NaN,
    hot: NaN,
    othersAtOnceCount: 0,
  };
}

function draftOfRun(run: Episode, kind: Open['kind']): Draft {
  return {
    ...emptyDraft(run.startMs, run.endMs, kind),
    isInLog: true,
    sampleCount: run.facts['sampleCount']!,
    beforeDegC: run.facts['beforeDegC'] ?? NaN,
    afterDegC: run.facts['afterDegC'] ?? NaN,
    runningShare: NaN,
  };
}

/** Runs of different words or codes right after each other are one open. */
function joinNeighbours(drafts: readonly Draft[], withinMs: number): Draft[] {
  const joined: Draft[] = [];
  for (const draft of drafts) {
    const last = joined.at(-1);
    if (!last || draft.startMs - last.endMs > withinMs || Number.isFinite(draft.beforeDegC)) {
      joined.push(draft);
      continue;
    }
    last.endMs = Math.max(last.endMs, draft.endMs);
    last.sampleCount += draft.sampleCount;
    last.afterDegC = draft.afterDegC;
  }
  return joined;
}

function lastSampleMs({ digest }: Evidence, zone: Zone): number {
  const held = digest.zones[zone.index]!;
  for (let i = digest.length - 1; i >= 0; i--) {
    // The last place may end before the period does, so its start is what is certain.
    if (held.readingCount[i]! > 0) return Infinity;
    if (held.badCount[i]! > 0) return digest.startMs + i * digest.periodMs;
  }
  return Infinity;
}

/**
 * Adds the alarms: one that meets a log open is the same open, one that meets none is an open of its own. Those that were
 * over before the log, or came after it, are none of its opens.
 */
function withAlarms(zone: Zone, opens: Draft[], { alarms, digest }: Evidence): Draft[] {
  const slackMs = samplingMsOf(zone) + ALARM_SLACK_MS;
  const fromMs = digest.startMs - slackMs;
  const toMs = digest.startMs + digest.length * digest.periodMs + slackMs;
  const own = alarms.about((a) => a.zone === zone.index && (a.kind === 'sensor-open' || a.kind === 'sensor-fault'));
  const extra: Draft[] = [];
  const meetingLogged = meetingOpen(opens, slackMs);
  const meetingExtra = meetingOpen(extra, 0);
  for (const alarm of own) {
    if (alarm.startMs > toMs || alarm.endMs < fromMs) continue;
    const met = meetingLogged(alarm) ?? meetingExtra(alarm);
    if (met) {
      met.isInAlarms = true;
      met.alarmCount++;
    } else extra.push(draftOfAlarm(alarm));
  }
  return [...opens, ...extra].sort((a, b) => a.startMs - b.startMs);
}

/**
 * Finds the first open that meets an alarm. Alarms must come by start, so opens that were over before one of them need
 * no look for the next; `opens` may grow by later ones meanwhile.
 */
function meetingOpen(opens: readonly Draft[], slackMs: number): (alarm: AlarmSpan) => Draft | undefined {
  let first = 0;
  return ({ startMs, endMs }) => {
    while (first < opens.length && opens[first]!.endMs < startMs - slackMs) first++;
    const untilMs = Math.max(startMs, Number.isNaN(endMs) ? startMs : endMs) + slackMs;
    for (let i = first; i < opens.length && opens[i]!.startMs <= untilMs; i++) {
      if (opens[i]!.endMs >= startMs - slackMs) return opens[i];
    }
    return undefined;
  };
}

function draftOfAlarm(alarm: AlarmSpan): Draft {
  const endMs = alarm.endMs > alarm.startMs ? alarm.endMs : alarm.startMs;
  return { ...emptyDraft(alarm.startMs, endMs, 'open'), isInAlarms: true, alarmCount: 1 };
}

function othersAtOnce(starts: readonly Float64Array[], own: number, atMs: number, withinMs: number): number {
  return starts.filter((times, z) => z !== own && hasNear(times, atMs, withinMs)).length;
}

/** Whether an ascending list holds a time within reach. Cost log n. */
export function hasNear(timesMs: ArrayLike<number>, atMs: number, withinMs: number): boolean {
  return hasBetween(timesMs, atMs - withinMs, atMs + withinMs);
}

/** Whether one of the times, ascending, lies between two others, both included. */
export function hasBetween(timesMs: ArrayLike<number>, fromMs: number, toMs: number): boolean {
  const place = firstPlaceFrom(timesMs, fromMs);
  return place < timesMs.length && timesMs[place]! <= toMs;
}
