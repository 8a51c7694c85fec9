import type { AlarmParameters } from './plant-parameters.js';

export type MadeAlarmKind = 'input' | 'low' | 'high' | 'machine';

/** One alarm as raised, on the true clock of the log. */
export interface MadeAlarm {
  readonly kind: MadeAlarmKind;
  /** −1 = an alarm of the machine. */
  readonly zone: number;
  readonly machine: number;
  /** For a machine alarm: which of the format's stop texts. */
  readonly reason: number;
  readonly startS: number;
  /** NaN = still standing at the end. */
  endS: number;
  acknowledgedS: number;
}

/** One condition with on-delay; remembers since when it holds. */
class Condition {
  sinceS = NaN;
  alarm: MadeAlarm | null = null;

  /** @returns 'raised', 'returned' or null */
  step(nowS: number, holds: boolean, returns: boolean, delayS: number): 'raised' | 'returned' | null {
    if (this.alarm) return returns ? 'returned' : null;
    if (!holds) {
      this.sinceS = NaN;
      return null;
    }
    if (Number.isNaN(this.sinceS)) this.sinceS = nowS;
    return nowS - this.sinceS >= delayS ? 'raised' : null;
  }
}

/** Input, low and high alarm of one zone: limits, delays and a return band, from the reading alone. */
export class ZoneAlarms {
  readonly #parameters: AlarmParameters;
  readonly #zone: number;
  readonly #machine: number;
  readonly #log: MadeAlarm[];
  readonly #input = new Condition();
  readonly #low = new Condition();
  readonly #high = new Condition();
  #hasBeenInBand = false;

  constructor(parameters: AlarmParameters, zone: number, machine: number, log: MadeAlarm[]) {
    this.#parameters = parameters;
    this.#zone = zone;
    this.#machine = machine;
    this.#log = log;
  }

  get inputSinceS(): number {
    return this.#input.alarm?.startS ?? NaN;
  }

  get deviationSinceS(): number {
    return this.#low.alarm?.startS ?? this.#high.alarm?.startS ?? NaN;
  }

  /** @param readingDegC NaN = input failed */
  step(nowS: number, readingDegC: number, setpointDegC: number, isOn: boolean): void {
    const isFailed = Number.isNaN(readingDegC);
    const { lowK, highK, deviationDelayS, inputDelayS, waitsForBand } = this.#parameters;
    const awayK = readingDegC - setpointDegC;
    if (!isOn) this.#hasBeenInBand = false;
    else if (Math.abs(awayK) < 3) this.#hasBeenInBand = true;
    const watches = isOn && !isFailed && (this.#hasBeenInBand || !waitsForBand);
    this.#take(this.#input, 'input', this.#input.step(nowS, isFailed, !isFailed, inputDelayS), nowS);
    this.#take(
      this.#low,
      'low',
      this.#low.step(nowS, watches && awayK < -lowK, !watches || awayK > 1 - lowK, deviationDelayS),
      nowS,
    );
    this.#take(
      this.#high,
      'high',
      this.#high.step(nowS, watches && awayK > highK, !watches || awayK < highK - 1, deviationDelayS),
      nowS,
    );
  }

  /** A new set point starts a new wait, as on switching on. */
  setpointMoved(): void {
    this.#hasBeenInBand = false;
  }

  #take(condition: Condition, kind: MadeAlarmKind, change: 'raised' | 'returned' | null, nowS: number): void {
    if (change === 'raised') {
      condition.alarm = {
        kind,
        zone: this.#zone,
        machine: this.#machine,
        reason: 0,
        startS: nowS,
        endS: NaN,
        acknowledgedS: NaN,
      };
      this.#log.push(condition.alarm);
    } else if (change === 'returned' && condition.alarm) {
      condition.alarm.endS = nowS;
      condition.alarm = null;
      condition.sinceS = NaN;
    }
  }
}
