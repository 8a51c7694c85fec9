export interface ThermalParameters {
  /** Mass × specific heat of the bar, J/K. */
  readonly bodyJPerK: number;
  /** Heat capacity of the heater itself, J/K. */
  readonly heaterJPerK: number;
  /** Contact between heater and bar, W/K. */
  readonly contactWPerK: number;
  /** Heat loss to the air, W/K. */
  readonly lossWPerK: number;
  /** Loss grows with temperature (radiation): loss·(1 + growth·(T − air)). */
  readonly lossGrowthPerK: number;
  readonly powerW: number;
  /** First-order lag of the sensor in its bore, seconds. */
  readonly sensorLagS: number;
}

/**
 * Heater and bar as two lumped bodies, the sensor as a first-order lag on the bar.
 * Energy balance of a lumped body: m·c·dT/dt = heat in − heat out (textbook; valid for a Biot number under 0.1).
 * The heater node is stepped implicitly, so no step length makes it unstable and no heat is lost on the way.
 */
export class ThermalZone {
  heaterDegC: number;
  bodyDegC: number;
  sensorDegC: number;
  readonly #parameters: ThermalParameters;
  readonly #stepS: number;
  readonly #sensorShare: number;

  constructor(parameters: ThermalParameters, stepS: number, startDegC: number) {
    this.#parameters = parameters;
    this.#stepS = stepS;
    this.#sensorShare = parameters.sensorLagS > 0 ? 1 - Math.exp(-stepS / parameters.sensorLagS) : 1;
    this.heaterDegC = startDegC;
    this.bodyDegC = startDegC;
    this.sensorDegC = startDegC;
  }

  /**
   * @param heatW electrical power into the heater
   * @param airDegC air around this zone
   * @param draught factor on the loss (1 = still air)
   * @param otherW heat from neighbours less heat drawn by the product
   */
  step(heatW: number, airDegC: number, draught: number, otherW: number): void {
    const { bodyJPerK, heaterJPerK, contactWPerK, lossWPerK, lossGrowthPerK } = this.#parameters;
    const pull = (this.#stepS * contactWPerK) / heaterJPerK;
    this.heaterDegC = (this.heaterDegC + (this.#stepS * heatW) / heaterJPerK + pull * this.bodyDegC) / (1 + pull);
    const fromHeaterW = contactWPerK * (this.heaterDegC - this.bodyDegC);
    const aboveAirK = this.bodyDegC - airDegC;
    const lossW = lossWPerK * draught * aboveAirK * (1 + lossGrowthPerK * Math.max(0, aboveAirK));
    this.bodyDegC += (this.#stepS * (fromHeaterW + otherW - lossW)) / bodyJPerK;
    this.sensorDegC += this.#sensorShare * (this.bodyDegC - this.sensorDegC);
  }
}
