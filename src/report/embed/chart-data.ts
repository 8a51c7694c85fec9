import type { Findings, Trace, ZoneFinding } from '../../model/findings.js';
import { isSameZone } from '../text/names.js';
import { phraseText } from '../text/phrase.js';
import type { Clock } from '../text/clock.js';
import { numberedFaults } from '../sentences/numbered.js';
import { lossKindOf, lossNames } from '../sentences/losses.js';
import { kindText } from '../sentences/kinds.js';
import type { LossKind } from '../text/words.js';
import { repairText } from '../sentences/repair.js';
import { sentence } from '../sentences/symptom.js';
import { packMarks, packPoints, type PackedMarks, type PackedPoints } from './pack-lists.js';
import { packColumn, type PackedColumn } from './pack.js';

/** All times here are the plant's wall clock written as if it were UTC, so the page needs no table of time zones. */
export interface PackedTrace {
  readonly timeMs: PackedColumn;
  readonly length: number;
  readonly lowDegC: PackedColumn | null;
  readonly highDegC: PackedColumn | null;
  readonly setpointDegC: PackedColumn | null;
  readonly outputPercent: PackedColumn | null;
  readonly runningShare: PackedColumn | null;
  readonly badCount: PackedColumn | null;
}

export interface NumberedMark {
  readonly number: number;
  readonly fromMs: number;
  readonly toMs: number;
  readonly says: string;
  /** The same words with temperatures in °F. */
  readonly saysInF: string;
}

/** What the charts of one zone's page are drawn from. */
export interface ZoneChartData {
  readonly zone: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly trace: PackedTrace | null;
  readonly faults: readonly NumberedMark[];
  /** Single faults, not numbered. */
  readonly singles: PackedMarks;
  readonly alarms: PackedMarks;
  readonly repairs: PackedMarks;
  readonly soaks: PackedPoints<'offsetDegC' | 'plusMinusDegC'>;
  /** Half width of the sensor's own tolerance at room temperature; null = not known. */
  readonly toleranceDegC: number | null;
  readonly duty: PackedPoints<'residualDegC' | 'residualPercent'>;
  readonly opens: readonly { readonly day: string; readonly running: number; readonly stopped: number }[];
}

/** What the charts of lost time and alarms are drawn from. */
export interface PlantChartData {
  readonly pareto: readonly { readonly name: string; readonly kind: LossKind; readonly minutes: number }[];
  readonly alarmsByDay: readonly { readonly day: string; readonly count: number }[];
  readonly weeks: readonly { readonly week: string; readonly kind: LossKind; readonly minutes: number }[];
}

export function zoneChartData(zone: ZoneFinding, findings: Findings, clock: Clock): ZoneChartData {
  const wall = (time: string): number => clock.wallMs(Date.parse(time));
  return {
    zone: zone.zone,
    startMs: wall(findings.window.start),
    endMs: wall(findings.window.end),
    trace: zone.trace ? packTrace(zone.trace, clock) : null,
    faults: numberedFaults(zone).map(({ number, symptom, text }) => ({
      number,
      fromMs: wall(symptom.start),
      toMs: wall(symptom.end),
      says: phraseText(sentence(text.says)),
      saysInF: phraseText(sentence(text.says), 'degF'),
    })),
    singles: packMarks(
      (zone.faultMarks ?? []).map(({ start, end, kind }) => ({
        fromMs: wall(start),
        toMs: wall(end),
        says: kindText(kind),
      })),
    ),
    alarms: packMarks(
      (zone.alarmMarks ?? []).map(({ start, end, message }) => ({
        fromMs: wall(start),
        toMs: wall(end ?? findings.window.end),
        says: message,
      })),
    ),
    repairs: packMarks(
      zone.repairs.map(({ time, done, found }) => ({
        fromMs: wall(time),
        toMs: wall(time),
        says: repairText(done, found),
      })),
    ),
    soaks: packPoints(soakPoints(zone, findings, wall), ['offsetDegC', 'plusMinusDegC']),
    toleranceDegC: toleranceAtRoom(zone),
    duty: packPoints(
      zone.duty.map(({ time, ...residuals }) => ({ timeMs: wall(time), ...residuals })),
      ['residualDegC', 'residualPercent'],
    ),
    opens: zone.opensByDay,
  };
}

/** Soaks of this log and, before them, the ones kept from the weeks before. */
function soakPoints(zone: ZoneFinding, findings: Findings, wall: (time: string) => number) {
  const kept = findings.history?.offsets.find((entry) => isSameZone(entry, zone))?.points ?? [];
  const first = zone.soaks[0]?.time ?? findings.window.end;
  const earlier = kept
    .filter(({ time }) => Date.parse(time) < Date.parse(first))
    .map(({ time, offsetDegC }) => ({ timeMs: wall(time), offsetDegC, plusMinusDegC: 0 }));
  const now = zone.soaks.map(({ time, offsetDegC, uncertaintyDegC }) => ({
    timeMs: wall(time),
    offsetDegC,
    plusMinusDegC: uncertaintyDegC,
  }));
  return [...earlier, ...now];
}

/** The tolerance of the sensor's class at room temperature stands in the first measurement of its list. */
export function toleranceAtRoom(zone: ZoneFinding): number | null {
  for (const { expected } of zone.checks) {
    for (const value of expected) {
      if (value.condition === 'room' && 'toleranceDegC' in value && value.toleranceDegC !== null)
        return value.toleranceDegC;
    }
  }
  return null;
}

/** Two runs over one week differ by less than this. */
const LEAST_MORE_MINUTES = 1;

export function plantChartData({ downtime, alarms, history }: Findings): PlantChartData {
  const weeks = downtime.byWeek.flatMap((row) => {
    const kind = lossKindOf(row);
    return kind ? [{ week: row.name, kind, minutes: row.minutes }] : [];
  });
  // A log that begins within a week holds less of it than the weeks kept do.
  const minutesHere = new Map<string, number>();
  for (const { week, minutes } of weeks) minutesHere.set(week, (minutesHere.get(week) ?? 0) + minutes);
  const known = (history?.weeks ?? []).filter(
    ({ week, zoneFaultMinutes, otherMinutes, unknownMinutes = 0 }) =>
      zoneFaultMinutes + otherMinutes + unknownMinutes > (minutesHere.get(week) ?? -1) + LEAST_MORE_MINUTES,
  );
  const isKnown = new Set(known.map(({ week }) => week));
  const earlier = known.flatMap(({ week, zoneFaultMinutes, otherMinutes, unknownMinutes = 0 }) => [
    { week, kind: 'zone-fault' as const, minutes: zoneFaultMinutes },
    { week, kind: 'other-cause' as const, minutes: otherMinutes },
    { week, kind: 'unknown' as const, minutes: unknownMinutes },
  ]);
  return {
    pareto: lossNames(downtime.pareto).map(({ name, row }) => ({
      name,
      kind: lossKindOf(row) ?? 'unknown',
      minutes: row.minutes,
    })),
    alarmsByDay: alarms.byDay,
    weeks: [...earlier, ...weeks.filter(({ week }) => !isKnown.has(week))],
  };
}

function packTrace(trace: Trace, clock: Clock): PackedTrace {
  const seconds = trace.timeMs.map((timeMs) => clock.wallMs(timeMs));
  return {
    timeMs: packColumn(seconds, 1 / 1000) ?? { perUnit: 1 / 1000, steps: [] },
    length: trace.timeMs.length,
    lowDegC: packColumn(trace.minDegC),
    highDegC: packColumn(trace.maxDegC),
    setpointDegC: packColumn(trace.setpointDegC),
    outputPercent: packColumn(trace.outputPercent),
    runningShare: packColumn(trace.runningShare),
    badCount: packColumn(trace.badCount ?? [], 1),
  };
}
