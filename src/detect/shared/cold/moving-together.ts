import type { Evidence } from '../../../model/detector.js';
import { oncePer } from '../basics/memo.js';
import { blocksOf } from './card-blocks.js';
import { coldRoomsByHour } from './cold-hours.js';
import { testBlock, type BlockMove } from './block-move.js';

/** Fewer cold hours show no movement (own choice: a night and a half). */
const LEAST_HOURS = 12;
/** Movements likelier by chance than this are none (common practice). */
const LARGEST_P_VALUE = 0.05;

/** Zones of a machine whose readings moved as one against all others while everything was cold. */
export interface MovingGroup extends BlockMove {
  /** The plant file says that they share a card; else they only follow each other in the list. */
  readonly isStated: boolean;
}

/** One side must be twice as likely as the other to have moved (own choice). */
const LARGEST_OTHER_SIDE_SHARE = 1 / 3;

/**
 * Groups of zones that share what moves them: an input card or its reference. Their readings follow one course, the
 * others of the machine do not, by more than zones differ at other times; where the plant file names the cards, each
 * card is one group to be asked, else every stretch of neighbours in the list, and chance has so many more trials.
 *
 * @returns Clearest first, no zone twice; empty where the log never shows enough zones cold. Never throws.
 */
export const movingTogetherOf = oncePer((evidence: Evidence): readonly MovingGroup[] =>
  movesOf(evidence).filter(({ otherSideShare }) => otherSideShare <= LARGEST_OTHER_SIDE_SHARE),
);

/** Zones of which as many moved apart from as many others, so that nobody can say which of them moved. */
export const movingApartOf = oncePer((evidence: Evidence): readonly MovingGroup[] =>
  movesOf(evidence).filter(({ otherSideShare }) => otherSideShare > LARGEST_OTHER_SIDE_SHARE),
);

const movesOf = oncePer((evidence: Evidence): readonly MovingGroup[] => {
  const hours = coldRoomsByHour(evidence);
  const { blocks, triedCount } = blocksOf(evidence.zones, coldEnoughOf(evidence), hours);
  const moves = blocks.flatMap((block): MovingGroup[] => {
    const move = testBlock(hours, block, triedCount);
    return move && move.chancePValue <= LARGEST_P_VALUE ? [{ ...move, isStated: block.isStated }] : [];
  });
  const taken = new Set<number>();
  return moves
    .sort((a, b) => a.chancePValue + a.otherSideShare - b.chancePValue - b.otherSideShare)
    .filter(({ zones }) => {
      const isNew = zones.every((zone) => !taken.has(zone));
      if (isNew) for (const zone of zones) taken.add(zone);
      return isNew;
    });
});

/** Zones that were cold for long enough to be compared. */
export const coldEnoughOf = oncePer((evidence: Evidence): readonly number[] => {
  const hours = coldRoomsByHour(evidence);
  return evidence.zones
    .map(({ index }) => index)
    .filter((index) => hours.filter(({ roomDegC }) => !Number.isNaN(roomDegC[index]!)).length >= LEAST_HOURS);
});
