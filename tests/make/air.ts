import { weekdayAt } from './machine-plan.js';
import type { PlantParameters } from './plant-parameters.js';
import type { Random } from './random.js';

const dayS = 86400;
/** How long the room remembers an opened gate or a cloud, seconds (common practice). */
const wanderS = 5400;

/** Air of the room: day and night, weekend, a slow wander, a trend over the weeks. */
export class RoomAir {
  degC: number;
  readonly #air: PlantParameters['air'];
  readonly #stepS: number;
  readonly #random: Random;
  readonly #firstWeekday: number;
  #wanderK = 0;

  constructor({ air, startMs }: Pick<PlantParameters, 'air' | 'startMs'>, stepS: number, random: Random) {
    this.#air = air;
    this.#stepS = stepS;
    this.#random = random;
    this.#firstWeekday = weekdayAt(startMs);
    this.degC = air.meanDegC;
  }

  step(nowS: number): void {
    const { meanDegC, daySwingK, weekendDropK, wanderK, trendKPerDay } = this.#air;
    const day = nowS / dayS;
    const weekday = (this.#firstWeekday + Math.floor(day)) % 7;
    // Warmest in the middle of the afternoon.
    const swingK = daySwingK * Math.cos(2 * Math.PI * (day - 15 / 24));
    const share = this.#stepS / wanderS;
    this.#wanderK += -share * this.#wanderK + wanderK * Math.sqrt(2 * share) * this.#random.gauss();
    const weekendK = weekday === 0 || weekday === 6 ? weekendDropK : 0;
    this.degC = meanDegC + swingK + this.#wanderK - weekendK + trendKPerDay * day;
  }
}
