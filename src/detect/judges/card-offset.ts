import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { coldEnoughOf, movingApartOf, movingTogetherOf } from '../shared/cold/moving-together.js';
import { judgeZones, symptomOf } from '../shared/basics/judge-zones.js';

/**
 * All zones of one input card reading high or low together, against the zones of the other cards; where nobody says
 * which zones share a card, neighbours of a machine that move as one.
 */
export const cardOffset: Judge<Record<never, never>> = {
  meta: {
    id: 'card-offset',
    sees: 'zones of one input card that shift together in the cold soaks while other zones do not',
    needs: ['reading', 'soak', 'peers'],
    source:
      'Two-sample t test with the zone as the unit (NIST/SEMATECH e-Handbook 7.3.1); common practice: zones of one card share its reference and its supply.',
    defaults: {},
  },
  judge(evidence) {
    return judgeZones(evidence, 'card-offset', (zone) => {
      const group = movingTogetherOf(evidence).find(({ zones }) => zones.includes(zone.index));
      if (group) {
        return [
          symptomOf('card-offset', group.startMs, group.endMs, 1, {
            offsetDegC: group.degC,
            apartRatio: group.apartShare,
            chancePValue: group.chancePValue,
            otherSideShare: group.otherSideShare,
            zoneCount: group.zones.length,
            otherCount: group.others.length,
            isStatedCount: group.isStated ? 1 : 0,
          }),
        ];
      }
      return unableOf(evidence, zone) ?? [];
    });
  },
};

function unableOf(evidence: Evidence, zone: Zone): string | null {
  const known = coldEnoughOf(evidence);
  if (!known.includes(zone.index))
    return `Zone ${zone.name}: it was never cold for long beside others, so a shift of its card cannot show.`;
  const isOfCard = ({ card, machine }: Zone) => card === zone.card && machine === zone.machine;
  const others = known.filter((index) => zone.card === null || !isOfCard(evidence.zones[index]!));
  if (others.length < (zone.card === null ? 4 : 2))
    return `Zone ${zone.name}: fewer than two zones of other input cards were cold to compare with.`;
  const apart = movingApartOf(evidence).find((group) => [...group.zones, ...group.others].includes(zone.index));
  if (!apart) return null;
  return `Zone ${zone.name}: ${apart.zones.length} zones moved apart from ${apart.others.length} others by ${Math.abs(apart.degC).toFixed(1)} °C; which of them moved cannot be told.`;
}
