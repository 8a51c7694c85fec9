import type { Evidence, Judge } from '../../model/detector.js';
import { median } from '../../maths/quantile.js';
import { fitChange, type ChangeFit, type Series } from '../shared/change-fit.js';
import { judgeZones, symptomOf, windowOf } from '../shared/judge-zones.js';
import { coldRoomsByHour } from '../shared/soaks.js';

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

/** All zones of one input card reading high or low together, against the zones of the other cards. */
export const cardOffset: Judge<CardOffsetSettings> = {
  meta: {
    id: 'card-offset',
    sees: 'all zones of one input card that shift together in the cold soaks while those of other cards do not',
    needs: ['reading', 'soak', 'card'],
    source: 'Common practice: zones of one card share its reference and its supply.',
    defaults: { leastZones: 2, leastGain: 30, smallestDegC: 0.5, leastMovedShare: 0.75 },
  },
  judge(evidence, settings) {
    const shifts = new Map<string, Shift | string>();
    return judgeZones(evidence, 'card-offset', (zone) => {
      if (zone.card === null) return `Zone ${zone.name}: its input card is not stated.`;
      const known = shifts.get(zone.card) ?? shiftOf(evidence, zone.card, settings);
      shifts.set(zone.card, known);
      if (typeof known === 'string') return `Zone ${zone.name}: ${known}`;
      if (known.facts === null) return [];
      return [symptomOf('card-offset', known.fit.onsetMs, windowOf(evidence).endMs, 1, known.facts)];
    });
  },
};

interface Shift {
  readonly fit: ChangeFit;
  readonly facts: Record<string, number> | null;
}

function shiftOf(evidence: Evidence, card: string, settings: CardOffsetSettings): Shift | string {
  const inside = evidence.zones.filter((z) => z.card === card).map((z) => z.index);
  const outside = evidence.zones.filter((z) => z.card !== card).map((z) => z.index);
  if (inside.length < settings.leastZones || outside.length < settings.leastZones) {
    return `card ${card}: ${inside.length} zones on it and ${outside.length} on others, needed ${settings.leastZones} each.`;
  }
  const rooms = coldRoomsByHour(evidence);
  const series = (index: number) => differenceSeries(rooms, [index], outside);
  const common = differenceSeries(rooms, inside, outside);
  if (common.timeMs.length < 12) return `card ${card}: too few hours in which its zones and others were cold.`;
  const fit = fitChange(['step', 1], null, common, windowOf(evidence).endMs);
  if (!fit?.cold) return `card ${card}: too few hours in which its zones and others were cold.`;
  const { degC, errorDegC } = fit.cold;
  const isSure = fit.gain >= settings.leastGain && Math.abs(degC) >= settings.smallestDegC;
  // With two cards either could be the one that moved: the room itself goes on as it was.
  if (!isSure) return { fit, facts: null };
  if (new Set(outside.map((index) => evidence.zones[index]!.card)).size === 1) {
    const ownJump = Math.abs(jumpAt(rooms, inside, fit.onsetMs));
    const otherJump = Math.abs(jumpAt(rooms, outside, fit.onsetMs));
    if (otherJump - ownJump > CLEARER_DEG_C) return { fit, facts: null };
    if (!(ownJump - otherJump > CLEARER_DEG_C)) {
      return `card ${card} and the only other one moved apart by ${degC.toFixed(1)} °C; which of them cannot be told.`;
    }
  }
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

/** By so much one card must jump more than the other against the room's own course (own choice). */
const CLEARER_DEG_C = 1;
/** Nearest cold hours on either side of a shift that are compared (own choice: about a night). */
const NEAR_HOURS = 8;

/** How the median of some zones changed across a time, the room's own change included. */
function jumpAt(rooms: ReturnType<typeof coldRoomsByHour>, zones: readonly number[], onsetMs: number): number {
  const there = rooms
    .map(({ timeMs, roomDegC }) => ({ timeMs, degC: median(zones.map((i) => roomDegC[i]!)) }))
    .filter(({ degC }) => !Number.isNaN(degC));
  const after = there.filter(({ timeMs }) => timeMs >= onsetMs).slice(0, NEAR_HOURS);
  const before = there.filter(({ timeMs }) => timeMs < onsetMs).slice(-NEAR_HOURS);
  return median(after.map(({ degC }) => degC)) - median(before.map(({ degC }) => degC));
}

/** Draughts and rounding leave at least this between two medians of cold zones (own choice). */
const SMALLEST_SCATTER_DEG_C = 0.05;

function meanChange({ timeMs, degC }: Series, onsetMs: number): number {
  return median(degC.filter((_, i) => timeMs[i]! >= onsetMs)) - median(degC.filter((_, i) => timeMs[i]! < onsetMs));
}
