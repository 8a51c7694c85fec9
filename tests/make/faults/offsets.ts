import type { Random } from '../random.js';
import { Fault, type Effects, type FaultPlan, type Surroundings } from './fault.js';

const hourS = 3600;
const dayS = 86400;

/** Share of the final size, 0 to 1, by course. `sinceS` from onset, `spanS` the time the course takes. */
function shareOfCourse(shape: string, sinceS: number, spanS: number): number {
  const place = Math.min(1, sinceS / spanS);
  if (shape === 'step') return 1;
  if (shape === 'settle') return 1 - Math.exp((-3 * sinceS) / spanS);
  if (shape === 'accelerating') return place * place;
  return place;
}

/** A reading that walks away from the truth: constant offset, or growing with temperature (`gain-…`). */
export class SensorDrift extends Fault {
  /** Reading minus truth at the working temperature, now. */
  driftDegC = 0;

  protected override act({ nowS, workDegC }: Surroundings, effects: Effects): void {
    const share = shareOfCourse(this.plan.shape.replace('gain-', ''), nowS - this.plan.onsetS, this.number('spanS'));
    this.driftDegC = share * this.number('finalDegC');
    if (Math.abs(this.driftDegC) > 0.05) this.acted(nowS);
    // Gain is counted from 0 °C, where a platinum curve with the wrong slope is still right.
    if (this.plan.shape.startsWith('gain-')) effects.gainError += this.driftDegC / Math.max(40, workDegC);
    else effects.offsetDegC += this.driftDegC;
  }
}

/** All zones of one card read high or low together. */
export class CardReference extends Fault {
  driftDegC = 0;

  protected override act({ nowS }: Surroundings, effects: Effects): void {
    const { shape, onsetS } = this.plan;
    const isAway = shape === 'come-and-go' && Math.sin(((nowS - onsetS) / this.number('spanS')) * 2 * Math.PI) < 0;
    const share = shape === 'come-and-go' ? 1 : shareOfCourse(shape, nowS - onsetS, this.number('spanS'));
    this.driftDegC = isAway ? 0 : share * this.number('finalDegC');
    if (Math.abs(this.driftDegC) > 0.05) this.acted(nowS);
    effects.cardOffsetDegC += this.driftDegC;
  }
}

/** Scatter that grows on one zone; `popcorn` jumps between two levels instead. */
export class SensorNoise extends Fault {
  readonly #random: Random;
  #isHigh = false;

  constructor(plan: FaultPlan, stepS: number, random: Random) {
    super(plan, stepS);
    this.#random = random;
  }

  protected override act({ nowS }: Surroundings, effects: Effects): void {
    const share = 0.2 + 0.8 * Math.min(1, (nowS - this.plan.onsetS) / this.number('spanS'));
    const sizeDegC = share * this.number('noiseDegC');
    this.acted(nowS);
    if (this.plan.shape !== 'popcorn') {
      effects.extraNoiseDegC += sizeDegC;
      return;
    }
    if (this.#random.chance((this.number('flipsPerHour') * this.stepS) / hourS)) this.#isHigh = !this.#isHigh;
    if (this.#isHigh) effects.offsetDegC += 2 * sizeDegC;
  }
}

/** Ohms that come and go in steps at a terminal or a crimp; `when-hot`, only where heat has opened it. */
export class WireContact extends Fault {
  readonly #random: Random;
  #isOn = false;
  #ohm = 0;
  steps = 0;
  onS = 0;

  constructor(plan: FaultPlan, stepS: number, random: Random) {
    super(plan, stepS);
    this.#random = random;
  }

  protected override act({ nowS, isRunning, sensorDegC, workDegC }: Surroundings, effects: Effects): void {
    if (this.plan.shape === 'when-hot' && sensorDegC < workDegC - this.number('belowWorkK')) return;
    const moves = isRunning ? 1 : this.number('stoppedShare');
    const growth = 1 + (this.number('growthPerDay') * (nowS - this.plan.onsetS)) / dayS;
    const meanS = this.#isOn
      ? this.number('meanOnS') / Math.max(0.2, moves)
      : hourS / (this.number('perHour') * growth * moves + 1e-9);
    if (this.#random.chance(1 - Math.exp(-this.stepS / meanS))) {
      this.#isOn = !this.#isOn;
      if (this.#isOn) this.#ohm = this.number('contactOhm') * this.#random.uniform(0.4, 1.6);
      this.steps++;
    }
    if (!this.#isOn) return;
    this.acted(nowS);
    this.onS += this.stepS;
    // A contact that moves is never quite steady.
    effects.seriesOhm += this.#ohm * (1 + 0.05 * this.#random.gauss());
  }
}

/** Water or a failed insulation: a path in parallel that dries out after each wash-down. */
export class WireWet extends Fault {
  readonly #random: Random;
  #siemens = 0;
  #wasWashing = false;
  #nextDampS = NaN;
  wettings = 0;

  constructor(plan: FaultPlan, stepS: number, random: Random) {
    super(plan, stepS);
    this.#random = random;
  }

  protected override act({ nowS, isWashing }: Surroundings, effects: Effects): void {
    this.#siemens *= Math.exp(-this.stepS / this.number('dryS'));
    if (this.#isWetting(nowS, isWashing)) {
      this.#siemens = this.#random.uniform(0.5, 1.3) / this.number('shuntOhm');
      this.wettings++;
      this.acted(nowS);
    }
    this.#wasWashing = isWashing;
    const creepingSiemens = this.plan.shape === 'creeping' ? this.#creep(nowS) : 0;
    effects.shuntSiemens += this.#siemens + creepingSiemens;
  }

  #isWetting(nowS: number, isWashing: boolean): boolean {
    if (this.plan.shape === 'creeping') return false;
    if (this.plan.shape === 'wash-down') return isWashing && !this.#wasWashing && this.#random.chance(0.85);
    if (Number.isNaN(this.#nextDampS)) this.#nextDampS = nowS + this.#random.uniform(0, dayS);
    if (nowS < this.#nextDampS) return false;
    this.#nextDampS = nowS + this.#random.uniform(0.5, 2) * dayS;
    return true;
  }

  /** Insulation that gets worse by the day. */
  #creep(nowS: number): number {
    this.acted(nowS);
    return Math.min(1, (nowS - this.plan.onsetS) / this.number('spanS')) / this.number('shuntOhm');
  }
}
