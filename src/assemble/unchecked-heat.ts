import type { UncheckedHeat } from '../model/findings.js';
import { symptomsOf } from '../weigh/term.js';
import { likeliestFault } from '../weigh/verdict.js';
import type { Verdict } from '../weigh/weigh-plant.js';

/**
 * Why the loop cannot hold a zone's heat back at the end of the log, so that it may overheat; null where it can. An
 * output that heats at zero cannot be switched off; a short near the room makes the loop ask for all the heat there is.
 */
export function uncheckedHeat(verdict: Verdict): UncheckedHeat | null {
  const { evidence, probabilities, span, status } = verdict;
  if ((status !== 'faulty' && status !== 'watch') || !Number.isNaN(span.fixedMs)) return null;
  const cause = likeliestFault(probabilities);
  const isSeen = (detector: string): boolean => symptomsOf(evidence, detector).length > 0;
  if (cause === 'heater' && isSeen('output-stuck-on')) return 'stuck-on';
  const isReading = cause === 'sensor' || cause === 'wiring' || cause === 'input';
  return isReading && isSeen('reading-low-shorted') ? 'reading-low' : null;
}
