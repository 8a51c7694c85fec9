import type { AlarmFindings } from '../model/alarm-findings.js';
import type { DowntimeFindings } from '../model/downtime-findings.js';
import type { Findings } from '../model/findings.js';
import type { Gathered } from '../model/gathered.js';
import type { ConfirmedFinding } from '../model/record.js';
import { causeTable } from '../weigh/cause-table.js';
import { actionScore } from '../weigh/rank.js';
import { terms } from '../weigh/terms/index.js';
import { plantRecordShares, plantStrengths, type Verdict } from '../weigh/weigh-plant.js';
import { zoneFinding } from './zone-finding.js';
import type { ProblemNote } from '../model/problem.js';
import { DAY_MS } from '../model/time-units.js';

export interface FindingsInput {
  readonly gathered: Gathered;
  readonly verdicts: readonly Verdict[];
  /** What the plant's record holds; absent where none is kept. */
  readonly confirmed?: readonly ConfirmedFinding[] | undefined;
  readonly alarms: AlarmFindings;
  readonly downtime: DowntimeFindings;
  /** By zone index. */
  readonly minutesByZone: readonly number[];
  /** Problems met after reading. */
  readonly problems: readonly ProblemNote[];
}

/** Puts the parts together in the words of the contract, zones in the order in which a fitter should go. */
export function assembleFindings(input: FindingsInput): Findings {
  const { gathered, verdicts, minutesByZone } = input;
  const { evidence } = gathered;
  const { startMs, periodMs, length } = evidence.digest;
  const windowDays = (length * periodMs) / DAY_MS;
  const endMs = startMs + length * periodMs;
  const scored = verdicts.map((verdict) => {
    const finding = zoneFinding(evidence, verdict, minutesByZone[verdict.zone.index] ?? 0);
    const score = actionScore({
      faultShare: 1 - verdict.probabilities.none,
      downtimeMinutes: finding.downtimeMinutes,
      windowDays,
      isStanding: finding.status !== 'healthy' && finding.status !== 'insufficient-data' && finding.fixed === null,
      isWorse: finding.trend === 'worse',
      isHeatUnchecked: Boolean(finding.uncheckedHeat),
      daysToTolerance: finding.leavesTolerance === null ? NaN : (Date.parse(finding.leavesTolerance) - endMs) / DAY_MS,
    });
    return { finding, score };
  });
  return {
    schemaVersion: 1,
    window: { start: new Date(startMs).toISOString(), end: new Date(endMs).toISOString() },
    ...(gathered.timezone === null ? {} : { timezone: gathered.timezone }),
    sources: gathered.sources,
    zones: scored.sort((a, b) => b.score - a.score).map(({ finding }, i) => ({ ...finding, rank: i + 1 })),
    alarms: input.alarms,
    downtime: input.downtime,
    problems: [...gathered.problems, ...input.problems],
    assumptions: gathered.assumptions,
    history: null,
    trackRecord: null,
    ...(input.confirmed ? { recordShares: plantRecordShares(evidence.plant, input.confirmed) } : {}),
    causes: causeTable(plantStrengths(evidence.plant, input.confirmed), terms),
  };
}
