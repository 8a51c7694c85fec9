export interface ControllerParameters {
  readonly kind: 'pid' | 'on-off' | 'time-proportioned';
  readonly gainPercentPerK: number;
  readonly integralS: number;
  readonly derivativeS: number;
  readonly maxPercent: number;
  /** On-off only: total width of the switching band. */
  readonly hysteresisK: number;
  /** Time-proportioned only: length of one on-off cycle. */
  readonly cycleS: number;
  /** What the output goes to when the input has failed: nothing, or the mean of the last minutes. */
  readonly onInputFail: 'zero' | 'hold-mean';
  /** Time-proportioned only: the log holds the relay (0 or 100) instead of the demand. */
  readonly logsRelay: boolean;
}

/** The controller: sees only the reading, never the true temperature. */
export class TemperatureController {
  /** 0 to 100, what a log would hold. */
  outputPercent = 0;
  readonly #parameters: ControllerParameters;
  readonly #stepS: number;
  /** Whole steps, or the mean power would not be the demand. */
  readonly #cycleS: number;
  #integralPercent = 0;
  #filteredDegC = NaN;
  #meanPercent = 0;
  #cyclePlaceS = 0;
  #isOn = false;

  constructor(parameters: ControllerParameters, stepS: number) {
    this.#parameters = parameters;
    this.#stepS = stepS;
    this.#cycleS = Math.max(1, Math.round(parameters.cycleS / stepS)) * stepS;
  }

  /** A restart forgets the integral and the switching state. */
  reset(): void {
    this.#integralPercent = 0;
    this.#filteredDegC = NaN;
    this.#isOn = false;
    this.outputPercent = 0;
  }

  /**
   * One control step.
   * @param readingDegC NaN = the input has failed
   * @returns share of full power switched on during this step, 0 to 1
   */
  step(readingDegC: number, setpointDegC: number, isEnabled: boolean): number {
    if (!isEnabled) {
      this.reset();
      return 0;
    }
    if (Number.isNaN(readingDegC)) return this.#failed();
    const share =
      this.#parameters.kind === 'on-off'
        ? this.#onOff(readingDegC, setpointDegC)
        : this.#pid(readingDegC, setpointDegC);
    this.#meanPercent += (this.#stepS / 600) * (share * 100 - this.#meanPercent);
    return share;
  }

  #failed(): number {
    this.#filteredDegC = NaN;
    this.#integralPercent = this.#meanPercent;
    this.outputPercent = this.#parameters.onInputFail === 'zero' ? 0 : this.#meanPercent;
    return this.outputPercent / 100;
  }

  #onOff(readingDegC: number, setpointDegC: number): number {
    const half = this.#parameters.hysteresisK / 2;
    if (readingDegC < setpointDegC - half) this.#isOn = true;
    else if (readingDegC > setpointDegC + half) this.#isOn = false;
    this.outputPercent = this.#isOn ? this.#parameters.maxPercent : 0;
    return this.outputPercent / 100;
  }

  #pid(readingDegC: number, setpointDegC: number): number {
    const { gainPercentPerK, integralS, derivativeS, maxPercent } = this.#parameters;
    const errorK = setpointDegC - readingDegC;
    const previousDegC = Number.isNaN(this.#filteredDegC) ? readingDegC : this.#filteredDegC;
    this.#filteredDegC = previousDegC + 0.5 * (readingDegC - previousDegC);
    const slopeK = (this.#filteredDegC - previousDegC) / this.#stepS;
    const raw = gainPercentPerK * (errorK - derivativeS * slopeK) + this.#integralPercent;
    const percent = Math.min(maxPercent, Math.max(0, raw));
    // Integrate only where it does not push further into a limit (anti-windup by clamping).
    if (raw === percent || raw > percent === errorK < 0) {
      this.#integralPercent += (gainPercentPerK * errorK * this.#stepS) / integralS;
      this.#integralPercent = Math.min(maxPercent, Math.max(-10, this.#integralPercent));
    }
    return this.#parameters.kind === 'pid' ? this.#proportional(percent) : this.#relay(percent);
  }

  #proportional(percent: number): number {
    this.outputPercent = percent;
    return percent / 100;
  }

  #relay(percent: number): number {
    const { logsRelay } = this.#parameters;
    const fromS = this.#cyclePlaceS;
    const onS = (percent / 100) * this.#cycleS;
    const share = Math.min(1, Math.max(0, onS - fromS) / this.#stepS);
    this.#cyclePlaceS = fromS + 1.5 * this.#stepS > this.#cycleS ? 0 : fromS + this.#stepS;
    this.outputPercent = logsRelay ? (share >= 0.5 ? 100 : 0) : percent;
    return share;
  }
}
