import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { median } from '../../maths/quantile.js';
import { fitChange, type ChangeFit, type Series } from '../shared/duty/change-fit.js';
import { judgeZones, symptomOf, windowOf, type Answer } from '../shared/basics/judge-zones.js';
import { coldRoomsByHour } from '../shared/cold/cold-hours.js';
import { movingTogetherOf } from '../shared/cold/moving-together.js';

export interface CardOffsetSettings {
  /** Zones that a card, and the rest of the plant, must have in the soaks. */
  readonly leastZones: number;
  /** Squared standard deviations that the common shift must explain. */
  readonly leastGain: number;
  /** Smaller common shifts are told as nothing. */
  readonly smallestDegC: number;
  /** Share of the card's zones that must have moved by at least half of the common shift. */
  readonly leastMovedShare: number;
}

/**
 * All zones of one input card reading high or low together, against the zones of the other cards; where nobody says
 * which zones share a card, the zones of a machine that move as one.
 */
export const cardOffset: Judge<CardOffsetSettings> = {
  meta: {
    id: 'card-offset',
    sees: 'zones of one input card that shift together in the cold soaks while other zones do not',
    needs: ['reading', 'soak', 'peers'],
    source: 'Common practice: zones of one card share its reference and its supply.',
    defaults: { leastZones: 2, leastGain: 30, smallestDegC: 0.5, leastMovedShare: 0.75 },
  },
  judge(evidence, settings) {
    const shifts = new Map<string, Shift | string>();
    return judgeZones(evidence, 'card-offset', (zone) => {
      if (zone.card === null) return unstatedCard(evidence, zone);
      const known = shifts.get(zone.card) ?? shiftOf(evidence, zone.card, settings);
      shifts.set(zone.card, known);
      if (typeof known !== 'string' && known.facts !== null)
        return [symptomOf('card-offset', known.fit.onsetMs, windowOf(evidence).endMs, 1, known.facts)];
      // A shift that settles, or comes and goes, is neither a step nor a ramp: then the zones that move as one tell.
      const together = unstatedCard(evidence, zone);
      if (typeof together !== 'string' && together.length > 0) return together;
      return typeof known === 'string' ? `Zone ${zone.name}: ${known}` : [];
    });
  },
};

/** Zones that keep to each other to a tenth of a movement of degrees have something in common, whatever it is called. */
function unstatedCard(evidence: Evidence, zone: Zone): Answer {
  const group = movingTogetherOf(evidence).find(({ zones }) => zones.includes(zone.index));
  if (!group) {
    return coldRoomsByHour(evidence).some(({ roomDegC }) => !Number.isNaN(roomDegC[zone.index]!))
      ? []
      : `Zone ${zone.name}: its input card is not stated, and it was never cold beside others.`;
  }
  return [
    symptomOf('card-offset', group.startMs, group.endMs, 1, {
      offsetDegC: group.degC,
      apartRatio: group.apartShare,
      zoneCount: group.zones.length,
      otherCount: group.otherCount,
      isStatedCount: 0,
    }),
  ];
}

interface Shift {
  readonly fit: ChangeFit;
  readonly facts: Record<string, number> | null;
}

function shiftOf(evidence: Evidence, card: string, settings: CardOffsetSettings): Shift | string {
  const inside = evidence.zones.filter((z) => z.card === card).map((z) => z.index);
  const outside = evidence.zones.filter((z) => z.card !== card).map((z) => z.index);
  if (inside.length < settings.leastZones || outside.length < settings.leastZones) {
    return `card ${card}: zones on it ${inside.length}, on others ${outside.length}, needed ${settings.leastZones} each.`;
  }
  const rooms = coldRoomsByHour(evidence);
  const series = (index: number) => differenceSeries(rooms, [index], outside);
  const common = differenceSeries(rooms, inside, outside);
  if (common.timeMs.length < 12) return `card ${card}: too few hours in which its zones and others were cold.`;
  const fit = fitChange(['step', 1], null, common, windowOf(evidence).endMs);
  if (!fit?.cold) return `card ${card}: too few hours in which its zones and others were cold.`;
  const { degC, errorDegC } = fit.cold;
  const isSure = fit.gain >= settings.leastGain && Math.abs(degC) >= settings.smallestDegC;
  if (!isSure) return { fit, facts: null };
  if (new Set(outside.map((index) => evidence.zones[index]!.card)).size === 1) {
    return `card ${card} and the only other one moved apart by ${degC.toFixed(1)} °C; which of them cannot be told.`;
  }
  const otherCards = [...new Set(outside.map((index) => evidence.zones[index]!.card))];
  const apart = otherCards.map((other) => {
    const theirs = outside.filter((index) => evidence.zones[index]!.card === other);
    return meanChange(differenceSeries(rooms, inside, theirs), fit.onsetMs) / degC;
  });
  // A sound card stands apart from the one that moved, but not from most.
  if (apart.filter((share) => share >= 0.5).length <= otherCards.length / 2) return { fit, facts: null };
  const own = inside.map((index) => meanChange(series(index), fit.onsetMs)).filter(Number.isFinite);
  const movedShare =
    own.filter((change) => change / degC >= 0.5 * (fit.shape === 'step' ? 1 : 0.5)).length / own.length;
  if (movedShare < settings.leastMovedShare) return { fit, facts: null };
  const facts = {
    offsetDegC: degC,
    uncertaintyDegC: errorDegC,
    zScoreRatio: Math.sqrt(fit.gain),
    zoneCount: inside.length,
    otherCount: outside.length,
    movedShare,
    isStepCount: fit.shape === 'step' ? 1 : 0,
    isStatedCount: 1,
  };
  return { fit, facts };
}

/** Median of some zones less the median of others, hour by hour where both are there. */
function differenceSeries(
  rooms: ReturnType<typeof coldRoomsByHour>,
  inside: readonly number[],
  outside: readonly number[],
): Series {
  const there = rooms.flatMap(({ timeMs, roomDegC }) => {
    const degC = median(inside.map((i) => roomDegC[i]!)) - median(outside.map((i) => roomDegC[i]!));
    return Number.isNaN(degC) ? [] : [{ timeMs, degC }];
  });
  return {
    timeMs: Float64Array.from(there, ({ timeMs }) => timeMs),
    degC: Float64Array.from(there, ({ degC }) => degC),
    columns: [new Float64Array(there.length).fill(1)],
    ridge: [],
    weights: new Float64Array(there.length).fill(1),
    leastSd: SMALLEST_SCATTER_DEG_C,
    leastRows: 6,
    leastRowsBefore: 6,
  };
}

/** Draughts and rounding leave at least this between two medians of cold zones (own choice). */
const SMALLEST_SCATTER_DEG_C = 0.05;

function meanChange({ timeMs, degC }: Series, onsetMs: number): number {
  return median(degC.filter((_, i) => timeMs[i]! >= onsetMs)) - median(degC.filter((_, i) => timeMs[i]! < onsetMs));
}
