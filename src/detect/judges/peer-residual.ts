import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS } from '../../model/time-units.js';
import { median } from '../../maths/quantile.js';
import { judgeZones, symptomOf, windowOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { oncePer } from '../shared/basics/memo.js';
import { zoneState } from '../shared/readings/zone-state.js';
import { WARMEST_ROOM_DEG_C } from '../shared/basics/warmest-room.js';
import { windowsOf, type ZoneWindows } from '../shared/readings/windows.js';
import { matesOf } from '../shared/basics/mates.js';

export interface PeerResidualSettings {
  /** How far from its usual place among its peers the reading must lie. */
  readonly leastDegC: number;
  /** … for so long. */
  readonly leastMinutes: number;
  readonly leastPeers: number;
}

/** In a log of readings alone: a zone that leaves the temperature it is held at while its peers stay at theirs. */
export const peerResidual: Judge<PeerResidualSettings> = {
  meta: {
    id: 'peer-residual',
    sees: 'in a log without outputs: a zone that leaves the temperature it is held at while its peers keep theirs',
    needs: ['reading', 'peers'],
    source: 'Common practice.',
    defaults: { leastDegC: 6, leastMinutes: 120, leastPeers: 2 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'peer-residual', (zone) => judgeZone(evidence, zone, settings));
  },
};

function judgeZone(evidence: Evidence, zone: Zone, settings: PeerResidualSettings): ZoneAnswer {
  if (zone.has.output) return [];
  const windows = windowsOf(evidence);
  const own = windows.zones[zone.index]!;
  const peers = matesOf(evidence.zones, zone);
  if (peers.length < settings.leastPeers)
    return `Zone ${zone.name}: ${peers.length} peers, needed ${settings.leastPeers}.`;
  const left = leftLevelsOf(evidence);
  const ownLeft = left[zone.index]!;
  const peersLeft = peers.map((peer) => left[peer.index]!);
  const away = Array.from({ length: windows.count }, (_, w) => {
    const there = peersLeft.map((left) => left[w]!).filter(Number.isFinite);
    const held = there.filter((degC) => Math.abs(degC) < settings.leastDegC / 2).length;
    // Held at another level is another set point, which readings alone cannot tell from a fault.
    if (own.state[w] === zoneState.settled || there.length < settings.leastPeers || held <= there.length / 2)
      return NaN;
    return Math.abs(ownLeft[w]!) >= settings.leastDegC ? ownLeft[w]! : NaN;
  });
  const least = Math.ceil((settings.leastMinutes * MINUTE_MS) / windows.windowMs);
  const runs = runsOf(away).filter(([from, to]) => to - from >= least);
  if (runs.length === 0) return [];
  const seen = runs.flatMap(([from, to]) => away.slice(from, to));
  const time = (w: number) => windows.startMs + w * windows.windowMs;
  const endMs = time(runs.at(-1)![1]);
  return [
    symptomOf('peer-residual', time(runs[0]![0]), endMs, runs.length, {
      awayMinutes: (seen.length * windows.windowMs) / MINUTE_MS,
      residualDegC: median(seen),
      largestDegC: seen.reduce((most, degC) => (Math.abs(degC) > Math.abs(most) ? degC : most), 0),
      peerCount: peers.length,
      lastsToEndCount: endMs >= windowOf(evidence).endMs - 2 * windows.windowMs ? 1 : 0,
    }),
  ];
}

const leftLevelsOf = oncePer((evidence: Evidence) => windowsOf(evidence).zones.map(leftLevelDegC));

/** Reading less the level at which the zone was last held; NaN before the first, and at room level. */
function leftLevelDegC({ readingDegC, state }: ZoneWindows): Float64Array {
  let levelDegC = NaN;
  return readingDegC.map((degC, w) => {
    if (state[w] === zoneState.off) levelDegC = NaN; // after a stop the next set point may be another
    const leftDegC = degC > WARMEST_ROOM_DEG_C ? degC - levelDegC : NaN;
    if (state[w] === zoneState.settled) levelDegC = degC;
    return leftDegC;
  });
}

/** Stretches [from, to) of numbers. */
function runsOf(values: readonly number[]): [number, number][] {
  const runs: [number, number][] = [];
  values.forEach((value, w) => {
    if (Number.isNaN(value)) return;
    const last = runs.at(-1);
    if (last && last[1] === w) last[1] = w + 1;
    else runs.push([w, w + 1]);
  });
  return runs;
}
