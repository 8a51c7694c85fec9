import { planned } from './machine-plan.js';
import type { MachineParameters } from './plant-parameters.js';
import type { Random } from './random.js';
import type { MadeAlarm } from './zone-alarms.js';

/** How a zone stands with its machine at this moment. */
export interface ZoneStanding {
  /** Zone index in the plant. */
  readonly zone: number;
  inputSinceS: number;
  deviationSinceS: number;
  isInBand: boolean;
  /** Since when it is out of band or failed while production is planned; NaN = it is not. */
  outSinceS: number;
  /** Operators run on without it; ends when it is back in band. */
  isBypassed: boolean;
  hasFault: boolean;
  /** The machine must stand for this zone's repair. */
  isUnderRepair: boolean;
  readonly bypassAfterS: number;
}

/** Why a machine stands: an index of a zone, or one of these. */
export const standing = { notPlanned: -1, otherStop: -2, warmingUp: -3 } as const;

export interface OtherStop {
  readonly machine: number;
  readonly reason: number;
  readonly startS: number;
  readonly endS: number;
}

/** Until somebody has seen a trip and reset it, the stop is the fault's own, however short the fault (common practice). */
const resetS = 60;

/** Runs and stops of one machine, and who is to blame for each second lost. */
export class MachineRun {
  isRunning = false;
  /** Seconds of planned production lost while the zone kept the machine from running, by zone index. */
  readonly lostByZoneS: Float64Array;
  /** Seconds from then until the machine ran again, by zone index. */
  readonly restartByZoneS: Float64Array;
  lostOtherS = 0;
  lostWarmingS = 0;
  plannedS = 0;
  readonly otherStops: OtherStop[] = [];
  readonly #machine: MachineParameters;
  readonly #index: number;
  readonly #stepS: number;
  readonly #random: Random;
  readonly #alarms: MadeAlarm[];
  readonly #reasonCount: number;
  #cause: number = standing.notPlanned;
  #untilS = -Infinity;
  #trippedS = -Infinity;

  constructor(
    machine: MachineParameters,
    index: number,
    zoneCount: number,
    reasonCount: number,
    stepS: number,
    random: Random,
    alarms: MadeAlarm[],
  ) {
    this.#machine = machine;
    this.#index = index;
    this.#stepS = stepS;
    this.#random = random;
    this.#alarms = alarms;
    this.#reasonCount = reasonCount;
    this.lostByZoneS = new Float64Array(zoneCount);
    this.restartByZoneS = new Float64Array(zoneCount);
  }

  step(nowS: number, plan: number, zones: readonly ZoneStanding[]): void {
    if (plan !== planned.production) {
      this.isRunning = false;
      this.#cause = standing.notPlanned;
      return;
    }
    this.plannedS += this.#stepS;
    for (const zone of zones) watchBand(zone, nowS);
    if (this.isRunning) this.#running(nowS, zones);
    else this.#standing(nowS, zones);
    if (!this.isRunning) this.#blame(nowS, zones);
  }

  #blame(nowS: number, zones: readonly ZoneStanding[]): void {
    const owner = zones.find(({ zone }) => zone === this.#cause);
    if (owner) {
      const isFaultsOwn = nowS - this.#trippedS < resetS || this.#isWaitedFor(owner, nowS);
      const lostS = isFaultsOwn ? this.lostByZoneS : this.restartByZoneS;
      lostS[owner.zone] = (lostS[owner.zone] ?? 0) + this.#stepS;
    } else if (this.#cause === standing.otherStop) this.lostOtherS += this.#stepS;
    else this.lostWarmingS += this.#stepS;
  }

  #running(nowS: number, zones: readonly ZoneStanding[]): void {
    for (const zone of zones) {
      if (this.#holds(zone, nowS)) {
        this.isRunning = false;
        this.#cause = zone.zone;
        this.#trippedS = nowS;
        this.#untilS = nowS + this.#machine.restartS * this.#random.uniform(0.5, 1.8);
        return;
      }
    }
    const { stopsPerHour, stopMedianS, longStopsPerDay } = this.#machine;
    if (this.#random.chance((stopsPerHour * this.#stepS) / 3600))
      this.#otherStop(nowS, stopMedianS * Math.exp(0.8 * this.#random.gauss()));
    else if (this.#random.chance((longStopsPerDay * this.#stepS) / 86400))
      this.#otherStop(nowS, this.#random.uniform(1800, 9000));
  }

  #otherStop(nowS: number, lastS: number): void {
    this.isRunning = false;
    this.#cause = standing.otherStop;
    this.#untilS = nowS + Math.max(this.#stepS, lastS);
    const reason = this.#random.int(0, this.#reasonCount - 1);
    this.otherStops.push({ machine: this.#index, reason, startS: nowS, endS: this.#untilS });
    this.#alarms.push({
      kind: 'machine',
      zone: -1,
      machine: this.#index,
      reason,
      startS: nowS,
      endS: this.#untilS,
      acknowledgedS: NaN,
    });
  }

  /** True while this zone keeps the machine from running. */
  #holds(zone: ZoneStanding, nowS: number): boolean {
    if (zone.isUnderRepair) return true;
    if (zone.isBypassed) return false;
    if (!Number.isNaN(zone.inputSinceS)) return nowS - zone.inputSinceS >= this.#machine.stopsAfterInputS;
    return nowS - zone.deviationSinceS >= this.#machine.stopsAfterDeviationS;
  }

  #standing(nowS: number, zones: readonly ZoneStanding[]): void {
    if (nowS < this.#untilS && this.#cause !== standing.notPlanned) return;
    const holding = zones.find((zone) => this.#isWaitedFor(zone, nowS));
    if (!holding) {
      this.isRunning = true;
      return;
    }
    // Waiting for heat after a stop belongs to that stop; a faulty zone that holds the machine up takes the blame.
    if (holding.hasFault) this.#cause = holding.zone;
    else if (this.#cause === standing.notPlanned) this.#cause = standing.warmingUp;
  }

  #isWaitedFor(zone: ZoneStanding, nowS: number): boolean {
    return this.#holds(zone, nowS) || (!zone.isInBand && !zone.isBypassed);
  }
}

function watchBand(zone: ZoneStanding, nowS: number): void {
  if (zone.isInBand) {
    zone.outSinceS = NaN;
    zone.isBypassed = false;
  } else if (Number.isNaN(zone.outSinceS)) zone.outSinceS = nowS;
  else if (nowS - zone.outSinceS > zone.bypassAfterS) zone.isBypassed = true;
}
