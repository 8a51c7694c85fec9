import { alarmFindings } from './alarms/alarm-findings.js';
import { faultIntervals } from './assemble/fault-intervals.js';
import { assembleFindings } from './assemble/findings.js';
import { judges } from './detect/index.js';
import { runJudges } from './detect/run-judges.js';
import { attributeDowntime } from './downtime/attribute-downtime.js';
import { gather, type GatherOptions } from './gather.js';
import type { Findings } from './model/findings.js';
import type { Gathered } from './model/gathered.js';
import type { ConfirmedFinding } from './model/record.js';
import { weighPlant } from './weigh/weigh-plant.js';

export interface AnalyseOptions extends GatherOptions {
  /** Folder that keeps every run; the findings then say what changed since the last. */
  readonly historyFolder?: string;
}

/**
 * The whole job, top to bottom: read → digest and watch → judge → weigh → count alarms and downtime → findings.
 *
 * @throws LogProblem when nothing readable is found or plant.yaml cannot be used.
 */
export async function analyse(paths: readonly string[], options: AnalyseOptions = {}): Promise<Findings> {
  const gathered = await gather(paths, options);
  if (options.historyFolder === undefined) return conclude(gathered);
  const { keepInHistory, readPast } = await import('./keep-history.js');
  const past = await readPast(gathered, options.historyFolder);
  return keepInHistory(conclude(gathered, past.confirmed), gathered, past);
}

/**
 * From what was gathered to the findings; pure.
 *
 * @param confirmed What the plant's record holds; absent where none is kept.
 */
export function conclude(gathered: Gathered, confirmed?: readonly ConfirmedFinding[]): Findings {
  const { evidence, clockShiftSeconds, clockShiftsByMachine } = gathered;
  const { zones, digest, plant } = evidence;
  const judged = runJudges(evidence, judges);
  const verdicts = weighPlant(zones, judged.outcomes, plant, confirmed);
  const faulty = verdicts.filter(({ status }) => status === 'faulty' || status === 'watch');
  const faults = faultIntervals(evidence);
  const downtime = attributeDowntime({
    zones,
    digest,
    alarms: evidence.alarms,
    stops: evidence.stops,
    faults,
    plant,
  });
  const alarms = alarmFindings({
    alarms: evidence.alarms,
    hasLog: evidence.hasAlarmLog || evidence.alarms.length > 0,
    zones,
    window: { start: digest.startMs, end: digest.startMs + digest.length * digest.periodMs },
    faultyZones: faulty.map(({ zone, span }) => ({ zone: zone.index, fromMs: span.onsetMs, toMs: span.fixedMs })),
    opensByZone: faults,
    plant,
    clockShiftSeconds,
    clockShiftsByMachine,
  });
  return assembleFindings({
    gathered,
    verdicts,
    confirmed,
    alarms,
    downtime: downtime.findings,
    minutesByZone: downtime.minutesByZone,
    problems: judged.problems,
  });
}
