import type { HistoryFindings, LevelChange } from '../model/history-findings.js';
import { cusumRunLength } from '../maths/cusum-run-length.js';
import { cusum, likelyStart } from '../maths/cusum.js';
import { median } from '../maths/quantile.js';
import { sequentialRankScores } from '../maths/sequential-ranks.js';

type Week = HistoryFindings['weeks'][number];

/** Tuned to a shift of one standard deviation, k = ½ and h = 4 (Montgomery, Statistical Quality Control, ch. 9). */
const SLACK = 0.5;
const LIMIT = 4;

/** A week of which less was logged says little about a week (own choice). */
const LEAST_DAYS = 3.5;

const measures: readonly (readonly [LevelChange['measure'], (week: Week) => number])[] = [
  ['alarms', ({ alarms }) => alarms],
  ['zoneFaultMinutes', ({ zoneFaultMinutes }) => zoneFaultMinutes],
];

/**
 * Measures whose level has changed for good, as far as the weeks tell: one bad week is none. A chart of cumulative sums
 * over the ranks of the weeks, so neither level nor spread need be known beforehand and a single huge week counts as
 * one high rank. Told while the sum is beyond its limit at the last week.
 *
 * @param weeks In time order; those logged for less than half count for nothing.
 */
export function levelChangesOf(weeks: readonly Week[]): readonly LevelChange[] {
  const whole = weeks.filter(({ coveredDays = 7 }) => coveredDays >= LEAST_DAYS);
  return measures.flatMap(([measure, countOf]) => {
    const perWeek = whole.map((week) => (7 * countOf(week)) / (week.coveredDays ?? 7));
    const { high, low } = cusum(sequentialRankScores(perWeek), { target: 0, slack: SLACK });
    const last = perWeek.length - 1;
    const isHigher = high[last]! > LIMIT;
    if (!isHigher && !(low[last]! > LIMIT)) return [];
    const from = likelyStart(isHigher ? high : low, last);
    return {
      measure,
      isHigher,
      sinceWeek: whole[from]!.week,
      perWeekBefore: median(perWeek.slice(0, from)),
      perWeekSince: median(perWeek.slice(from)),
      byChanceInWeeks: cusumRunLength(SLACK, LIMIT, 0),
    };
  });
}
