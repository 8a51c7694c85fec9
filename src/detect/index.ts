import type { AnyJudge } from './run-judges.js';
import type { AnyWatcher } from './run-watchers.js';
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
export const judges: readonly AnyJudge[] = [];
