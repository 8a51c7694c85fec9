import type { Judge } from '../../model/detector.js';
import { median } from '../../maths/quantile.js';
import { judgeZones, symptomOf } from '../shared/judge-zones.js';
import { learnedCodesOf } from '../shared/learned-codes.js';
import { momentMsOf, hasNear } from '../shared/opens.js';

export type CodeValueSettings = Record<string, never>;

/**
 * Exact values that stand for a fault, learned from the log itself: reached and left by jumps that no heat makes,
 * again and again to the last digit. Codes the reader knew already (full scale, words) are not told again here.
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
    return judgeZones(evidence, 'code-value', (zone) =>
      codes[zone.index]!.map((code) => {
        const { spans } = code;
        const alarmsMs = evidence.alarms.filter((a) => a.zone === zone.index).map((a) => a.startMs);
        const alarmed = spans.filter((s) => hasNear(alarmsMs, s.startMs, 10 * momentMsOf(zone)));
        return symptomOf('code-value', spans[0]!.startMs, spans.at(-1)!.endMs, spans.length, {
          valueDegC: code.valueDegC,
          spanCount: spans.length,
          sampleCount: code.sampleCount,
          longestMinutes: Math.max(...spans.map((s) => (s.endMs - s.startMs) / 60_000)),
          medianJumpDegC: median(spans.map((s) => Math.abs(code.valueDegC - s.beforeDegC))),
          otherZonesCount: code.otherZonesCount,
          alarmedShare: evidence.hasAlarmLog ? alarmed.length / spans.length : NaN,
          isAboveCount: code.side === 'above' ? 1 : 0,
          isBelowCount: code.side === 'below' ? 1 : 0,
        });
      }),
    );
  },
};
