import type { Evidence, Judge, Symptom } from '../../model/detector.js';
import { readingState } from '../../model/sample-block.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS } from '../../model/time-units.js';
import { median } from '../../maths/quantile.js';
import { judgeZones, symptomOf } from '../shared/basics/judge-zones.js';
import { learnedCodesOf, type LearnedCode } from '../shared/readings/learned-codes.js';
import { momentMsOf, hasNear } from '../shared/opens/opens.js';
import { highest } from '../../maths/extremes.js';

export type CodeValueSettings = Record<string, never>;

/**
 * Exact values that stand for a fault, learned from the log itself: reached and left by jumps that no heat makes,
 * again and again to the last digit; and the number that the recording writes in all columns when it has no value.
 * Codes the reader knew already (full scale, words) are not told again here.
 */
export const codeValue: Judge<CodeValueSettings> = {
  meta: {
    id: 'code-value',
    sees: 'an exact value, reached and left by impossible jumps again and again, that is a code and no temperature',
    needs: ['reading'],
    source: 'Common practice: a code repeats exactly, is reached at an impossible rate and shows on other zones too.',
    defaults: {},
  },
  judge(evidence) {
    const codes = learnedCodesOf(evidence);
    return judgeZones(evidence, 'code-value', (zone) => [
      ...codes[zone.index]!.map((code) => describeCode(evidence, zone, code)),
      ...describeNoValue(evidence, zone),
    ]);
  },
};

function describeCode(evidence: Evidence, zone: Zone, code: LearnedCode): Symptom {
  const { spans } = code;
  const alarmsMs = evidence.alarms.about((a) => a.zone === zone.index).columns.startMs;
  const alarmed = spans.filter((s) => hasNear(alarmsMs, s.startMs, 10 * momentMsOf(zone)));
  return symptomOf('code-value', spans[0]!.startMs, spans.at(-1)!.endMs, spans.length, {
    valueDegC: code.valueDegC,
    spanCount: spans.length,
    sampleCount: code.sampleCount,
    longestMinutes: highest(spans.map(minutesOf)),
    medianJumpDegC: median(
      spans.map((s) => Math.abs(code.valueDegC - s.beforeDegC)).filter((jump) => !Number.isNaN(jump)),
    ),
    otherZonesCount: code.otherZonesCount,
    alarmedShare: evidence.hasAlarmLog ? alarmed.length / spans.length : NaN,
    isAboveCount: code.side === 'above' ? 1 : 0,
    isBelowCount: code.side === 'below' ? 1 : 0,
  });
}

/** Rows in which the recording had no value for anything: told, but no sign against the zone. */
function describeNoValue({ episodes }: Evidence, zone: Zone): Symptom[] {
  const runs = (episodes.get('open-runs')?.[zone.index] ?? []).filter(
    ({ facts }) => facts['stateCode'] === readingState.noValue,
  );
  if (runs.length === 0) return [];
  return [
    symptomOf('code-value', runs[0]!.startMs, runs.at(-1)!.endMs, runs.length, {
      valueDegC: runs[0]!.facts['valueDegC'] ?? NaN,
      spanCount: runs.length,
      sampleCount: runs.reduce((sum, run) => sum + run.facts['sampleCount']!, 0),
      longestMinutes: highest(runs.map(minutesOf)),
      isInAllColumnsCount: 1,
    }),
  ];
}

function minutesOf({ startMs, endMs }: { readonly startMs: number; readonly endMs: number }): number {
  return (endMs - startMs) / MINUTE_MS;
}
