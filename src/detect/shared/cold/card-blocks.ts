import type { Zone } from '../../../model/zone.js';
import { quantile } from '../../../maths/quantile.js';
import type { RoomHours } from './cold-hours.js';

/** Cards have up to sixteen channels (common practice). */
const MOST_CHANNELS = 16;
/** A card that moved shows as an edge between neighbours in the list: their difference moves by this (own choice: below what is told). */
const EDGE_DEG_C = 0.7;

/** Zones that may share an input card, and those that tell whether only these moved. */
export interface Block {
  readonly zones: readonly number[];
  /** The other zones of the machine. */
  readonly mates: readonly number[];
  /** Zones of other machines, machine by machine. */
  readonly elsewhere: readonly (readonly number[])[];
  readonly isStated: boolean;
}

/** All blocks of a plant that are to be asked whether they moved. */
export interface Blocks {
  readonly blocks: readonly Block[];
  /** Blocks that were there to be asked, among them those that show no edge. */
  readonly triedCount: number;
}

/**
 * Zones that may share an input card: those of one stated card; of machines without stated cards every stretch of
 * neighbours in the list, since cards are wired in order (common practice).
 *
 * @param known Indexes of the zones that can be compared.
 */
export function blocksOf(zones: readonly Zone[], known: readonly number[], hours: RoomHours): Blocks {
  const machines = [...new Set(zones.map(({ machine }) => machine))];
  const byMachine = machines.map((machine) => known.filter((index) => zones[index]!.machine === machine));
  const found = byMachine.map((own, m): Blocks => {
    const elsewhere = byMachine.filter((others, k) => k !== m && others.length > 0);
    const cards = [...new Set(own.flatMap((index) => zones[index]!.card ?? []))];
    const isStated = cards.length > 0;
    const groups = isStated
      ? cards.map((card) => own.filter((index) => zones[index]!.card === card)).filter(({ length }) => length > 1)
      : stretches(own, hours);
    const blocks = groups.map((group) => {
      return { zones: group, mates: own.filter((z) => !group.includes(z)), elsewhere, isStated };
    });
    return { blocks, triedCount: isStated ? blocks.length : stretchCount(own.length) };
  });
  return {
    blocks: found.flatMap(({ blocks }) => blocks),
    triedCount: found.reduce((sum, { triedCount }) => sum + triedCount, 0),
  };
}

/** Stretches of two and more neighbours, from one edge to another. */
function stretches(own: readonly number[], hours: RoomHours): number[][] {
  const isEdge = own.map((zone, k) => k === 0 || rangeBetween(hours, own[k - 1]!, zone) >= EDGE_DEG_C);
  const edges = [...isEdge.flatMap((edge, k) => (edge ? [k] : [])), own.length];
  return edges.flatMap((from, e) =>
    edges
      .slice(e + 1)
      .filter((to) => to - from > 1 && to - from <= MOST_CHANNELS)
      .map((to) => own.slice(from, to)),
  );
}

/** How far the difference of two zones moved, a tenth of the hours left out; NaN where they were never cold together. */
function rangeBetween(hours: RoomHours, one: number, other: number): number {
  const apart = hours.map(({ roomDegC }) => roomDegC[other]! - roomDegC[one]!);
  return quantile(apart, 0.95) - quantile(apart, 0.05);
}

function stretchCount(zoneCount: number): number {
  const longest = Math.min(zoneCount, MOST_CHANNELS);
  return Array.from({ length: Math.max(0, longest - 1) }, (_, k) => zoneCount - k - 1).reduce((a, b) => a + b, 0);
}
