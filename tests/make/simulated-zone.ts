import {
  clearEffects,
  faultCauses,
  noEffects,
  type Effects,
  type Fault,
  type FaultPlan,
  type Surroundings,
} from './faults/fault.js';
import { makeFault } from './faults/make-fault.js';
import { MeasuringChain } from './measuring-chain.js';
import type { MachineRun, ZoneStanding } from './machine-run.js';
import type { MachineParameters, ZoneParameters } from './plant-parameters.js';
import type { Random } from './random.js';
import type { Sample } from './recorder.js';
import { TemperatureController } from './temperature-controller.js';
import { ThermalZone } from './thermal-zone.js';
import { ZoneAlarms, type MadeAlarm } from './zone-alarms.js';

/** What the plant tells a zone in one step. */
export interface ZoneConditions {
  nowS: number;
  isProduction: boolean;
  isHeating: boolean;
  isStandby: boolean;
  isWashing: boolean;
  recipe: number;
  speed: number;
  roomDegC: number;
  airDegC: number;
  /** Factors of look-alikes. */
  draught: number;
  loadFactor: number;
  hasPower: boolean;
  neighbourW: number;
}

/** How long a zone's own loss stays up or down, seconds, and by how much of itself (common practice). */
const wanderS = 3600;
const wanderSize = 0.02;
/** Water on a machine cools it this much faster than still air (common practice). */
const washFactor = 4;

/** One zone with all its parts: body, sensor, card, controller, alarms, faults. */
export class SimulatedZone implements Sample {
  readonly thermal: ThermalZone;
  readonly faults: readonly Fault[];
  readonly standing: ZoneStanding;
  readonly parameters: ZoneParameters;
  setpointDegC = 0;
  /** Largest shift of the reading by a fault of sensor, wiring or card, K. */
  maxShiftK = 0;
  faultyHeatingS = 0;
  readonly #machine: MachineParameters;
  readonly #stepS: number;
  readonly #chain: MeasuringChain;
  readonly #controller: TemperatureController;
  readonly #alarms: ZoneAlarms;
  readonly #effects: Effects = noEffects();
  readonly #around: Surroundings = {
    nowS: 0,
    isRunning: false,
    sensorDegC: 0,
    workDegC: 0,
    isHeating: false,
    isWashing: false,
  };
  readonly #replacedAtS: number[];
  readonly #cycleRandom: Random;
  readonly #cutoutDegC: number;
  readonly #wanderShare: number;
  #nudgeDegC = 0;
  #isCutOut = false;
  /** Slow change of this zone's own loss: air, dirt, contact with the frame. */
  #lossWander = 1;
  #lastSetpointDegC = 0;

  constructor(
    index: number,
    zone: ZoneParameters,
    machine: MachineParameters,
    plans: readonly FaultPlan[],
    stepS: number,
    startDegC: number,
    endS: number,
    random: Random,
    alarmLog: MadeAlarm[],
  ) {
    this.parameters = zone;
    this.#machine = machine;
    this.#stepS = stepS;
    this.thermal = new ThermalZone(zone.thermal, stepS, startDegC);
    this.#chain = new MeasuringChain(zone.sensor, zone.input, stepS, random.fork('noise'));
    this.#controller = new TemperatureController(zone.controller, stepS);
    this.#alarms = new ZoneAlarms(zone.alarms, index, zone.machine, alarmLog);
    this.faults = plans.map((plan) => makeFault(plan, stepS, random.fork(plan.kind), endS));
    this.#cycleRandom = random.fork('cycle');
    this.#cutoutDegC = Math.max(...zone.setpointsDegC) + zone.cutoutAboveK;
    this.#wanderShare = stepS / wanderS;
    this.#replacedAtS = plans
      .filter(({ kind, fixedS }) => fixedS !== null && faultCauses[kind] === 'sensor')
      .map(({ fixedS }) => fixedS ?? 0);
    this.standing = {
      zone: index,
      inputSinceS: NaN,
      deviationSinceS: NaN,
      isInBand: false,
      outSinceS: NaN,
      isBypassed: false,
      hasFault: false,
      isUnderRepair: false,
      bypassAfterS: Math.min(7200, ...plans.map(({ bypassAfterS }) => bypassAfterS ?? Infinity)),
    };
    // A planned wait for the repair outlasts the two hours after which operators give a healthy zone up.
    if (plans.some(({ bypassAfterS }) => bypassAfterS === null))
      this.standing = { ...this.standing, bypassAfterS: Infinity };
  }

  get readingDegC(): number {
    return this.#chain.readingDegC;
  }

  get isAboveScale(): boolean {
    return this.#chain.isAboveScale;
  }

  get isBelowScale(): boolean {
    return this.#chain.isBelowScale;
  }

  get outputPercent(): number {
    return this.#controller.outputPercent;
  }

  /** An operator moves the set point by a degree or two and keeps it there. */
  nudge(byDegC: number): void {
    this.#nudgeDegC = Math.max(-8, Math.min(8, this.#nudgeDegC + byDegC));
  }

  restartController(): void {
    this.#controller.reset();
  }

  step(now: ZoneConditions, run: MachineRun): void {
    const { sensorDegC } = this.thermal;
    const workDegC = (this.parameters.setpointsDegC[now.recipe] ?? 150) + this.#nudgeDegC;
    const isOn = now.hasPower && (now.isHeating || now.isStandby);
    this.setpointDegC = now.isHeating ? workDegC : now.isStandby ? this.#machine.standbyDegC : 0;
    this.#moveFaults(now, run, sensorDegC, workDegC, isOn);
    this.#chain.step(sensorDegC, now.airDegC, this.#effects);
    this.maxShiftK = Math.max(this.maxShiftK, Math.abs(this.#chain.faultShiftDegC));
    const share = this.#controller.step(this.readingDegC, this.setpointDegC, isOn);
    this.#watchAlarms(now.nowS, isOn);
    this.#heat(now, run, share, isOn);
  }

  #moveFaults(now: ZoneConditions, run: MachineRun, sensorDegC: number, workDegC: number, isOn: boolean): void {
    clearEffects(this.#effects);
    if (this.faults.length === 0) return;
    this.#around.nowS = now.nowS;
    this.#around.isRunning = run.isRunning;
    this.#around.sensorDegC = sensorDegC;
    this.#around.workDegC = workDegC;
    this.#around.isHeating = isOn;
    this.#around.isWashing = now.isWashing;
    this.standing.hasFault = false;
    this.standing.isUnderRepair = false;
    for (const fault of this.faults) {
      fault.step(this.#around, this.#effects);
      const { onsetS, fixedS, repairStopS } = fault.plan;
      const isOver = fixedS !== null && now.nowS >= fixedS;
      if (now.nowS >= onsetS && !isOver) this.standing.hasFault = true;
      if (fixedS !== null && now.nowS >= fixedS - repairStopS && !isOver) this.standing.isUnderRepair = true;
    }
    if (this.#replacedAtS.some((atS) => now.nowS >= atS && now.nowS < atS + this.#stepS)) this.#chain.replaceSensor();
    if (this.standing.hasFault && isOn) this.faultyHeatingS += this.#stepS;
  }

  #watchAlarms(nowS: number, isOn: boolean): void {
    if (Math.abs(this.setpointDegC - this.#lastSetpointDegC) > 2) this.#alarms.setpointMoved();
    this.#lastSetpointDegC = this.setpointDegC;
    this.#alarms.step(nowS, this.readingDegC, this.setpointDegC, isOn);
    this.standing.inputSinceS = this.#alarms.inputSinceS;
    this.standing.deviationSinceS = this.#alarms.deviationSinceS;
    const bandK = Math.max(3, 0.7 * this.parameters.alarms.lowK);
    this.standing.isInBand = Math.abs(this.readingDegC - this.setpointDegC) < bandK;
  }

  #heat(now: ZoneConditions, run: MachineRun, share: number, isOn: boolean): void {
    const { thermal, loadWPerK, cycleShare, airOffsetDegC } = this.parameters;
    const bodyDegC = this.thermal.bodyDegC;
    this.#isCutOut = bodyDegC > this.#cutoutDegC || (this.#isCutOut && bodyDegC > this.#cutoutDegC - 20);
    // The main contactor drops at switch-off, so a stuck relay heats only while the machine is on.
    const onShare = this.#isCutOut || !now.hasPower || !isOn ? 0 : this.#effects.isStuckOn ? 1 : share;
    let loadW = 0;
    if (run.isRunning) {
      const cycle = cycleShare > 0 ? 1 + cycleShare * this.#cyclePulse(now.nowS) : 1;
      loadW = loadWPerK * now.speed * now.loadFactor * cycle * Math.max(0, bodyDegC - now.roomDegC);
    }
    const pullBack = this.#wanderShare * (1 - this.#lossWander);
    this.#lossWander += pullBack + wanderSize * Math.sqrt(2 * this.#wanderShare) * this.#cycleRandom.gauss();
    const draught = now.draught * this.#lossWander * (now.isWashing ? washFactor : 1);
    this.thermal.step(
      thermal.powerW * this.#effects.heaterShare * onShare,
      now.airDegC + airOffsetDegC,
      draught,
      now.neighbourW - loadW,
    );
  }

  /** Contact and release of the product: +1 and −1 in turn; blurred where a step holds several cycles. */
  #cyclePulse(nowS: number): number {
    const { cycleS } = this.#machine;
    if (cycleS < 2 * this.#stepS) return 0.3 * this.#cycleRandom.gauss();
    return nowS % cycleS < cycleS / 2 ? 1 : -1;
  }
}
