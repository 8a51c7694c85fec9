import type { MachineParameters, ShiftPattern } from './plant-parameters.js';
import type { Random } from './random.js';

const hourS = 3600;
const dayS = 86400;

export const planned = { off: 0, heating: 1, production: 2 } as const;

/** What a machine is meant to do, step by step, before any fault or stop. */
export interface MachinePlan {
  /** One of {@link planned} per step. */
  readonly state: Uint8Array;
  readonly washing: Uint8Array;
  readonly recipe: Uint8Array;
  readonly speed: Float32Array;
}

interface Stretch {
  readonly startS: number;
  readonly endS: number;
}

/** Weekday (0 = Sunday) of the local day that begins at `midnightMs`; noon is inside it in every time zone. */
export function weekdayAt(midnightMs: number): number {
  return new Date(midnightMs + 12 * hourS * 1000).getUTCDay();
}

/** Hours of production on one weekday (0 = Sunday) by shift pattern; local clock. */
function shiftHours(pattern: ShiftPattern, weekday: number): readonly (readonly [number, number])[] {
  const isWeekend = weekday === 0 || weekday === 6;
  if (pattern === '24x7') return [[0, 24]];
  if (pattern === '3shift6') return weekday === 0 ? [] : weekday === 1 ? [[6, 24]] : [[0, 24]];
  if (pattern === '3shift5') return isWeekend ? (weekday === 6 ? [[0, 6]] : []) : weekday === 1 ? [[6, 24]] : [[0, 24]];
  if (pattern === '2shift6') return weekday === 0 ? [] : [[6, 22]];
  if (isWeekend) return [];
  if (pattern === '2shift') return [[6, 22]];
  if (pattern === 'long-day') return [[5, 19]];
  if (pattern === '1shift4') return weekday === 5 ? [] : [[7, 17]];
  return [[7, 15.5]];
}

/** Production stretches over the log, joined over midnight. */
export function productionStretches(pattern: ShiftPattern, startMs: number, days: number, random: Random): Stretch[] {
  const firstWeekday = weekdayAt(startMs);
  const stretches: Stretch[] = [];
  for (let day = 0; day < days; day++) {
    // A shift now and then is not manned.
    if (pattern !== '24x7' && random.chance(0.03)) continue;
    for (const [from, to] of shiftHours(pattern, (firstWeekday + day) % 7)) {
      const startS = day * dayS + from * hourS;
      const endS = Math.min(days * dayS, day * dayS + to * hourS);
      const last = stretches.at(-1);
      if (last && last.endS >= startS) stretches[stretches.length - 1] = { startS: last.startS, endS };
      else stretches.push({ startS, endS });
    }
  }
  return stretches;
}

/** Lays the plan of one machine out over the steps of the simulation. */
export class MachinePlanner {
  readonly #machine: MachineParameters;
  readonly #stepS: number;
  readonly #random: Random;
  readonly #plan: MachinePlan;

  constructor(machine: MachineParameters, stepS: number, stepCount: number, random: Random) {
    this.#machine = machine;
    this.#stepS = stepS;
    this.#random = random;
    this.#plan = {
      state: new Uint8Array(stepCount),
      washing: new Uint8Array(stepCount),
      recipe: new Uint8Array(stepCount),
      speed: new Float32Array(stepCount).fill(1),
    };
  }

  lay(stretches: readonly Stretch[], recipeCount: number): MachinePlan {
    for (const stretch of stretches) this.#shift(stretch);
    this.#washDowns(stretches);
    this.#changeovers(stretches, recipeCount);
    return this.#plan;
  }

  #fill(array: Uint8Array | Float32Array, startS: number, endS: number, value: number): void {
    array.fill(value, Math.max(0, Math.round(startS / this.#stepS)), Math.max(0, Math.round(endS / this.#stepS)));
  }

  #shift({ startS, endS }: Stretch): void {
    const { warmUpS, breaksPerShift, speedChangesPerShift } = this.#machine;
    const lateS = this.#random.exponential(240);
    this.#fill(this.#plan.state, startS - warmUpS * this.#random.uniform(0.8, 1.2), startS, planned.heating);
    this.#fill(this.#plan.state, startS, endS - this.#random.exponential(300), planned.production);
    this.#fill(this.#plan.state, startS, startS + lateS, planned.heating);
    const shifts = Math.max(1, Math.round((endS - startS) / (8 * hourS)));
    for (let i = 0; i < shifts * breaksPerShift; i++) {
      const fromS =
        startS + ((i + 0.5 + 0.3 * (this.#random.next() - 0.5)) * (endS - startS)) / (shifts * breaksPerShift);
      this.#fill(this.#plan.state, fromS, Math.min(endS, fromS + this.#random.uniform(900, 1800)), planned.heating);
    }
    this.#speeds(startS, endS, Math.round(shifts * speedChangesPerShift));
  }

  #speeds(startS: number, endS: number, changes: number): void {
    let fromS = startS;
    for (let i = 0; i <= changes; i++) {
      const toS = i === changes ? endS : fromS + (endS - fromS) * this.#random.next();
      this.#fill(this.#plan.speed, fromS, toS, this.#random.chance(0.5) ? 1 : this.#random.uniform(0.6, 1));
      fromS = toS;
    }
  }

  #washDowns(stretches: readonly Stretch[]): void {
    const { washDownsPerDay } = this.#machine;
    for (const { startS, endS } of stretches) {
      const days = Math.max(1, (endS - startS) / dayS);
      const count = Math.floor(washDownsPerDay * days + this.#random.next());
      for (let i = 0; i < count; i++) {
        // The last one ends the stretch; others interrupt it.
        const fromS = i === 0 ? endS : startS + (endS - startS) * this.#random.uniform(0.2, 0.9);
        const toS = fromS + this.#random.uniform(600, 2400);
        this.#fill(this.#plan.washing, fromS, toS, 1);
        if (i > 0) this.#fill(this.#plan.state, fromS, toS, planned.heating);
      }
    }
  }

  #changeovers(stretches: readonly Stretch[], recipeCount: number): void {
    if (recipeCount < 2) return;
    for (const { startS, endS } of stretches) {
      const count = Math.floor((this.#machine.changeoversPerDay * (endS - startS)) / dayS + this.#random.next());
      for (let i = 0; i < count; i++) {
        const atS = this.#random.uniform(startS, endS);
        const lastS = this.#random.uniform(480, 2700);
        this.#fill(this.#plan.recipe, atS, Infinity, this.#random.int(0, recipeCount - 1));
        this.#fill(this.#plan.state, atS, Math.min(endS, atS + lastS), planned.heating);
      }
    }
  }
}
