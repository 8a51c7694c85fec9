import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { median } from '../../maths/quantile.js';
import { judgeZones, symptomOf, windowOf, type Answer } from '../shared/judge-zones.js';
import { WARMEST_ROOM_DEG_C } from '../shared/zone-state.js';
import { windowsOf, type ZoneWindows } from '../shared/windows.js';

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
    defaults: { leastDegC: 6, leastMinutes: 60, leastPeers: 2 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'peer-residual', (zone) => judgeZone(evidence, zone, settings));
  },
};

function judgeZone(evidence: Evidence, zone: Zone, settings: PeerResidualSettings): Answer {
  if (zone.has.output) return [];
  const windows = windowsOf(evidence);
  const own = hotDegC(windows.zones[zone.index]!);
  const apart = evidence.zones
    .filter((z) => z.machine === zone.machine && z.index !== zone.index)
    .map((z) => apartFromUsual(own, hotDegC(windows.zones[z.index]!)));
  if (apart.length < settings.leastPeers)
    return `Zone ${zone.name}: ${apart.length} peers, needed ${settings.leastPeers}.`;
  const away: { w: number; degC: number }[] = [];
  for (let w = 0; w < windows.count; w++) {
    const there = apart.map((values) => values[w]!).filter(Number.isFinite);
    const degC = median(there);
    // The peers must agree: then it is this zone that moved and not they.
    const agreeing = there.filter((value) => Math.abs(value - degC) < settings.leastDegC / 2).length;
    if (there.length < settings.leastPeers || agreeing <= there.length / 2) continue;
    if (Math.abs(degC) >= settings.leastDegC) away.push({ w, degC });
  }
  const minutes = (away.length * windows.windowMs) / 60_000;
  if (minutes < settings.leastMinutes) return [];
  const time = (w: number) => windows.startMs + w * windows.windowMs;
  const endMs = time(away.at(-1)!.w + 1);
  return [
    symptomOf('peer-residual', time(away[0]!.w), endMs, away.length, {
      awayMinutes: minutes,
      residualDegC: median(away.map(({ degC }) => degC)),
      largestDegC: away.reduce((most, { degC }) => (Math.abs(degC) > Math.abs(most) ? degC : most), 0),
      peerCount: apart.length,
      lastsToEndCount: endMs >= windowOf(evidence).endMs - 2 * windows.windowMs ? 1 : 0,
    }),
  ];
}

/** NaN at room level: that is for the soaks and the dead heater. */
function hotDegC({ readingDegC }: ZoneWindows): Float64Array {
  return readingDegC.map((degC) => (degC > WARMEST_ROOM_DEG_C ? degC : NaN));
}

/** One zone less another, less what is usual between them: a set point changed for both takes nothing apart. */
function apartFromUsual(own: Float64Array, peer: Float64Array): Float64Array {
  const apart = own.map((degC, w) => degC - peer[w]!);
  const usual = median(apart);
  return apart.map((degC) => degC - usual);
}
