import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { median } from '../../maths/quantile.js';
import { judgeZones, symptomOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { zoneToleranceDegC } from '../shared/basics/tolerance.js';
import { degreesText } from '../shared/duty/visible-change.js';
import { zoneChangesOf } from '../shared/duty/zone-changes.js';

export interface ColdSoakOffsetSettings {
  /** How many standard errors an offset must lie beyond what is allowed. */
  readonly limitSds: number;
  /** A change of the offset must reach this share of the tolerance; two sensors in tolerance differ by less. */
  readonly changeToleranceShare: number;
  /** What input card and leads add to a sensor in tolerance: 0.1 % of a span of 700 °C (common practice). */
  readonly inputErrorDegC: number;
  /** How many last soaks give the present offset. */
  readonly lastSoaks: number;
}

/** The zone's reading against its peers while all are cold: beyond tolerance now, or other than it was. */
export const coldSoakOffset: Judge<ColdSoakOffsetSettings> = {
  meta: {
    id: 'cold-soak-offset',
    sees: 'a zone that reads another room temperature than its peers when all of them are cold',
    needs: ['reading', 'soak', 'peers'],
    source:
      'Cross-calibration against peers at one temperature (Hashemian & Jiang 2009, abstract); tolerances IEC 60751.',
    defaults: { limitSds: 3, changeToleranceShare: 0.75, inputErrorDegC: 0.7, lastSoaks: 3 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'cold-soak-offset', (zone) => judgeZone(evidence, zone, settings));
  },
};

function judgeZone(evidence: Evidence, zone: Zone, settings: ColdSoakOffsetSettings): ZoneAnswer {
  const { soaks, soaksUnable } = zoneChangesOf(evidence)[zone.index]!;
  if (soaksUnable !== null) return soaksUnable;
  const last = soaks.slice(-settings.lastSoaks);
  const offsetDegC = median(last.map((p) => p.offsetDegC));
  const firstOffsetDegC = median(soaks.slice(0, settings.lastSoaks).map((p) => p.offsetDegC));
  const usualOffsetDegC = median(soaks.map((p) => p.offsetDegC));
  const uncertaintyDegC = median(last.map((p) => p.uncertaintyDegC));
  const toleranceDegC = zoneToleranceDegC(zone, last[0]!.roomDegC);
  const changeDegC = offsetDegC - firstOffsetDegC;
  const changeErrorDegC = Math.SQRT2 * uncertaintyDegC;
  const isBeyond =
    Math.abs(offsetDegC) >
    toleranceDegC +
      settings.inputErrorDegC +
      peerSpread(toleranceDegC, last[0]!.peerCount) +
      settings.limitSds * uncertaintyDegC;
  const isChanged =
    soaks.length > 2 * settings.lastSoaks &&
    Math.abs(changeDegC) > settings.changeToleranceShare * toleranceDegC + settings.limitSds * changeErrorDegC;
  if (!isBeyond && !isChanged) {
    const unsureDegC = settings.limitSds * uncertaintyDegC;
    if (!(unsureDegC > toleranceDegC)) return [];
    return `Zone ${zone.name}: its cold readings move too much among its peers to show an offset below ${degreesText(unsureDegC)} °C, and its tolerance there is ${degreesText(toleranceDegC)} °C.`;
  }
  const largest = soaks.reduce((most, p) => (Math.abs(p.offsetDegC) > Math.abs(most.offsetDegC) ? p : most));
  return [
    symptomOf('cold-soak-offset', last[0]!.startMs, last.at(-1)!.endMs, soaks.length, {
      offsetDegC,
      uncertaintyDegC,
      firstOffsetDegC,
      usualOffsetDegC,
      largestOffsetDegC: largest.offsetDegC,
      changeDegC,
      changeErrorDegC,
      changeZScoreRatio: Math.abs(changeDegC) / changeErrorDegC,
      toleranceDegC,
      toleranceRatio: Math.abs(offsetDegC) / toleranceDegC,
      soakCount: soaks.length,
      peerCount: last.at(-1)!.peerCount,
      roomDegC: last.at(-1)!.roomDegC,
    }),
  ];
}

/** The median of the peers is off itself: by the spread of sensors in tolerance (even spread) over their number. */
function peerSpread(toleranceDegC: number, peerCount: number): number {
  return (2 * toleranceDegC) / Math.sqrt(3 * Math.max(1, peerCount));
}
