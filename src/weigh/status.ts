import type { Probabilities } from '../model/cause.js';
import type { ZoneStatus } from '../model/findings.js';

/** More likely than not is worth a look; four in five is worth a fitter. Common practice, no source. */
const statusLimits = { watch: 0.5, faulty: 0.8 } as const;

/**
 * @param sawNothing True when a detector could look and saw no sign; without one nothing speaks for a healthy zone: it has
 * too few readings, or nothing to compare with.
 */
export function zoneStatus(probabilities: Probabilities, sawNothing: boolean): ZoneStatus {
  const faultShare = 1 - probabilities.none;
  if (faultShare >= statusLimits.faulty) return 'faulty';
  if (faultShare >= statusLimits.watch) return 'watch';
  return sawNothing ? 'healthy' : 'insufficient-data';
}
