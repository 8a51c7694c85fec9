import type { Cause } from '../../../src/model/cause.js';

/** Every fault that can be made, with the group it belongs to. */
export const faultCauses = {
  sensor_open: 'sensor',
  sensor_hot_open: 'sensor',
  sensor_drift: 'sensor',
  sensor_noise: 'sensor',
  wire_flex_open: 'wiring',
  wire_contact: 'wiring',
  wire_broken: 'wiring',
  wire_wet: 'wiring',
  wire_short: 'wiring',
  leads_swapped: 'wiring',
  card_blips: 'input',
  card_reference: 'input',
  channel_frozen: 'input',
  heater_dead: 'heater',
  heater_half: 'heater',
  heater_ageing: 'heater',
  relay_stuck: 'heater',
  tag_frozen: 'recording',
  tag_missing: 'recording',
} as const satisfies Record<string, Cause>;

export type FaultKind = keyof typeof faultCauses;

/** One fault of one zone (a card fault is planned once for every zone of the card). Seconds count from the log's start. */
export interface FaultPlan {
  readonly kind: FaultKind;
  /** Index of the zone in the plant. */
  readonly zone: number;
  readonly onsetS: number;
  /** When it was repaired; null = still there at the end. */
  readonly fixedS: number | null;
  /** Which course it takes; each kind has its own words. */
  readonly shape: string;
  /** Sizes, unit in the name; each kind reads its own. */
  readonly numbers: Readonly<Record<string, number>>;
  /** After this long in a standing alarm the operators run on without the zone; null = they wait for the repair. */
  readonly bypassAfterS: number | null;
  /** The machine stands this long before the repair is done, also for a fault that never stopped it. */
  readonly repairStopS: number;
}

/** What faults do to one zone in one step; cleared before each step. */
export interface Effects {
  offsetDegC: number;
  gainError: number;
  extraNoiseDegC: number;
  isOpen: boolean;
  /** This open sends the reading down, not up (a compensation lead, or the card's own choice). */
  opensLow: boolean;
  isShort: boolean;
  /** The two leads of a thermocouple are swapped; nothing to a resistance sensor. */
  areLeadsSwapped: boolean;
  seriesOhm: number;
  /** 1/ohm of the path in parallel; 0 = none. */
  shuntSiemens: number;
  cardOffsetDegC: number;
  isFrozen: boolean;
  /** Share of the heater that is left. */
  heaterShare: number;
  isStuckOn: boolean;
}

export function clearEffects(effects: Effects): void {
  effects.offsetDegC = 0;
  effects.gainError = 0;
  effects.extraNoiseDegC = 0;
  effects.isOpen = false;
  effects.opensLow = false;
  effects.isShort = false;
  effects.areLeadsSwapped = false;
  effects.seriesOhm = 0;
  effects.shuntSiemens = 0;
  effects.cardOffsetDegC = 0;
  effects.isFrozen = false;
  effects.heaterShare = 1;
  effects.isStuckOn = false;
}

export function noEffects(): Effects {
  const effects = {} as Effects;
  clearEffects(effects);
  return effects;
}

/** What a fault may know of the zone at this moment. */
export interface Surroundings {
  nowS: number;
  isRunning: boolean;
  /** The true temperature at the sensor. */
  sensorDegC: number;
  /** Set point of the recipe, whether or not the zone is switched on. */
  workDegC: number;
  isHeating: boolean;
  isWashing: boolean;
}

/** A fault at work. `step` writes into the effects; the record of what it did stays in the object. */
export abstract class Fault {
  readonly plan: FaultPlan;
  protected readonly stepS: number;
  /** First second in which it did something; NaN = it never acted. */
  firstActS = NaN;
  opens = 0;
  openS = 0;
  #wasOpen = false;

  constructor(plan: FaultPlan, stepS: number) {
    this.plan = plan;
    this.stepS = stepS;
  }

  step(around: Surroundings, effects: Effects): void {
    const { onsetS, fixedS } = this.plan;
    if (around.nowS < onsetS) return;
    if (fixedS !== null && around.nowS >= fixedS) return;
    this.act(around, effects);
  }

  protected abstract act(around: Surroundings, effects: Effects): void;

  protected number(name: string): number {
    const value = this.plan.numbers[name];
    if (value === undefined) throw new Error(`Fault ${this.plan.kind} was planned without ${name}.`);
    return value;
  }

  protected acted(nowS: number): void {
    if (Number.isNaN(this.firstActS)) this.firstActS = nowS;
  }

  protected open(isOpen: boolean, nowS: number, effects: Effects): void {
    if (isOpen) {
      effects.isOpen = true;
      effects.opensLow = this.plan.shape === 'opens-low';
      this.acted(nowS);
      this.openS += this.stepS;
      if (!this.#wasOpen) this.opens++;
    }
    this.#wasOpen = isOpen;
  }
}
