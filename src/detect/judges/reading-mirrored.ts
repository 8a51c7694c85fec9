import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS } from '../../model/time-units.js';
import { meanBetween } from '../../maths/mean-between.js';
import { median } from '../../maths/quantile.js';
import { coldHoursOf } from '../shared/cold/cold-hours.js';
import { oncePer } from '../shared/basics/memo.js';
import { judgeZones, symptomOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { maskOf } from '../shared/readings/mask.js';
import { peersOf } from '../shared/readings/movement.js';
import { WARMEST_ROOM_DEG_C } from '../shared/basics/warmest-room.js';
import { lowest } from '../../maths/extremes.js';

export interface ReadingMirroredSettings {
  /** So far below the coldest room no heated place reads, whatever its tolerance. */
  readonly leastBelowDegC: number;
  readonly leastMinutes: number;
  /** The output asks for heat: at or above this. */
  readonly leastOutputPercent: number;
  /** A fall within one period of more than this share of the whole is a lost signal, not heat turned round. */
  readonly largestJumpShare: number;
}

/** No warmer room is taken for the coldest one (common practice). */
const USUAL_ROOM_DEG_C = 22;

/** A reading that falls below the room as the zone is heated: the two leads of a thermocouple are swapped. */
export const readingMirrored: Judge<ReadingMirroredSettings> = {
  meta: {
    id: 'reading-mirrored',
    sees: 'a reading that sinks bit by bit far below the room while the zone is heated',
    needs: ['reading', 'output-or-peers'],
    source:
      'A thermocouple with swapped leads gives its voltage the other sign: it reads about twice the terminal temperature less the true one (common practice).',
    defaults: { leastBelowDegC: 10, leastMinutes: 10, leastOutputPercent: 30, largestJumpShare: 0.5 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'reading-mirrored', (zone) => judgeZone(evidence, zone, settings));
  },
};

function judgeZone(evidence: Evidence, zone: Zone, settings: ReadingMirroredSettings): ZoneAnswer {
  if (zone.sensor !== null && !zone.sensor.startsWith('tc-')) return [];
  if (!zone.has.output && peersOf(evidence, zone).length === 0)
    return `Zone ${zone.name}: neither an output nor another zone is logged, so nothing shows that it is heated.`;
  const { digest } = evidence;
  const { meanDegC, outputPercent } = digest.zones[zone.index]!;
  const roomDegC = coldestRoomDegC(evidence, zone);
  const limitDegC = roomDegC - settings.leastBelowDegC;
  const runs = runsBelow(meanDegC, maskOf(evidence)[zone.index]!, limitDegC).filter(
    ([from, to]) =>
      ((to - from) * digest.periodMs) / MINUTE_MS >= settings.leastMinutes &&
      isHeated(evidence, zone, from, to, settings) &&
      isGradual(meanDegC, from, to, roomDegC, settings),
  );
  if (runs.length === 0) {
    if (isEverHeated(evidence, zone, settings)) return [];
    return `Zone ${zone.name} was not heated in this log, so nothing shows which way its reading goes.`;
  }
  const places = runs.reduce((sum, [from, to]) => sum + to - from, 0);
  const at = (place: number) => digest.startMs + place * digest.periodMs;
  const lowestDegC = lowest(runs.map(([from, to]) => lowestIn(meanDegC, from, to)));
  return [
    symptomOf('reading-mirrored', at(runs[0]![0]), at(runs.at(-1)![1]), runs.length, {
      belowMinutes: (places * digest.periodMs) / MINUTE_MS,
      belowRoomDegC: roomDegC - lowestDegC,
      lowestDegC,
      outputPercent: median(runs.map(([from, to]) => meanBetween(outputPercent, from, to))),
    }),
  ];
}

/** The coldest room that the other zones ever told; a hall known only as warm may have been as cold as any. */
function coldestRoomDegC(evidence: Evidence, zone: Zone): number {
  return lowest([USUAL_ROOM_DEG_C, ...coldestRoomsOf(evidence).filter((_, index) => index !== zone.index)]);
}

/** The coldest room that each zone told; Infinity where it was never cold. */
const coldestRoomsOf = oncePer((evidence: Evidence): readonly number[] =>
  coldHoursOf(evidence).map((hours) => lowest([...hours.values()].map(({ roomDegC }) => roomDegC))),
);

/** Stretches [from, to) below a limit; places without a reading do not end one. */
function runsBelow(degC: Float32Array, mask: Uint8Array, limitDegC: number): [number, number][] {
  const runs: [number, number][] = [];
  let isOpen = false;
  for (let i = 0; i < degC.length; i++) {
    if (mask[i] || Number.isNaN(degC[i]!)) continue;
    const isBelow = degC[i]! < limitDegC;
    if (isBelow && isOpen) runs.at(-1)![1] = i + 1;
    else if (isBelow) runs.push([i, i + 1]);
    isOpen = isBelow;
  }
  return runs;
}

function isHeated(evidence: Evidence, zone: Zone, from: number, to: number, settings: ReadingMirroredSettings) {
  const { zones } = evidence.digest;
  if (zone.has.output) return meanBetween(zones[zone.index]!.outputPercent, from, to) >= settings.leastOutputPercent;
  const peersDegC = median(peersOf(evidence, zone).map((peer) => meanBetween(zones[peer.index]!.meanDegC, from, to)));
  return peersDegC > WARMEST_ROOM_DEG_C;
}

/** Whether heat was asked for at all, or the other zones of the machine were hot. */
function isEverHeated(evidence: Evidence, zone: Zone, settings: ReadingMirroredSettings): boolean {
  if (zone.has.output)
    return evidence.digest.zones[zone.index]!.outputPercent.some((percent) => percent >= settings.leastOutputPercent);
  const wasHot = everHotOf(evidence);
  return peersOf(evidence, zone).some(({ index }) => wasHot[index]);
}

const everHotOf = oncePer(({ digest }: Evidence): readonly boolean[] =>
  digest.zones.map(({ meanDegC }) => meanDegC.some((degC) => degC > WARMEST_ROOM_DEG_C)),
);

/** Whether the way down from the room to the lowest reading was made in more than one leap. */
function isGradual(
  degC: Float32Array,
  from: number,
  to: number,
  roomDegC: number,
  { largestJumpShare }: ReadingMirroredSettings,
): boolean {
  const largestDegC = largestJumpShare * (roomDegC - lowestIn(degC, from, to));
  let before = lastKnown(degC, from);
  for (let i = from; i < to; i++) {
    if (Number.isNaN(degC[i]!)) continue;
    if (Math.abs(before - degC[i]!) > largestDegC) return false;
    before = degC[i]!;
  }
  return true;
}

function lastKnown(degC: Float32Array, end: number): number {
  for (let i = end - 1; i >= 0; i--) if (!Number.isNaN(degC[i]!)) return degC[i]!;
  return NaN;
}

function lowestIn(degC: Float32Array, from: number, to: number): number {
  return degC.subarray(from, to).reduce((low, value) => (value < low ? value : low), Infinity);
}
