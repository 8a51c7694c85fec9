import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS } from '../../model/time-units.js';
import { judgeZones, symptomOf } from '../shared/basics/judge-zones.js';
import { isSharedBy, missingRowsOf, type Hole } from '../shared/readings/missing-rows.js';
import { stuckStretchesOf, type StuckStretch } from '../shared/readings/stuck-stretches.js';
import { highest, lowest } from '../../maths/extremes.js';

export interface FrozenRecordSettings {
  /** Shorter holes are told by nobody as a fault (own choice). */
  readonly smallestGapMinutes: number;
}

/**
 * The recording, not the zone, stood still: reading and output of one tag frozen, all zones frozen together, or rows
 * missing; told apart by what else moved. Missing rows of one zone alone are counted apart from those of all zones.
 */
export const frozenRecord: Judge<FrozenRecordSettings> = {
  meta: {
    id: 'frozen-record',
    sees: 'a tag or a whole file that froze, or rows that are missing',
    needs: ['reading'],
    source: 'Common practice: a stale tag holds reading, set point and output alike.',
    defaults: { smallestGapMinutes: 10 },
  },
  judge(evidence, settings) {
    const stretches = stuckStretchesOf(evidence);
    return judgeZones(evidence, 'frozen-record', (zone) => {
      const tags = stretches[zone.index]!.filter((s) => s.verdict === 'tag');
      const files = stretches[zone.index]!.filter((s) => s.verdict === 'file');
      const gaps = missingRowsOf(evidence)[zone.index]!.filter((gap) => gapMinutes(gap) >= settings.smallestGapMinutes);
      const alone = gaps.filter((gap) => sharedShare(evidence, zone, gap) < 0.5);
      const all = [...tags, ...files, ...gaps];
      if (all.length === 0) {
        if (evidence.zones.length > 1 || zone.has.output || zone.has.setpoint) return [];
        return `Zone ${zone.name}: its reading is all that is logged, so nothing shows whether a still one is the zone, its input or the record; no rows are missing.`;
      }
      const startMs = lowest(all.map((s) => s.startMs));
      const endMs = highest(all.map((s) => s.endMs));
      return [
        symptomOf('frozen-record', startMs, endMs, all.length, {
          tagFrozenCount: tags.length,
          tagFrozenMinutes: totalMinutes(tags),
          fileFrozenCount: files.length,
          fileFrozenMinutes: totalMinutes(files),
          gapCount: gaps.length,
          gapMinutes: gaps.reduce((sum, gap) => sum + gapMinutes(gap), 0),
          longestGapMinutes: gaps.length > 0 ? highest(gaps.map(gapMinutes)) : 0,
          ownGapCount: alone.length,
          ownGapMinutes: alone.reduce((sum, gap) => sum + gapMinutes(gap), 0),
        }),
      ];
    });
  },
};

function gapMinutes({ startMs, endMs }: Hole): number {
  return (endMs - startMs) / MINUTE_MS;
}

function totalMinutes(stretches: readonly StuckStretch[]): number {
  return stretches.reduce((sum, s) => sum + s.minutes, 0);
}

/** Share of the other zones that lack the same rows. */
function sharedShare(evidence: Evidence, zone: Zone, gap: Hole): number {
  const others = evidence.zones.filter((z) => z.index !== zone.index);
  if (others.length === 0) return 1;
  const sharing = others.filter((other) => isSharedBy(evidence, other, zone, gap));
  return sharing.length / others.length;
}
