import type { Evidence } from '../../../model/detector.js';
import { HOUR_MS } from '../../../model/time-units.js';
import { median } from '../../../maths/quantile.js';
import type { ChangeFit, ChangeSize } from './change-fit.js';
import { assumedRoomOf } from '../cold/cold-hours.js';
import type { ZoneChange } from './zone-changes.js';

/**
 * A zone gives heat to its neighbours, too, as soon as it is warmer than its set point: they are held at theirs. That
 * comes on top of what the duty shows as loss to the room, so a degree costs more duty than duty ÷ (T − room): by
 * nothing for a bar alone, by up to a third for one between two others (own choice: a tenth).
 */
const NEIGHBOUR_SHARE = 0.1;
/** … and the size by the duty comes out 0.9 to 2 times the true one in half of 39 made drifts, never far below it. */
const DUTY_SCALE_ERROR_SHARE = 0.35;
/** Before any evidence a drift is the same hot and cold or grows from 0 °C, alike, or in one of ten neither (own choice). */
const COURSE_SHARES = { same: 0.45, grown: 0.45, other: 0.1 } as const;
/** Prior spread of what the working heat adds to a drift that is neither the same there nor grows from 0 °C (own choice). */
const GROWTH_SD_DEG_C = 10;

/** A change of reading error at the zone's working temperature, by all that the log has. */
export interface ReadingError {
  readonly offsetDegC: number;
  readonly uncertaintyDegC: number;
}

/**
 * Puts the change seen cold and the one seen hot together. Three courses are weighed by how well each explains
 * both (Bayes; no figure is published for how often each is met): the offset is the same at both temperatures; it grows
 * from 0 °C, where a resistance with the wrong slope is still right; or it is whatever the duty says.
 *
 * @param growthRatio Working over room temperature in °C: how much larger an error is hot that grows from 0 °C. NaN = not known.
 */
export function readingErrorOf({ hot, cold }: ChangeFit, growthRatio: number): ReadingError {
  if (!isKnown(hot)) return isKnown(cold) ? coldAlone(cold) : { offsetDegC: 0, uncertaintyDegC: Infinity };
  const seenHot = hotErrorOf(hot);
  if (!isKnown(cold)) return seenHot;
  const same = plain(cold);
  const grown = { offsetDegC: growthRatio * cold.degC, uncertaintyDegC: growthRatio * cold.errorDegC };
  const other = { offsetDegC: seenHot.offsetDegC, uncertaintyDegC: GROWTH_SD_DEG_C };
  const courses = [
    { share: COURSE_SHARES.same * likeness(same, seenHot), told: together(same, seenHot) },
    {
      share: Number.isNaN(growthRatio) ? 0 : COURSE_SHARES.grown * likeness(grown, seenHot),
      told: together(grown, seenHot),
    },
    {
      share:
        COURSE_SHARES.other *
        density(seenHot.offsetDegC - cold.degC, Math.hypot(GROWTH_SD_DEG_C, seenHot.uncertaintyDegC)),
      told: together(other, seenHot),
    },
  ].filter(({ share }) => share > 0);
  return mixed(courses);
}

/**
 * What a change of the cold reading leaves open at the same temperature: peers that moved a little themselves, a drift
 * that went on after the last soak (32 made drifts: without it 11 lay within two standard deviations, most of the others
 * within a tenth of their size).
 */
const COLD_ERROR_SHARE = 0.1;
const COLD_ERROR_DEG_C = 0.1;

/** The change seen cold, for want of more; that it may grow from 0 °C is told by `grownOffsetDegC`. */
function coldAlone({ degC, errorDegC }: ChangeSize): ReadingError {
  return { offsetDegC: degC, uncertaintyDegC: Math.hypot(errorDegC, COLD_ERROR_DEG_C, COLD_ERROR_SHARE * degC) };
}

interface Course {
  readonly share: number;
  readonly told: ReadingError;
}

/** Mean and standard deviation of a mixture. */
function mixed(courses: readonly Course[]): ReadingError {
  const total = courses.reduce((sum, { share }) => sum + share, 0);
  const average = (of: (told: ReadingError) => number) =>
    courses.reduce((sum, { share, told }) => sum + (share / total) * of(told), 0);
  const offsetDegC = average((told) => told.offsetDegC);
  const square = average((told) => told.uncertaintyDegC ** 2 + (told.offsetDegC - offsetDegC) ** 2);
  return { offsetDegC, uncertaintyDegC: Math.sqrt(square) };
}

/** How well what is expected fits what the duty shows. */
function likeness(expected: ReadingError, seen: ReadingError): number {
  return density(seen.offsetDegC - expected.offsetDegC, Math.hypot(expected.uncertaintyDegC, seen.uncertaintyDegC));
}

function together(a: ReadingError, b: ReadingError): ReadingError {
  const [weightA, weightB] = [1 / a.uncertaintyDegC ** 2, 1 / b.uncertaintyDegC ** 2];
  return {
    offsetDegC: (weightA * a.offsetDegC + weightB * b.offsetDegC) / (weightA + weightB),
    uncertaintyDegC: 1 / Math.sqrt(weightA + weightB),
  };
}

/** The change seen hot as reading error, neighbours taken into account. */
function hotErrorOf({ degC, errorDegC }: ChangeSize): ReadingError {
  const offsetDegC = degC / (1 + NEIGHBOUR_SHARE);
  return { offsetDegC, uncertaintyDegC: Math.hypot(errorDegC, DUTY_SCALE_ERROR_SHARE * offsetDegC) };
}

function isKnown(size: ChangeSize | null): size is ChangeSize {
  return size !== null && Number.isFinite(size.errorDegC);
}

const plain = ({ degC, errorDegC }: ChangeSize): ReadingError => ({ offsetDegC: degC, uncertaintyDegC: errorDegC });

function density(value: number, sd: number): number {
  return Math.exp(-0.5 * (value / sd) ** 2) / sd + 1e-300;
}

/** Working temperature of the zone where its duty is known, else NaN. */
export function workingDegC(evidence: Evidence, change: ZoneChange): number {
  return change.duty ? change.duty.spanDegC + assumedRoomOf(evidence) : NaN;
}

/**
 * How much larger an error that grows from 0 °C is at the working temperature than cold; NaN where either is not known.
 *
 * @param heldDegC Working temperature where the duty does not tell it; NaN = not known.
 */
export function growthRatioOf(evidence: Evidence, change: ZoneChange, heldDegC: number): number {
  const roomDegC = median(change.soaks.map((soak) => soak.roomDegC));
  const working = workingDegC(evidence, change);
  const ratio = (Number.isNaN(working) ? heldDegC : working) / roomDegC;
  // Near 0 °C the cold reading says nothing of the slope.
  return roomDegC >= LEAST_ROOM_DEG_C && ratio >= 1 ? ratio : NaN;
}

const LEAST_ROOM_DEG_C = 5;

/** The better explained of ramp and step; null where neither could be tried. */
export function betterFit({ ramp, step }: ZoneChange): ChangeFit | null {
  if (!ramp || !step) return ramp ?? step;
  return ramp.gain >= step.gain ? ramp : step;
}

/**
 * Load that differs between zones leaves this share of the duty unexplained (own choice). A new product comes at once,
 * so a step must be larger than a ramp.
 */
const UNEXPLAINED_RAMP_SHARE = 0.06;
const UNEXPLAINED_STEP_SHARE = 0.08;
/** Squared standard deviations that a change must explain when the duty alone shows it (12 sigma, own choice). */
const ALONE_GAIN = 150;
/**
 * A duty that rose by this share of itself is lost heat: a sensor that reads so low would have scorched the product
 * (own choice).
 */
const LOST_HEAT_SHARE = 0.4;
/** A cold change that explains this much (squared standard deviations) stands by a hot one of the same sign. */
const AGREEING_GAIN = 15;
/**
 * A sensor whose error grows with temperature still shows, cold, about (room ÷ working temperature) of it: a tenth.
 * Less than half of that means that the duty changed and the sensor did not.
 */
const LEAST_COLD_SHARE = 0.05;
/** A cold change this clear (squared standard deviations) is one, whatever the duty shows beside it: seven sigma. */
const CLEAR_COLD_GAIN = 50;
/** … and counts from here on: what class A allows a sensor at 20 °C, 0.15 + 0.002·20 (IEC 60751); draughts stay below. */
const SMALLEST_CLEAR_DEG_C = 0.19;

/** Whether a cold change is large enough to be one of the sensor: `smallestDegC`, or less where it is very clear. */
export function isColdLarge({ degC, gain }: ChangeSize, smallestDegC: number): boolean {
  return Math.abs(degC) >= (gain >= CLEAR_COLD_GAIN ? Math.min(smallestDegC, SMALLEST_CLEAR_DEG_C) : smallestDegC);
}

/** Whether the soaks show a change together with the duty. */
export function isAgreed({ hot, cold }: ChangeFit): boolean {
  return hot !== null && cold !== null && cold.gain >= AGREEING_GAIN && hot.degC * cold.degC > 0;
}

/** Whether the soaks are sure enough to say that the sensor itself did not change although the duty did. */
export function isSensorUnchanged({ hot, cold }: ChangeFit): boolean {
  if (!hot || !cold || !isKnown(cold) || cold.gain >= CLEAR_COLD_GAIN) return false;
  const share = LEAST_COLD_SHARE * Math.abs(hot.degC);
  return Math.abs(cold.degC) + cold.errorDegC < share;
}

/** Whether a change of duty is beyond what load and room leave unexplained. */
export function isDutyBeyondLoad(fit: ChangeFit, { duty }: ZoneChange, smallestDegC: number): boolean {
  if (!fit.hot || !duty) return false;
  const share = typeof fit.shape === 'number' ? UNEXPLAINED_RAMP_SHARE : UNEXPLAINED_STEP_SHARE;
  const least = isAgreed(fit) ? smallestDegC : Math.max(smallestDegC, share * duty.spanDegC);
  if (!isAgreed(fit) && fit.hot.gain < ALONE_GAIN) return false;
  // Beyond the whole span the model has left its ground: an output at its stop, a set point of its own.
  return Math.abs(fit.hot.degC) >= least && Math.abs(fit.hot.degC) < duty.spanDegC;
}

/** The smallest change of the reading that duty alone can show; Infinity where it could show none. */
export function smallestHotChangeDegC(change: ZoneChange, shape: 'step' | 'ramp', smallestDegC: number): number {
  const { duty } = change;
  const fit = change[shape];
  if (!duty || !fit?.hot) return Infinity;
  const share = shape === 'ramp' ? UNEXPLAINED_RAMP_SHARE : UNEXPLAINED_STEP_SHARE;
  const errorDegC = isKnown(fit.hot) ? fit.hot.errorDegC : 0;
  return Math.max(smallestDegC, share * duty.spanDegC, Math.sqrt(ALONE_GAIN) * errorDegC);
}

/**
 * Whether the duty rose by more than any reading error could ask for, bit by bit and with sensor and soaks as they
 * were: an ageing element gives less heat for the same duty.
 */
export function isHeatLost(fit: ChangeFit, { duty }: ZoneChange): boolean {
  if (!fit.hot || !duty || typeof fit.shape !== 'number' || isAgreed(fit)) return false;
  return fit.hot.gain >= ALONE_GAIN / 3 && -fit.hot.degC >= LOST_HEAT_SHARE * duty.spanDegC;
}

/** Facts that both shapes of change share. */
export function changeFacts(fit: ChangeFit, growthRatio: number): Record<string, number> {
  const { offsetDegC, uncertaintyDegC } = readingErrorOf(fit, growthRatio);
  const { hot, cold } = fit;
  return {
    offsetDegC,
    uncertaintyDegC,
    hotOffsetDegC: hot && isKnown(hot) ? hotErrorOf(hot).offsetDegC : NaN,
    hotErrorDegC: hot?.errorDegC ?? NaN,
    hotZScoreRatio: hot ? Math.sqrt(hot.gain) : NaN,
    coldOffsetDegC: cold && isKnown(cold) ? cold.degC : NaN,
    coldErrorDegC: cold?.errorDegC ?? NaN,
    // Seen only cold, an error that grows from 0 °C is that much larger at work.
    grownOffsetDegC: isKnown(hot) || !isKnown(cold) ? NaN : growthRatio * cold.degC,
    coldZScoreRatio: cold ? Math.sqrt(cold.gain) : NaN,
    coldShare: hot && cold && isKnown(hot) && isKnown(cold) && hot.gain > 9 ? cold.degC / hot.degC : NaN,
    zScoreRatio: Math.sqrt(fit.gain),
    onsetUncertaintyHours: (fit.onsetHighMs - fit.onsetLowMs) / 2 / HOUR_MS,
  };
}
