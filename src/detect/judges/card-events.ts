import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { fisherExact } from '../../maths/fisher-exact.js';
import { median } from '../../maths/quantile.js';
import { judgeZones, symptomOf } from '../shared/basics/judge-zones.js';
import type { Moment } from '../shared/opens/same-moment.js';
import { sharedFailuresOf } from '../shared/opens/shared-failures.js';

export interface CardEventsSettings {
  readonly fewestShared: number;
  /** Below this share the zone has a fault of its own and meets others by chance or by the machine (own choice). */
  readonly smallestSharedShare: number;
  readonly largestPValue: number;
  /** A zone belongs to the group when it takes part in this share of the shared moments (own choice). */
  readonly groupShare: number;
}

/**
 * Zones that fail at the same moment: a card, its supply or its reference has one fault for all. Works without knowing
 * the cards, by the zones that fail together; where the plant file names them, says how well the two agree.
 */
export const cardEvents: Judge<CardEventsSettings> = {
  meta: {
    id: 'card-events',
    sees: 'several zones that lose their reading or jump at the same moment',
    needs: ['reading', 'peers'],
    source: 'Exact binomial test against independent zones; Fisher 1935, The Design of Experiments, for the cards.',
    defaults: { fewestShared: 2, smallestSharedShare: 0.5, largestPValue: 0.01, groupShare: 0.5 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'card-events', (zone) => {
      if (evidence.zones.length < 2) return `Zone ${zone.name}: it is the only zone in the log.`;
      const { own, shared, expectedCount, chancePValue } = sharedFailuresOf(evidence)[zone.index]!;
      const isEverywhere = (moment: Moment) => moment.zones.length >= Math.max(3, 0.9 * evidence.zones.length);
      if (shared.length < settings.fewestShared && !shared.some((moment) => moment.zones.length >= 3)) return [];
      const sharedShare = shared.length / own.length;
      if (chancePValue > settings.largestPValue || sharedShare < settings.smallestSharedShare) return [];
      const group = groupOf(shared, zone, settings.groupShare);
      return [
        symptomOf('card-events', shared[0]!.startMs, shared.at(-1)!.startMs, shared.length, {
          ownCount: own.length,
          sharedCount: shared.length,
          sharedShare,
          zonesAtOnceCount: median(shared.map((moment) => moment.zones.length)),
          everywhereShare: shared.filter(isEverywhere).length / shared.length,
          expectedCount,
          chancePValue,
          ...groupFacts(evidence, zone, group),
        }),
      ];
    });
  },
};

/** Zones that take part in enough of this zone's shared moments, itself among them. */
function groupOf(shared: readonly Moment[], zone: Zone, groupShare: number): ReadonlySet<number> {
  const counts = new Map<number, number>();
  for (const moment of shared) for (const z of moment.zones) counts.set(z, (counts.get(z) ?? 0) + 1);
  const group = [...counts].filter(([, count]) => count >= groupShare * shared.length).map(([z]) => z);
  return new Set([...group, zone.index]);
}

function groupFacts({ zones }: Evidence, zone: Zone, group: ReadonlySet<number>): Record<string, number> {
  const machine = zones.filter((z) => z.machine === zone.machine);
  const mates = zones.filter((z) => z.index !== zone.index && group.has(z.index));
  const isOnCard = (z: Zone) => z.card !== null && z.card === zone.card && z.machine === zone.machine;
  const onCard = zones.filter(isOnCard);
  return {
    groupZonesCount: group.size,
    groupOfMachineShare: machine.filter((z) => group.has(z.index)).length / machine.length,
    otherMachineCount: mates.filter((z) => z.machine !== zone.machine).length,
    sameCardShare: onCard.length > 1 ? mates.filter(isOnCard).length / mates.length : NaN,
    cardCoveredShare: onCard.length > 1 ? onCard.filter((z) => group.has(z.index)).length / onCard.length : NaN,
    cardPValue: onCard.length > 1 ? chanceOfCard(zones, mates, zone, isOnCard) : NaN,
  };
}

/** How likely zones drawn at random would hold so many of this one's card. */
function chanceOfCard(
  zones: readonly Zone[],
  mates: readonly Zone[],
  zone: Zone,
  isOnCard: (z: Zone) => boolean,
): number {
  const others = zones.filter((z) => z !== zone && !mates.includes(z));
  const split = (among: readonly Zone[]) => {
    const onCardCount = among.filter(isOnCard).length;
    return [onCardCount, among.length - onCardCount] as const;
  };
  return fisherExact([split(mates), split(others)]).atLeast;
}
