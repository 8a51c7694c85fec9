import type { Evidence } from '../../../model/detector.js';
import { oncePer } from '../basics/memo.js';
import { hasNear, momentMsOf, opensOf, type Open } from './opens.js';
import { failureMomentsOf, type Moment } from './same-moment.js';
import { sharedFailuresOf } from './shared-failures.js';

/** Two others that open in the same moment are more than chance: a card, a supply or a plug has them all (own choice). */
const OTHERS_OF_A_CARD = 2;
/** With one other, a zone must fail with others most of the time, and by chance in less than one log of a thousand. */
const LEAST_SHARED_SHARE = 0.5;
const LARGEST_PAIR_CHANCE = 0.001;
/** Failures that fill more of the window than this meet those of another zone by chance (own choice). */
const LARGEST_FILL_SHARE = 0.05;

/**
 * Opens of each zone that are its own, by zone index and in time order. Left out, for card-events to judge, are those
 * that the card, the station or the recorder makes: in the same moment two others open, or most zones of the log are
 * upset, or the zone nearly always fails together with another one.
 */
export const ownOpensOf = oncePer((evidence: Evidence): readonly (readonly Open[])[] => {
  const stationMs = failureMomentsOf(evidence)
    .filter((moment) => isOfStation(evidence, moment))
    .map(({ startMs }) => startMs);
  return opensOf(evidence).map((opens, z) => {
    const pairMs = isOnePair(evidence, z) ? sharedFailuresOf(evidence)[z]!.shared.map(({ startMs }) => startMs) : [];
    const withinMs = momentMsOf(evidence.zones[z]!);
    const isShared = ({ startMs, othersAtOnceCount }: Open) =>
      othersAtOnceCount >= OTHERS_OF_A_CARD ||
      hasNear(stationMs, startMs, withinMs) ||
      hasNear(pairMs, startMs, withinMs);
    return opens.filter((open) => !isShared(open));
  });
});

function isOnePair(evidence: Evidence, zone: number): boolean {
  const { own, shared, chancePValue } = sharedFailuresOf(evidence)[zone]!;
  return shared.length >= 2 && shared.length > LEAST_SHARED_SHARE * own.length && chancePValue < LARGEST_PAIR_CHANCE;
}

/** More than half of all zones at once; a zone that is upset all day proves nothing. */
function isOfStation(evidence: Evidence, { zones }: Moment): boolean {
  const rare = zones.filter((z) => isRare(evidence, z));
  return rare.length >= 2 && rare.length > evidence.zones.length / 2;
}

function isRare(evidence: Evidence, zone: number): boolean {
  const { length, periodMs } = evidence.digest;
  const filledMs = sharedFailuresOf(evidence)[zone]!.own.length * 2 * momentMsOf(evidence.zones[zone]!);
  return filledMs <= LARGEST_FILL_SHARE * length * periodMs;
}
