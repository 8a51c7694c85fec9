import type { AnyJudge } from './run-judges.js';
import type { AnyWatcher } from './run-watchers.js';
import { alarmsAlone } from './judges/alarms-alone.js';
import { cardEvents } from './judges/card-events.js';
import { cardOffset } from './judges/card-offset.js';
import { codeValue } from './judges/code-value.js';
import { coldSoakOffset } from './judges/cold-soak-offset.js';
import { coolDown } from './judges/cool-down.js';
import { deviationFromSetpoint } from './judges/deviation-from-setpoint.js';
import { dutyShift } from './judges/duty-shift.js';
import { frozenRecord } from './judges/frozen-record.js';
import { heatUp } from './judges/heat-up.js';
import { heaterDead } from './judges/heater-dead.js';
import { heaterWeak } from './judges/heater-weak.js';
import { lastingStep } from './judges/lasting-step.js';
import { loneExcursions } from './judges/lone-excursions.js';
import { offsetStep } from './judges/offset-step.js';
import { opensByHeat } from './judges/opens-by-heat.js';
import { opensByRunning } from './judges/opens-by-running.js';
import { opensGrowth } from './judges/opens-growth.js';
import { outputStuckOn } from './judges/output-stuck-on.js';
import { peerResidual } from './judges/peer-residual.js';
import { readingLowShorted } from './judges/reading-low-shorted.js';
import { readingMirrored } from './judges/reading-mirrored.js';
import { repairs } from './judges/repairs.js';
import { returningSteps } from './judges/returning-steps.js';
import { scatterGrowth } from './judges/scatter-growth.js';
import { sensorOpens } from './judges/sensor-opens.js';
import { slowDrift } from './judges/slow-drift.js';
import { spikes } from './judges/spikes.js';
import { stuckReading } from './judges/stuck-reading.js';
import { wetRecovery } from './judges/wet-recovery.js';
import { gap } from './watchers/gap.js';
import { impossibleStep } from './watchers/impossible-step.js';
import { openRuns } from './watchers/open-runs.js';
import { scatter } from './watchers/scatter.js';
import { settledStep } from './watchers/settled-step.js';
import { spike } from './watchers/spike.js';
import { stuckRun } from './watchers/stuck-run.js';

/** Detectors on raw samples. A new one = file + page + test + one line here. */
export const watchers: readonly AnyWatcher[] = [openRuns, impossibleStep, spike, settledStep, stuckRun, scatter, gap];

/** Detectors on digests and episodes. A new one = file + page + test + one line here. */
export const judges: readonly AnyJudge[] = [
  sensorOpens,
  opensByRunning,
  opensByHeat,
  opensGrowth,
  codeValue,
  stuckReading,
  frozenRecord,
  returningSteps,
  lastingStep,
  loneExcursions,
  spikes,
  scatterGrowth,
  cardEvents,
  repairs,
  coldSoakOffset,
  dutyShift,
  slowDrift,
  offsetStep,
  cardOffset,
  coolDown,
  deviationFromSetpoint,
  heatUp,
  heaterDead,
  heaterWeak,
  outputStuckOn,
  peerResidual,
  readingLowShorted,
  readingMirrored,
  wetRecovery,
  alarmsAlone,
];
