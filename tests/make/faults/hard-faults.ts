import type { Random } from '../random.js';
import { Fault, type Effects, type FaultPlan, type Surroundings } from './fault.js';

const hourS = 3600;

/** Two leads touch. */
export class WireShort extends Fault {
  readonly #random: Random;
  #isShort = false;

  constructor(plan: FaultPlan, stepS: number, random: Random) {
    super(plan, stepS);
    this.#random = random;
  }

  protected override act({ nowS, isRunning }: Surroundings, effects: Effects): void {
    const warningS = this.number('warningS');
    if (nowS - this.plan.onsetS >= warningS) this.#isShort = true;
    else if (this.#isShort) this.#isShort = !this.#random.chance(this.stepS / 5);
    else this.#isShort = isRunning && this.#random.chance((this.number('warningPerHour') * this.stepS) / hourS);
    if (!this.#isShort) return;
    this.acted(nowS);
    effects.isShort = true;
  }
}

/** Somebody put the two leads of a thermocouple back the wrong way round. */
export class LeadsSwapped extends Fault {
  protected override act({ nowS, isHeating }: Surroundings, effects: Effects): void {
    if (isHeating) this.acted(nowS);
    effects.areLeadsSwapped = true;
  }
}

/** One reading that does not move at all, for good or, `again-and-again`, for minutes to hours at a time. */
export class ChannelFrozen extends Fault {
  readonly #random: Random;
  #isFrozen = true;

  constructor(plan: FaultPlan, stepS: number, random: Random) {
    super(plan, stepS);
    this.#random = random;
  }

  protected override act({ nowS }: Surroundings, effects: Effects): void {
    if (this.plan.shape === 'again-and-again') {
      const meanS = this.number(this.#isFrozen ? 'meanFrozenS' : 'meanAliveS');
      if (this.#random.chance(this.stepS / meanS)) this.#isFrozen = !this.#isFrozen;
    }
    if (!this.#isFrozen) return;
    this.acted(nowS);
    effects.isFrozen = true;
  }
}

/** Heater open, part of it gone, or ageing; `coming-and-going` is its loose terminal. */
export class HeaterLoss extends Fault {
  readonly #random: Random;
  #isAway = true;

  constructor(plan: FaultPlan, stepS: number, random: Random) {
    super(plan, stepS);
    this.#random = random;
  }

  protected override act({ nowS, isHeating }: Surroundings, effects: Effects): void {
    const left = this.number('shareLeft');
    const spanS = this.number('spanS');
    const course = spanS > 0 ? Math.min(1, (nowS - this.plan.onsetS) / spanS) : 1;
    if (this.plan.shape === 'coming-and-going' && this.#random.chance(this.stepS / this.number('flipS')))
      this.#isAway = !this.#isAway;
    if (!this.#isAway) return;
    if (isHeating) this.acted(nowS);
    effects.heaterShare *= 1 - (1 - left) * course;
  }
}

/** Contactor welded or solid-state relay shorted: full power whatever the controller asks. */
export class RelayStuck extends Fault {
  readonly #random: Random;
  #isStuck = true;

  constructor(plan: FaultPlan, stepS: number, random: Random) {
    super(plan, stepS);
    this.#random = random;
  }

  protected override act({ nowS, isHeating }: Surroundings, effects: Effects): void {
    if (this.plan.shape === 'sticking' && this.#random.chance(this.stepS / this.number('flipS')))
      this.#isStuck = !this.#isStuck;
    if (!this.#isStuck) return;
    if (isHeating) this.acted(nowS);
    effects.isStuckOn = true;
  }
}

/** The tag in the recorder, not the zone: acts in the recorder, so nothing happens here. */
export class RecordingOnly extends Fault {
  protected override act({ nowS }: Surroundings): void {
    this.acted(nowS);
  }
}
