import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { DAY_MS } from '../../model/time-units.js';
import { median } from '../../maths/quantile.js';
import type { ChangeFit } from '../shared/duty/change-fit.js';
import { heldDegCOf } from '../shared/duty/chart-points.js';
import { judgeZones, symptomOf, windowOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import {
  betterFit,
  changeFacts,
  growthRatioOf,
  isColdLarge,
  isDutyBeyondLoad,
  isSensorUnchanged,
  readingErrorOf,
  smallestHotChangeDegC,
} from '../shared/duty/reading-error.js';
import { degreesText, smallestVisibleDegC, workingToleranceDegC } from '../shared/duty/visible-change.js';
import { zoneChangesOf, type ZoneChange } from '../shared/duty/zone-changes.js';

export interface SlowDriftSettings {
  /** Squared standard deviations that a drift must explain. */
  readonly leastGain: number;
  /** Smaller drifts are told as nothing: 0.3 °C is what class B allows a sensor near room temperature (IEC 60751). */
  readonly smallestDegC: number;
  /** … and so is one that duty alone shows below this: load and room leave more behind there. */
  readonly smallestHotDegC: number;
}

/** A reading error that grows from an onset on, by cold soaks and by duty together. */
export const slowDrift: Judge<SlowDriftSettings> = {
  meta: {
    id: 'slow-drift',
    sees: 'a reading error that grows from one day to the next, cold or in the duty it costs',
    needs: ['reading', 'soak', 'peers'],
    source: 'Hinge by least squares (Hudson 1966) on soaks and on duty against peers; common practice.',
    defaults: { leastGain: 30, smallestDegC: 0.3, smallestHotDegC: 1.5 },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'slow-drift', (zone) => judgeZone(evidence, zone, settings));
  },
};

function judgeZone(evidence: Evidence, zone: Zone, settings: SlowDriftSettings): ZoneAnswer {
  const change = zoneChangesOf(evidence)[zone.index]!;
  const fit = betterFit(change);
  if (!fit)
    return `${change.soaksUnable ?? `Zone ${zone.name}: too few cold soaks.`} ${change.dutyUnable ?? ''}`.trim();
  if (fit !== change.ramp || !isSure(fit, change, settings) || isSensorUnchanged(fit))
    return notVisible(evidence, zone, change, settings);
  const { endMs } = windowOf(evidence);
  const days = (endMs - fit.onsetMs) / DAY_MS;
  const growthRatio = growthRatioOf(evidence, change, heldDegCOf(evidence)[zone.index] ?? NaN);
  const { offsetDegC, uncertaintyDegC } = readingErrorOf(fit, growthRatio);
  // A ramp of power p is at its end p times as steep as on average.
  const slopeDegCPerDay = ((fit.shape as number) * offsetDegC) / days;
  return [
    symptomOf('slow-drift', fit.onsetMs, endMs, 1, {
      ...changeFacts(fit, growthRatio),
      uncertaintyDegC: Math.hypot(
        uncertaintyDegC,
        UNSEEN_ERROR_SHARE * unseenShare(fit, change, endMs) * offsetDegC,
        misfitDegC(fit, change, endMs),
      ),
      slopeDegCPerDay,
      driftDays: days,
      powerRatio: fit.shape as number,
      ...toleranceFacts(evidence, zone, change, offsetDegC, slopeDegCPerDay),
    }),
  ];
}

/** What the drift gained since the last look is known to half of itself: it may have stopped there, or gone faster. */
const UNSEEN_ERROR_SHARE = 0.5;

/** Share of the whole drift that lies behind the last soak, or behind the last settled hour where no soak shows it. */
function unseenShare({ shape, onsetMs, cold }: ChangeFit, { duty, soaks }: ZoneChange, endMs: number): number {
  const lastSoakMs = cold && Number.isFinite(cold.errorDegC) ? soaks.at(-1)?.timeMs : undefined;
  const lastMs = lastSoakMs ?? duty?.timeMs.at(-1) ?? -Infinity;
  return 1 - Math.min(1, Math.max(0, (lastMs - onsetMs) / (endMs - onsetMs))) ** (shape as number);
}

/**
 * By how much the course that was fitted misses the last soaks, °C at the end of the log: a drift that came to rest, or
 * gets faster, lies beside any power of time. 0 where no soak shows the level before it.
 */
function misfitDegC({ shape, onsetMs, cold }: ChangeFit, { soaks }: ZoneChange, endMs: number): number {
  const before = soaks.filter(({ timeMs }) => timeMs < onsetMs);
  const last = soaks.slice(-LAST_LOOKS).filter(({ timeMs }) => timeMs >= onsetMs);
  if (!cold || before.length === 0 || last.length === 0) return 0;
  const levelDegC = median(before.map(({ offsetDegC }) => offsetDegC));
  const misses = last.map(({ timeMs, offsetDegC }) => {
    const share = ((timeMs - onsetMs) / (endMs - onsetMs)) ** (shape as number);
    return offsetDegC - levelDegC - share * cold.degC;
  });
  return median(misses);
}

const LAST_LOOKS = 3;

/**
 * Nothing seen in a zone that is never cold means little: load and room move its duty, too. The same goes for few or
 * unsure soaks. Where a drift as large as the tolerance could hide in that, the answer is that it cannot be told.
 */
function notVisible(evidence: Evidence, zone: Zone, change: ZoneChange, settings: SlowDriftSettings): ZoneAnswer {
  const { leastGain, smallestDegC: smallestColdDegC, smallestHotDegC } = settings;
  const smallestDegC = smallestVisibleDegC(evidence, change, 'ramp', { leastGain, smallestColdDegC, smallestHotDegC });
  const toleranceDegC = workingToleranceDegC(evidence, zone, change);
  const says = (why: string, degC: number) =>
    `Zone ${zone.name} ${why}: a drift below ${degreesText(degC)} °C does not show, and its tolerance is ${degreesText(toleranceDegC)} °C.`;
  if (smallestDegC > toleranceDegC)
    return change.cold
      ? says('is cold too seldom or too restlessly', smallestDegC)
      : says('is never cold in this log, and its duty is moved by load and room', smallestDegC);
  const unseenMs = windowOf(evidence).endMs - (change.soaks.at(-1)?.endMs ?? NaN);
  const hotDegC = smallestHotChangeDegC(change, 'ramp', smallestHotDegC);
  if (!(unseenMs > LONGEST_UNSEEN_MS && hotDegC > toleranceDegC)) return [];
  const days = (unseenMs / DAY_MS).toFixed(1);
  const since = `shows no drift up to ${days} days before the end of the log, when it was last cold; since then`;
  return hotDegC === Infinity
    ? `Zone ${zone.name} ${since} nothing shows one.`
    : says(`${since} there is only its duty, which load and room move, too`, hotDegC);
}

/** A drift of a tolerance within so long is seldom (own choice); what was last seen longer ago may have drifted since. */
const LONGEST_UNSEEN_MS = 3 * DAY_MS;

function isSure(fit: ChangeFit, change: ZoneChange, settings: SlowDriftSettings): boolean {
  const { gain, hot, cold } = fit;
  if (gain < settings.leastGain) return false;
  const isColdSure = cold !== null && isColdLarge(cold, settings.smallestDegC) && cold.gain >= settings.leastGain / 2;
  const isHotSure =
    hot !== null && hot.gain >= settings.leastGain && isDutyBeyondLoad(fit, change, settings.smallestHotDegC);
  return isColdSure || isHotSure;
}

function toleranceFacts(
  evidence: Evidence,
  zone: Zone,
  change: ZoneChange,
  offsetDegC: number,
  slopeDegCPerDay: number,
): Record<string, number> {
  const toleranceDegC = workingToleranceDegC(evidence, zone, change);
  const leftDegC = toleranceDegC - Math.abs(offsetDegC);
  return {
    toleranceDegC,
    toleranceRatio: Math.abs(offsetDegC) / toleranceDegC,
    leavesToleranceHours: Math.max(0, (24 * leftDegC) / Math.abs(slopeDegCPerDay)),
  };
}
