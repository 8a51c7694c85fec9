import type { Episode, Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { median } from '../../maths/quantile.js';
import { conditionsOf, exposuresOf, conditionAt } from '../shared/readings/exposure.js';
import { judgeZones, symptomOf } from '../shared/basics/judge-zones.js';
import { ownSpikesOf } from '../shared/moves/own-spikes.js';
import { rateFacts } from '../shared/opens/rate-facts.js';
import { highest } from '../../maths/extremes.js';

export interface SpikesSettings {
  /** Fewer spikes in a log are everyday (common practice). */
  readonly fewestSpikes: number;
  /** Spikes below this many noise SDs of the zone are its noise (own choice: one in a million by chance). */
  readonly timesNoise: number;
}

/** Single readings far out and back again, more than a healthy input shows. */
export const spikes: Judge<SpikesSettings> = {
  meta: {
    id: 'spikes',
    sees: 'readings that jump out for one to three samples and come back, again and again',
    needs: ['reading'],
    source: 'Common practice.',
    defaults: { fewestSpikes: 3, timesNoise: 6 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'spikes', (zone) => {
      const { own, sharedCount } = ownSpikesOf(evidence, zone, settings.timesNoise);
      return own.length < settings.fewestSpikes ? [] : [describe(evidence, zone, own, sharedCount)];
    });
  },
};

function describe(evidence: Evidence, zone: Zone, own: readonly Episode[], sharedCount: number) {
  const sizes = own.map((s) => s.facts['sizeDegC']!);
  const exposure = exposuresOf(evidence)[zone.index]!;
  const { runningShare, runningFrom } = conditionsOf(evidence)[zone.index]!;
  const shares = own.map((s) => s.facts['runningShare'] ?? conditionAt(evidence, runningShare, s.startMs));
  const running = shares.filter((share) => share >= 0.5).length;
  const standing = shares.filter((share) => share < 0.5).length;
  const rates = rateFacts(
    { events: running, exposure: exposure.hotRunningHours },
    { events: standing, exposure: exposure.hotStoppedHours },
  );
  return symptomOf('spikes', own[0]!.startMs, own.at(-1)!.endMs, own.length, {
    spikeCount: own.length,
    sharedCount,
    spikesPerDay: own.length / Math.max(1 / 24, exposure.loggedHours / 24),
    upShare: sizes.filter((size) => size > 0).length / sizes.length,
    medianSizeDegC: median(sizes.map(Math.abs)),
    largestSizeDegC: highest(sizes.map(Math.abs)),
    singleShare: own.filter((s) => s.facts['sampleCount'] === 1).length / own.length,
    ...(runningFrom === 'unknown'
      ? {}
      : { runningShare: running / (running + standing), runningHigherPValue: rates.higherPValue }),
  });
}
