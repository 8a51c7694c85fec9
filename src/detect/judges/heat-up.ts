import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS } from '../../model/time-units.js';
import { median } from '../../maths/quantile.js';
import { eventChange } from '../shared/duty/event-change.js';
import { heatUpsOf } from '../shared/heating/heat-ups.js';
import { samplingMsOf } from '../shared/basics/sampling.js';
import { judgeZones, symptomOf, windowOf } from '../shared/basics/judge-zones.js';

export interface HeatUpSettings {
  /** Heat-ups needed on either side of a change. */
  readonly leastEvents: number;
  /** Smaller changes of the slope are told as nothing: mains voltage alone moves power by a tenth. */
  readonly smallestChangeShare: number;
  /** Samples that the middle of a heat-up must last; with fewer its slope is known to no better than a fifth. */
  readonly leastSamples: number;
  /** Gain of the Bayes information criterion that a change must bring (10 = very strong, Kass & Raftery 1995). */
  readonly leastBicGain: number;
}

/** Heat-ups that became slower or faster than before while those of the peers did not. */
export const heatUp: Judge<HeatUpSettings> = {
  meta: {
    id: 'heat-up',
    sees: 'heat-ups that became slower or faster than the zone and its peers had them before',
    needs: ['reading'],
    source: 'Full power over heat capacity, dT/dt = P/(m·c) (textbook); BIC scale Kass & Raftery 1995.',
    defaults: { leastEvents: 2, smallestChangeShare: 0.15, leastSamples: 5, leastBicGain: 10 },
  },
  judge(evidence, settings) {
    const events = heatUpsOf(evidence).map((list) =>
      list.map(({ startMs, slopeDegCPerMinute }) => ({ timeMs: startMs, value: slopeDegCPerMinute })),
    );
    return judgeZones(evidence, 'heat-up', (zone) => {
      const own = events[zone.index]!;
      const needed = 2 * settings.leastEvents;
      if (own.length < needed) return `Zone ${zone.name}: heat-ups from cold ${own.length}, needed ${needed}.`;
      const places =
        median(heatUpsOf(evidence)[zone.index]!.map(({ minutes }) => minutes)) / placeMinutes(evidence, zone);
      if (places < settings.leastSamples) {
        return `Zone ${zone.name} heats up within ${places.toFixed(1)} samples, needed ${settings.leastSamples}: logged too slowly.`;
      }
      const change = eventChange(evidence, zone.index, events, settings.leastEvents);
      if (!change || change.bicGain < settings.leastBicGain) return [];
      if (Math.abs(Math.log(change.ratio)) < Math.log(1 + settings.smallestChangeShare)) return [];
      return [
        symptomOf('heat-up', change.onsetMs, windowOf(evidence).endMs, change.afterCount, {
          slopeRatio: change.ratio,
          beforeDegCPerHour: 60 * change.before,
          afterDegCPerHour: 60 * change.after,
          bicGainRatio: change.bicGain,
          heatUpCount: own.length,
          peerCount: change.peerCount,
        }),
      ];
    });
  },
};

function placeMinutes({ digest }: Evidence, zone: Zone): number {
  return Math.max(digest.periodMs, samplingMsOf(zone)) / MINUTE_MS;
}
