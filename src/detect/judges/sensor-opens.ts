import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS, HOUR_MS } from '../../model/time-units.js';
import { median } from '../../maths/quantile.js';
import { conditionsOf, exposureBetween, exposuresOf, stood } from '../shared/readings/exposure.js';
import { judgeZones, symptomOf, windowOf } from '../shared/basics/judge-zones.js';
import { samplingMsOf } from '../shared/basics/sampling.js';
import { cooledRatioOf } from '../shared/cold/open-cooling.js';
import { burstStarts, openMinutes, opensOf, type Open } from '../shared/opens/opens.js';
import { ownOpensOf } from '../shared/opens/own-opens.js';
import { highest } from '../../maths/extremes.js';

export interface SensorOpensSettings {
  /** A fault from this length on stands; shorter ones come and go (own choice, as for repairs). */
  readonly longMinutes: number;
  /** An open up to this length is brief: a contact, not a broken element (own choice). */
  readonly briefMinutes: number;
}

/**
 * Opens and shorts of every zone, from log and alarms together. Those that other zones share in the same moment are
 * counted apart: they are the card's, the station's or the recorder's, and card-events judges them.
 */
export const sensorOpens: Judge<SensorOpensSettings> = {
  meta: {
    id: 'sensor-opens',
    sees: 'times in which the input had no sensor to read, counted once from log and alarms',
    needs: ['reading'],
    source: 'Common practice: an open RTD reads full scale or alarms, a short reads below scale.',
    defaults: { longMinutes: 20, briefMinutes: 2 },
  },
  judge(evidence, settings) {
    const allOpens = opensOf(evidence);
    const exposures = exposuresOf(evidence);
    const { endMs } = windowOf(evidence);
    return judgeZones(evidence, 'sensor-opens', (zone) => {
      const opens = allOpens[zone.index]!;
      const own = ownOpensOf(evidence)[zone.index]!;
      if (opens.length === 0) return [];
      const { loggedHours } = exposures[zone.index]!;
      // What the whole machine shares, a restart mostly, is not when this zone's own fault began.
      const [first, last] = own.length > 0 ? [own[0]!, own.at(-1)!] : [opens[0]!, opens.at(-1)!];
      return [
        symptomOf('sensor-opens', first.startMs, last.endMs, own.length, {
          ...countFacts(opens, own, loggedHours, endMs, samplingMsOf(zone) / MINUTE_MS, settings),
          ...beforeLong(evidence, zone, own, settings.longMinutes),
          cooledRatio: cooledRatioOf(evidence, zone, own),
        }),
      ];
    });
  },
};

function countFacts(
  opens: readonly Open[],
  own: readonly Open[],
  loggedHours: number,
  windowEndMs: number,
  samplingMinutes: number,
  { longMinutes, briefMinutes }: SensorOpensSettings,
): Record<string, number> {
  // An open of one sample lasted half a sampling time, as far as the log tells; an alarm knows its own length.
  const minutes = own.map((open) =>
    open.isInLog ? Math.max(openMinutes(open), samplingMinutes / 2) : openMinutes(open),
  );
  const standing = own.find((open) => open.isStanding);
  const isOpen = (open: Open) => open.kind === 'open';
  return {
    openCount: own.filter(isOpen).length,
    shortCount: own.filter((open) => !isOpen(open)).length,
    sharedCount: opens.length - own.length,
    inLogCount: own.filter((open) => open.isInLog).length,
    alarmOnlyCount: own.filter((open) => !open.isInLog).length,
    alarmedShare: own.filter((open) => open.isInAlarms).length / own.length,
    burstCount: burstStarts(own).length,
    opensPerDay: own.length / Math.max(1 / 24, loggedHours / 24),
    totalOpenMinutes: minutes.reduce((sum, m) => sum + m, 0),
    medianOpenMinutes: median(minutes),
    longestOpenMinutes: minutes.length > 0 ? highest(minutes) : NaN,
    briefShare: minutes.filter((m) => m <= briefMinutes).length / minutes.length,
    longCount: minutes.filter((m) => m >= longMinutes).length,
    standingMinutes: standing ? (windowEndMs - standing.startMs) / MINUTE_MS : 0,
  };
}

/**
 * How the long fault came: out of nothing, or after hours and days of short opens; and what the machine did in that
 * time, for a weekend of rest wears no cable.
 */
function beforeLong(evidence: Evidence, zone: Zone, own: readonly Open[], longMinutes: number): Record<string, number> {
  const long = own.findIndex((open) => openMinutes(open) >= longMinutes || open.isStanding);
  const open = own[long];
  if (!open) return {};
  const before = own.slice(0, long);
  const fromMs = before[0]?.startMs ?? open.startMs;
  const { runningHours, hotHours } = exposureBetween(evidence, zone.index, fromMs, open.startMs);
  const isRunningKnown = conditionsOf(evidence)[zone.index]!.runningFrom !== 'unknown';
  return {
    opensBeforeLongCount: before.length,
    warningHours: (open.startMs - fromMs) / HOUR_MS,
    warningRunningHours: isRunningKnown ? runningHours : NaN,
    warningHotHours: hotHours,
    warningStandingCount: isRunningKnown ? before.filter(({ runningShare }) => stood(runningShare)).length : NaN,
    warningColdCount: before.filter(({ hot }) => hot === 0).length,
    longRunningShare: open.runningShare,
    longHotShare: open.hot,
    beforeLongDegC: open.beforeDegC,
  };
}
