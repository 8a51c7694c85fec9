import type { Random } from '../random.js';
import { Fault, type Effects, type FaultPlan, type Surroundings } from './fault.js';

const hourS = 3600;
const dayS = 86400;

/** Chance of at least one event in a step, for a rate per hour. */
function chanceInStep(perHour: number, stepS: number): number {
  return 1 - Math.exp((-perHour * stepS) / hourS);
}

/** Short opens that start by chance and last a drawn time; several of them may follow as a burst. */
class ShortOpens {
  readonly #random: Random;
  readonly #stepS: number;
  #openUntilS = -Infinity;
  #burstLeft = 0;
  #nextBurstS = Infinity;

  constructor(random: Random, stepS: number) {
    this.#random = random;
    this.#stepS = stepS;
  }

  /** @returns true while open */
  step(nowS: number, perHour: number, meanOpenS: number, burstMean: number): boolean {
    if (nowS < this.#openUntilS) return true;
    const isDue = this.#burstLeft > 0 && nowS >= this.#nextBurstS;
    const isNew = perHour > 0 && this.#random.chance(chanceInStep(perHour, this.#stepS));
    if (!isDue && !isNew) return false;
    if (isDue) this.#burstLeft--;
    else this.#burstLeft = Math.floor(this.#random.exponential(burstMean));
    const lastS = Math.max(this.#stepS, this.#random.exponential(meanOpenS));
    this.#openUntilS = nowS + lastS;
    this.#nextBurstS = this.#openUntilS + 1 + this.#random.exponential(12);
    return true;
  }
}

/** Element open for good, with or without hours of short opens before. The machine's movement plays no part. */
export class SensorOpen extends Fault {
  readonly #opens: ShortOpens;

  constructor(plan: FaultPlan, stepS: number, random: Random) {
    super(plan, stepS);
    this.#opens = new ShortOpens(random, stepS);
  }

  protected override act({ nowS }: Surroundings, effects: Effects): void {
    const warningS = this.number('warningS');
    const sinceS = nowS - this.plan.onsetS;
    if (sinceS >= warningS) return this.open(true, nowS, effects);
    const perHour = this.number('warningPerHour') * (0.2 + (1.6 * sinceS) / Math.max(1, warningS));
    this.open(this.#opens.step(nowS, perHour, this.number('meanOpenS'), 0.5), nowS, effects);
  }
}

/** A crack that opens near working temperature and closes on cooling. */
export class SensorHotOpen extends Fault {
  readonly #random: Random;
  #isOpen = false;
  #closeBelowDegC = 0;
  #closeAtS = 0;

  constructor(plan: FaultPlan, stepS: number, random: Random) {
    super(plan, stepS);
    this.#random = random;
  }

  protected override act({ nowS, sensorDegC, workDegC }: Surroundings, effects: Effects): void {
    const growth = 1 + (this.number('growthPerDay') * (nowS - this.plan.onsetS)) / dayS;
    const opensAboveDegC = workDegC - this.number('belowWorkK') * growth;
    if (this.#isOpen) {
      if (sensorDegC < this.#closeBelowDegC || nowS > this.#closeAtS) this.#isOpen = false;
    } else if (
      sensorDegC > opensAboveDegC &&
      this.#random.chance(chanceInStep(this.number('perHotHour') * growth, this.stepS))
    ) {
      this.#isOpen = true;
      this.#closeBelowDegC = sensorDegC - this.#random.uniform(0.3, 1) * this.number('closesAfterK');
      this.#closeAtS = nowS + this.stepS + this.#random.exponential(this.number('meanOpenS'));
    }
    this.open(this.#isOpen, nowS, effects);
  }
}

/** A cable that opens while the machine moves it: bursts, more each day. May end in a clean break. */
export class WireFlexOpen extends Fault {
  readonly #opens: ShortOpens;
  readonly #random: Random;
  #contactUntilS = -Infinity;
  #contactOhm = 0;

  constructor(plan: FaultPlan, stepS: number, random: Random) {
    super(plan, stepS);
    this.#random = random;
    this.#opens = new ShortOpens(random, stepS);
  }

  protected override act({ nowS, isRunning }: Surroundings, effects: Effects): void {
    const sinceS = nowS - this.plan.onsetS;
    const isBroken = sinceS >= this.number('breaksAfterS');
    if (isBroken) return this.open(true, nowS, effects);
    const growth = Math.min(30, Math.exp((this.number('growthPerDay') * sinceS) / dayS));
    const perHour = this.number('perRunningHour') * growth * (isRunning ? 1 : this.number('stoppedShare'));
    this.open(this.#opens.step(nowS, perHour, this.number('meanOpenS'), this.number('burstMean')), nowS, effects);
    this.#strands(nowS, perHour, effects);
  }

  /** Strands that only just touch: ohms for seconds, beside the full opens. */
  #strands(nowS: number, perHour: number, effects: Effects): void {
    const perHourOhm = perHour * this.number('strandShare');
    if (nowS >= this.#contactUntilS && this.#random.chance(chanceInStep(perHourOhm, this.stepS))) {
      this.#contactUntilS = nowS + this.stepS + this.#random.exponential(4);
      this.#contactOhm = this.#random.logUniform(0.5, 30);
    }
    if (nowS < this.#contactUntilS) effects.seriesOhm += this.#contactOhm;
  }
}

/**
 * Several zones of one card at the same second: every zone's fault follows the same seeded list of moments. Where only
 * some channels drop out at a time, each zone takes part in a share of them.
 */
export class CardBlips extends Fault {
  readonly #starts: number[] = [];
  readonly #ends: number[] = [];
  #place = 0;

  constructor(plan: FaultPlan, stepS: number, shared: Random, own: Random, endS: number) {
    super(plan, stepS);
    const stopS = plan.fixedS ?? endS;
    let nowS = plan.onsetS;
    while (nowS < stopS) {
      const burst = 1 + Math.floor(shared.exponential(this.number('burstMean')));
      for (let i = 0; i < burst; i++) {
        const lastS = Math.max(stepS, shared.exponential(this.number('meanOpenS')));
        if (own.chance(this.number('zoneShare'))) {
          this.#starts.push(nowS);
          this.#ends.push(nowS + lastS);
        }
        nowS += lastS + stepS + shared.exponential(30);
      }
      nowS += shared.exponential(hourS / this.number('perHour'));
    }
  }

  protected override act({ nowS }: Surroundings, effects: Effects): void {
    while (this.#place < this.#ends.length && nowS >= (this.#ends[this.#place] ?? Infinity)) this.#place++;
    this.open(nowS >= (this.#starts[this.#place] ?? Infinity), nowS, effects);
  }
}
