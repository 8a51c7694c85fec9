import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS, HOUR_MS, DAY_MS } from '../../model/time-units.js';
import { compareRates } from '../../maths/exact-rates.js';
import { judgeZones, symptomOf, windowOf } from '../shared/basics/judge-zones.js';
import { repairLivesOf, opensIn, repairsOf, type Life, type Repair } from '../shared/opens/repair-lives.js';
import { conditionsOf, exposureBetween } from '../shared/readings/exposure.js';
import { burstStarts, opensOf } from '../shared/opens/opens.js';
import { ownOpensOf } from '../shared/opens/own-opens.js';
import { coldOffsetDegC } from '../shared/moves/cold-offset.js';

export interface RepairsSettings {
  /** Days before and after the repair in which the cold offset is taken (own choice). */
  readonly offsetDays: number;
}

/** One symptom per repair: what the zone did before and what it does since. A new small offset speaks for a new sensor. */
export const repairs: Judge<RepairsSettings> = {
  meta: {
    id: 'repairs',
    sees: 'the end of a long fault during a stop, or a line in the maintenance list: a new life begins',
    needs: ['reading'],
    source:
      'Exact comparison of two Poisson rates (Przyborowski & Wilenski 1940). Common practice: two good sensors of one class differ by tenths of a degree, so a new one shows a new offset.',
    defaults: { offsetDays: 4 },
  },
  judge(evidence, { offsetDays }) {
    const { startMs, endMs } = windowOf(evidence);
    return judgeZones(evidence, 'repairs', (zone) => {
      const opens = opensOf(evidence)[zone.index]!;
      const lives = repairLivesOf(evidence)[zone.index]!;
      return repairsOf(evidence)[zone.index]!.map((repair: Repair) => {
        const at = lives.findIndex((life) => life.endedBy === repair);
        const before = lives[at];
        const after = lives[at + 1];
        const offsetBefore = coldOffsetDegC(
          evidence,
          zone,
          repair.timeMs - offsetDays * DAY_MS,
          repair.timeMs - repair.faultMinutes * MINUTE_MS,
        );
        const offsetAfter = coldOffsetDegC(evidence, zone, repair.timeMs, repair.timeMs + offsetDays * DAY_MS);
        return symptomOf('repairs', repair.timeMs - repair.faultMinutes * MINUTE_MS, repair.timeMs, 1, {
          faultMinutes: repair.faultMinutes,
          listedCount: repair.from === 'maintenance list' ? 1 : 0,
          replacementCount: repair.isReplacement ? 1 : 0,
          wiringRepairCount: repair.cause === 'wiring' && !repair.isReplacement ? 1 : 0,
          stoppedShare: repair.stopped,
          opensBeforeCount: before
            ? opensIn(opens, before).length
            : opens.filter((o) => o.startMs < repair.timeMs).length,
          opensAfterCount: after
            ? opensIn(opens, after).length
            : opens.filter((o) => o.startMs >= repair.timeMs).length,
          beforeHours: Math.max(0, (repair.timeMs - (before?.startMs ?? startMs)) / HOUR_MS),
          afterHours: Math.max(0, ((after?.endMs ?? endMs) - repair.timeMs) / HOUR_MS),
          ...ratesAround(evidence, zone, before, after),
          offsetBeforeDegC: offsetBefore,
          offsetAfterDegC: offsetAfter,
          offsetChangeDegC: offsetAfter - offsetBefore,
        });
      });
    });
  },
};

/**
 * Bursts of opens after the repair against those before it, per hour in which the machine ran (per hour logged, where that
 * is not known). The first open of the life before only marks where its count begins.
 */
function ratesAround(evidence: Evidence, zone: Zone, before: Life | undefined, after: Life | undefined) {
  if (!before || !after) return {};
  const own = ownOpensOf(evidence)[zone.index]!;
  const [first, ...rest] = burstStarts(opensIn(own, before));
  if (!first) return {};
  const isRunningKnown = conditionsOf(evidence)[zone.index]!.runningFrom !== 'unknown';
  const hours = (fromMs: number, toMs: number) => {
    const { runningHours, loggedHours } = exposureBetween(evidence, zone.index, fromMs, toMs);
    return isRunningKnown ? runningHours : loggedHours;
  };
  const laterCount = burstStarts(opensIn(own, after)).length;
  const { ratio, pLower } = compareRates(
    { events: laterCount, exposure: hours(after.startMs, after.endMs) },
    { events: rest.length, exposure: hours(first.startMs, before.endMs) },
  );
  return { burstsBeforeCount: rest.length, burstsAfterCount: laterCount, afterRatio: ratio, fewerAfterPValue: pLower };
}
