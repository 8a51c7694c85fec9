import type { Judge } from '../../model/detector.js';
import { judgeZones, symptomOf, windowOf } from '../shared/basics/judge-zones.js';
import { learnedCodesOf } from '../shared/readings/learned-codes.js';
import { stuckStretchesOf } from '../shared/readings/stuck-stretches.js';

export type StuckReadingSettings = Record<string, never>;

/**
 * One reading does not move at all although its output, its set point or its neighbours do. A stretch in which the
 * output stands still as well is the recorder's (frozen-record); one at a learned code is told by code-value.
 */
export const stuckReading: Judge<StuckReadingSettings> = {
  meta: {
    id: 'stuck-reading',
    sees: 'one reading that does not move at all although its output or its neighbours do',
    needs: ['reading', 'output-or-peers'],
    source: 'Common practice; a live input shows at least its last digit moving.',
    defaults: {},
  },
  judge(evidence) {
    const stretches = stuckStretchesOf(evidence);
    const codes = learnedCodesOf(evidence);
    const { endMs } = windowOf(evidence);
    return judgeZones(evidence, 'stuck-reading', (zone) => {
      const codeValues = new Set(codes[zone.index]!.map((code) => code.valueDegC));
      const stuck = stretches[zone.index]!.filter((s) => s.verdict === 'channel' && !codeValues.has(s.valueDegC));
      if (stuck.length === 0) {
        if (evidence.zones.length > 1 || zone.has.output) return [];
        return `Zone ${zone.name}: neither an output nor another zone is logged, so nothing shows what should have moved.`;
      }
      const longest = stuck.reduce((best, s) => (s.minutes > best.minutes ? s : best));
      const last = stuck.at(-1)!;
      return [
        symptomOf('stuck-reading', stuck[0]!.startMs, last.endMs, stuck.length, {
          stuckCount: stuck.length,
          totalMinutes: stuck.reduce((sum, s) => sum + s.minutes, 0),
          longestMinutes: longest.minutes,
          valueDegC: longest.valueDegC,
          timesUsualRatio: longest.timesUsual,
          jumpedToCount: stuck.filter((s) => s.isJumpedTo).length,
          outputRangePercent: longest.own.outputRangePercent,
          outputMeanPercent: longest.own.outputMeanPercent,
          setpointRangeDegC: longest.own.setpointRangeDegC,
          peerRangeDegC: longest.peerRangeDegC,
          movedPeersShare: longest.movedPeersShare,
          standingMinutes: endMs - last.endMs <= 2 * evidence.digest.periodMs ? last.minutes : 0,
        }),
      ];
    });
  },
};
