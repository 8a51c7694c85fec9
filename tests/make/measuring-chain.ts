import type { Effects } from './faults/fault.js';
import type { CardParameters, SensorParameters } from './plant-parameters.js';
import { platinumDegC, platinumOhm } from './platinum.js';
import type { Random } from './random.js';

/** Ohms of contact resistance that a circuit shows: two-wire all, three-wire by leg, four-wire next to nothing. */
function seenOhm({ wires, badLeg }: SensorParameters, seriesOhm: number): number {
  if (wires === 2) return seriesOhm;
  if (wires === 3) return badLeg * seriesOhm;
  return 0.01 * seriesOhm;
}

/** Input current times lead resistance moves a thermocouple reading by about this much (common practice: negligible). */
const thermocoupleDegCPerOhm = 0.01;
/** Loop resistance of a thermocouple with its extension cable, ohm (common practice); a wet path divides with it. */
const thermocoupleLoopOhm = 150;

/** Lower end of the card's range. */
const BOTTOM_DEG_C = -100;

/** Element, leads and input card: true temperature in, reading out. */
export class MeasuringChain {
  /** What the card shows; NaN while it shows a code. */
  readingDegC = NaN;
  isAboveScale = false;
  isBelowScale = false;
  /** What faults of sensor, wiring and card add to this reading, °C; 0 while a code is shown. */
  faultShiftDegC = 0;
  readonly #sensor: SensorParameters;
  readonly #card: CardParameters;
  readonly #random: Random;
  readonly #filterShare: number;
  readonly #rampShare: number;
  readonly #r0Ohm: number;
  readonly #stepS: number;
  #filteredDegC = NaN;
  #offsetDegC: number;
  /** How long the input has been open, in steps of its own. */
  #failedS = 0;

  constructor(sensor: SensorParameters, card: CardParameters, stepS: number, random: Random) {
    this.#sensor = sensor;
    this.#card = card;
    this.#stepS = stepS;
    this.#random = random;
    this.#filterShare = card.filterS > 0 ? 1 - Math.exp(-stepS / card.filterS) : 1;
    this.#rampShare = card.openRampS > 0 ? 1 - Math.exp(-stepS / card.openRampS) : 1;
    this.#r0Ohm = sensor.kind === 'pt100' ? 100 : sensor.kind === 'pt1000' ? 1000 : 0;
    this.#offsetDegC = sensor.offsetDegC;
  }

  /** A new sensor starts with its own small offset. */
  replaceSensor(): void {
    this.#offsetDegC = this.#sensor.spareOffsetDegC;
  }

  step(sensorDegC: number, terminalDegC: number, effects: Effects): void {
    this.faultShiftDegC = 0;
    if (effects.isFrozen && !Number.isNaN(this.readingDegC)) return;
    if (effects.isOpen) return this.#failed(this.#card.opensLow === effects.opensLow);
    const { gainError, noiseDegC } = this.#sensor;
    const gauss = this.#random.gauss();
    const soundDegC = sensorDegC * (1 + gainError) + this.#offsetDegC + noiseDegC * gauss;
    const elementDegC =
      soundDegC + sensorDegC * effects.gainError + effects.offsetDegC + effects.extraNoiseDegC * gauss;
    const circuitDegC = this.#circuit(elementDegC, terminalDegC, effects);
    if (circuitDegC === Infinity) return this.#failed(true);
    if (circuitDegC === -Infinity) return this.#failed(false);
    this.#good(circuitDegC + effects.cardOffsetDegC);
    this.faultShiftDegC = circuitDegC + effects.cardOffsetDegC - soundDegC;
  }

  /** What leads and card make of the element; ±Infinity = outside what the card can read. */
  #circuit(elementDegC: number, terminalDegC: number, effects: Effects): number {
    if (this.#r0Ohm === 0) return this.#thermocouple(elementDegC, terminalDegC, effects);
    if (effects.isShort) return -Infinity;
    if (effects.seriesOhm === 0 && effects.shuntSiemens === 0) return elementDegC;
    return this.#platinum(elementDegC, effects);
  }

  #platinum(elementDegC: number, { seriesOhm, shuntSiemens }: Effects): number {
    const elementOhm = platinumOhm(elementDegC, this.#r0Ohm);
    const ohm = elementOhm / (1 + elementOhm * shuntSiemens) + seenOhm(this.#sensor, seriesOhm);
    const degC = ohm < 0.02 * this.#r0Ohm ? -Infinity : platinumDegC(ohm, this.#r0Ohm);
    return degC > this.#card.rangeTopDegC || Number.isNaN(degC) ? Infinity : degC;
  }

  #thermocouple(tipDegC: number, terminalDegC: number, effects: Effects): number {
    const aboveK = tipDegC - terminalDegC;
    // Swapped leads give the voltage the other sign; what lies below the card's range is a code.
    if (effects.areLeadsSwapped) return terminalDegC - aboveK > BOTTOM_DEG_C ? terminalDegC - aboveK : -Infinity;
    // A short makes a new junction on the way: it reads the place of the short.
    if (effects.isShort) return terminalDegC + this.#card.shortPlace * aboveK;
    const wetK = aboveK * Math.min(0.6, thermocoupleLoopOhm * effects.shuntSiemens);
    return tipDegC - wetK + thermocoupleDegCPerOhm * effects.seriesOhm;
  }

  #good(degC: number): void {
    this.#failedS = 0;
    const isBack = this.isAboveScale || this.isBelowScale;
    this.isAboveScale = false;
    this.isBelowScale = false;
    if (Number.isNaN(this.#filteredDegC) || (isBack && !this.#card.settlesAfterOpen)) this.#filteredDegC = degC;
    else this.#filteredDegC += this.#filterShare * (degC - this.#filteredDegC);
    const { resolutionDegC } = this.#card;
    this.readingDegC = Math.round(this.#filteredDegC / resolutionDegC) * resolutionDegC;
  }

  /** An open input climbs (or falls) to the end of its range, after a card's hold of the last value; then the code shows. */
  #failed(isUp: boolean): void {
    this.#failedS += this.#stepS;
    if (this.#failedS <= this.#card.holdsLastS && !Number.isNaN(this.readingDegC)) return;
    const endDegC = isUp ? this.#card.rangeTopDegC : BOTTOM_DEG_C;
    const fromDegC = Number.isNaN(this.#filteredDegC) ? endDegC : this.#filteredDegC;
    this.#filteredDegC = fromDegC + this.#rampShare * (endDegC * 1.05 - fromDegC);
    const isAtEnd = this.#rampShare === 1 || (isUp ? this.#filteredDegC > endDegC : this.#filteredDegC < endDegC);
    if (!isAtEnd) {
      this.readingDegC = this.#filteredDegC;
      return;
    }
    this.#filteredDegC = endDegC;
    this.readingDegC = NaN;
    this.isAboveScale = isUp;
    this.isBelowScale = !isUp;
  }
}
