import type { Judge } from '../../model/detector.js';
import { eventChange } from '../shared/duty/event-change.js';
import { coolDownsOf } from '../shared/cold/cool-downs.js';
import { judgeZones, symptomOf, windowOf } from '../shared/basics/judge-zones.js';

export interface CoolDownSettings {
  /** Cool-downs needed on either side of a change. */
  readonly leastEvents: number;
  /** Smaller changes of the time constant are told as nothing: doors and draughts move it by a tenth. */
  readonly smallestChangeShare: number;
  /** Gain of the Bayes information criterion that a change must bring (10 = very strong, Kass & Raftery 1995). */
  readonly leastBicGain: number;
}

/** Cool-downs that became slower or faster than before while those of the peers did not. */
export const coolDown: Judge<CoolDownSettings> = {
  meta: {
    id: 'cool-down',
    sees: 'cool-downs that became slower or faster than the zone and its peers had them before',
    needs: ['reading'],
    source: 'Lumped body without heat, τ = m·c/(h·A) (textbook); BIC scale Kass & Raftery 1995.',
    defaults: { leastEvents: 2, smallestChangeShare: 0.15, leastBicGain: 10 },
  },
  judge(evidence, settings) {
    const events = coolDownsOf(evidence).map((list) =>
      list.map(({ startMs, tauMinutes }) => ({ timeMs: startMs, value: tauMinutes })),
    );
    return judgeZones(evidence, 'cool-down', (zone) => {
      const own = events[zone.index]!;
      const needed = 2 * settings.leastEvents;
      if (own.length < needed) return `Zone ${zone.name}: cool-downs with zero output ${own.length}, needed ${needed}.`;
      const change = eventChange(evidence, zone.index, events, settings.leastEvents);
      if (!change || change.bicGain < settings.leastBicGain) return [];
      if (Math.abs(Math.log(change.ratio)) < Math.log(1 + settings.smallestChangeShare)) return [];
      return [
        symptomOf('cool-down', change.onsetMs, windowOf(evidence).endMs, change.afterCount, {
          tauRatio: change.ratio,
          beforeMinutes: change.before,
          afterMinutes: change.after,
          bicGainRatio: change.bicGain,
          coolDownCount: own.length,
          peerCount: change.peerCount,
        }),
      ];
    });
  },
};
