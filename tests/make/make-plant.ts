import { RoomAir } from './air.js';
import { fullScaleDegC } from './log/log-format.js';
import { MachinePlanner, planned, productionStretches, type MachinePlan } from './machine-plan.js';
import { MachineRun, type ZoneStanding } from './machine-run.js';
import type { MadeMachine, Plant } from './made-plant.js';
import type { LookAlike, PlantParameters } from './plant-parameters.js';
import { Random } from './random.js';
import { ZoneRecorder } from './recorder.js';
import { SimulatedZone, type ZoneConditions } from './simulated-zone.js';
import { tellTruth } from './tell-truth.js';
import type { MadeAlarm } from './zone-alarms.js';

const dayS = 86400;

/** Length of the inner step: a whole part of the sampling interval, about 2 s, or 3 s where sampling is slow. */
export function stepSecondsFor(everyS: number): number {
  const aboutS = everyS >= 30 ? 3 : 2;
  return everyS / Math.max(1, Math.round(everyS / aboutS));
}

/**
 * Makes a plant: simulates every machine and zone and records them.
 * The same parameters and seed give the same plant, number for number.
 */
export function makePlant(parameters: PlantParameters, seed: number = parameters.seed): Plant {
  return new PlantSimulation(parameters, new Random(seed)).run();
}

class PlantSimulation {
  readonly #parameters: PlantParameters;
  readonly #stepS: number;
  readonly #stepCount: number;
  readonly #stepsPerRow: number;
  readonly #air: RoomAir;
  readonly #plans: MachinePlan[];
  readonly #runs: MachineRun[];
  readonly #zones: SimulatedZone[];
  readonly #zonesOf: number[][];
  readonly #zonesByMachine: SimulatedZone[][];
  readonly #standings: ZoneStanding[][];
  readonly #recorders: ZoneRecorder[];
  readonly #alarms: MadeAlarm[] = [];
  readonly #random: Random;
  readonly #timeS: Float64Array;
  readonly #isRow: Uint8Array;
  readonly #machines: MadeMachine[];
  readonly #enclosureK: number[];
  readonly #now: ZoneConditions;
  readonly #loadWander: number[];
  #active: readonly LookAlike[] = [];
  #nextChangeS = 0;

  constructor(parameters: PlantParameters, random: Random) {
    const { zones, machines, faults, recorder, days, pattern, startMs, format } = parameters;
    this.#parameters = parameters;
    this.#stepS = stepSecondsFor(recorder.everyS);
    this.#stepCount = Math.round((days * dayS) / this.#stepS);
    this.#stepsPerRow = Math.round(recorder.everyS / this.#stepS);
    const rows = Math.ceil(this.#stepCount / this.#stepsPerRow);
    this.#air = new RoomAir(parameters, this.#stepS, random.fork('air'));
    this.#random = random.fork('plant');
    const stretches = productionStretches(pattern, startMs, days, random.fork('shifts'));
    this.#plans = machines.map((machine, index) =>
      new MachinePlanner(machine, this.#stepS, this.#stepCount, random.fork(`plan ${index}`)).lay(
        stretches,
        zones[0]?.setpointsDegC.length ?? 1,
      ),
    );
    const reasons = format.alarms.stopTexts.length;
    this.#runs = machines.map(
      (machine, index) =>
        new MachineRun(machine, index, zones.length, reasons, this.#stepS, random.fork(`run ${index}`), this.#alarms),
    );
    const endS = days * dayS;
    this.#zones = zones.map((zone, index) => {
      const machine = machines[zone.machine];
      if (!machine)
        throw new Error(`Zone ${zone.name} belongs to machine ${zone.machine}, which the plant does not have.`);
      const plans = faults.filter((fault) => fault.zone === index);
      return new SimulatedZone(
        index,
        zone,
        machine,
        plans,
        this.#stepS,
        parameters.air.meanDegC,
        endS,
        random.fork(`zone ${index}`),
        this.#alarms,
      );
    });
    this.#zonesOf = machines.map((_, index) => zones.flatMap((zone, place) => (zone.machine === index ? [place] : [])));
    this.#zonesByMachine = this.#zonesOf.map((places) => places.flatMap((place) => this.#zones[place] ?? []));
    this.#standings = this.#zonesByMachine.map((own) => own.map(({ standing }) => standing));
    const ends = { highDegC: fullScaleDegC(format, 'high'), lowDegC: fullScaleDegC(format, 'low') };
    this.#recorders = zones.map(
      (zone, index) =>
        new ZoneRecorder(
          index,
          zone,
          rows,
          recorder,
          ends,
          faults.filter((fault) => fault.zone === index),
        ),
    );
    this.#timeS = new Float64Array(rows);
    this.#isRow = new Uint8Array(rows).fill(1);
    this.#machines = machines.map(({ name }) => ({
      name,
      running: new Uint8Array(rows),
      speed: new Float32Array(rows),
    }));
    this.#enclosureK = machines.map(() => 0);
    this.#loadWander = machines.map(() => 1);
    this.#now = {
      nowS: 0,
      isProduction: false,
      isHeating: false,
      isStandby: false,
      isWashing: false,
      recipe: 0,
      speed: 1,
      roomDegC: 20,
      airDegC: 20,
      draught: 1,
      loadFactor: 1,
      hasPower: true,
      neighbourW: 0,
    };
  }

  run(): Plant {
    for (let step = 0; step < this.#stepCount; step++) {
      const nowS = step * this.#stepS;
      this.#air.step(nowS);
      this.#refreshActive(nowS);
      for (let machine = 0; machine < this.#runs.length; machine++) this.#stepMachine(machine, step, nowS);
      if (step % this.#stepsPerRow === 0) this.#record(step / this.#stepsPerRow, nowS);
    }
    this.#acknowledge();
    return this.#finish();
  }

  #stepMachine(machine: number, step: number, nowS: number): void {
    const plan = this.#plans[machine] as MachinePlan;
    const run = this.#runs[machine] as MachineRun;
    const parameters = this.#parameters.machines[machine]!;
    const places = this.#zonesOf[machine] ?? [];
    const zones = this.#zonesByMachine[machine] ?? [];
    const now = this.#now;
    const state = plan.state[step] ?? planned.off;
    now.hasPower = !this.#happening('power-cut', machine);
    run.step(nowS, now.hasPower ? state : planned.off, this.#standings[machine] ?? []);
    now.nowS = nowS;
    now.isProduction = state === planned.production;
    now.isHeating = state !== planned.off;
    now.isStandby = state === planned.off && parameters.rest === 'standby';
    now.isWashing = plan.washing[step] === 1;
    now.recipe = plan.recipe[step] ?? 0;
    now.speed = (plan.speed[step] ?? 1) * (this.#happening('fast-line', machine)?.size ?? 1);
    now.loadFactor = this.#load(machine) * (this.#happening('thick-product', machine)?.size ?? 1);
    now.roomDegC = this.#air.degC + (this.#happening('hot-day', machine)?.size ?? 0);
    this.#stepEnclosure(machine, zones);
    now.airDegC = now.roomDegC + (this.#enclosureK[machine] ?? 0);
    this.#nudge(machine, places);
    for (let i = 0; i < zones.length; i++) this.#stepZone(zones, i, places[i] ?? 0, run);
  }

  /** Product is never quite the same: the load of a machine wanders by a few percent over half an hour. */
  #load(machine: number): number {
    const share = this.#stepS / 1800;
    const before = this.#loadWander[machine] ?? 1;
    const after = before + share * (1 - before) + 0.05 * Math.sqrt(2 * share) * this.#random.gauss();
    this.#loadWander[machine] = after;
    return after;
  }

  /** Warm zones warm the air inside the machine, over about an hour. */
  #stepEnclosure(machine: number, zones: readonly SimulatedZone[]): void {
    let sumDegC = 0;
    for (const { thermal } of zones) sumDegC += thermal.bodyDegC;
    const meanK = sumDegC / Math.max(1, zones.length) - this.#air.degC;
    const aimK = this.#parameters.air.enclosureShare * meanK;
    const isK = this.#enclosureK[machine] ?? 0;
    this.#enclosureK[machine] = isK + (this.#stepS / 2700) * (aimK - isK);
  }

  #stepZone(zones: readonly SimulatedZone[], i: number, place: number, run: MachineRun): void {
    const zone = zones[i] as SimulatedZone;
    const before = zones[i - 1];
    const after = zones[i + 1];
    const own = zone.thermal.bodyDegC;
    const fromBeforeW = before ? before.parameters.neighbourWPerK * (before.thermal.bodyDegC - own) : 0;
    const fromAfterW = after ? zone.parameters.neighbourWPerK * (after.thermal.bodyDegC - own) : 0;
    this.#now.neighbourW = fromBeforeW + fromAfterW;
    const draught = this.#happening('draught', zone.parameters.machine);
    this.#now.draught = draught && (draught.zone === -1 || draught.zone === place) ? draught.size : 1;
    zone.step(this.#now, run);
    const recorder = this.#recorders[place] as ZoneRecorder;
    if (recorder.logsMean) recorder.accumulate(zone);
  }

  #happening(kind: LookAlike['kind'], machine: number): LookAlike | undefined {
    for (const item of this.#active) {
      if (item.kind === kind && (item.machine === -1 || item.machine === machine)) return item;
    }
    return undefined;
  }

  /** Which look-alikes are on; worked out anew only when one starts or ends. */
  #refreshActive(nowS: number): void {
    if (nowS < this.#nextChangeS) return;
    const { lookAlikes } = this.#parameters;
    this.#active = lookAlikes.filter(({ startS, endS }) => nowS >= startS && nowS < endS);
    this.#nextChangeS = Math.min(
      ...lookAlikes.flatMap(({ startS, endS }) => [startS, endS]).filter((atS) => atS > nowS),
    );
    for (const item of lookAlikes) this.#restartAfter(item, nowS);
  }

  /** A controller restart, or power that has come back, puts the zones' controllers back to nothing. */
  #restartAfter(item: LookAlike, nowS: number): void {
    const atS = item.kind === 'restart' ? item.startS : item.kind === 'power-cut' ? item.endS : NaN;
    if (!(nowS >= atS && nowS < atS + this.#stepS)) return;
    this.#zonesOf.forEach((places, machine) => {
      if (item.machine !== -1 && item.machine !== machine) return;
      for (const place of places) {
        this.#zones[place]?.restartController();
        this.#recorders[place]?.restarted();
      }
    });
  }

  #nudge(machine: number, places: readonly number[]): void {
    const { nudgesPerDay } = this.#parameters.machines[machine]!;
    if (nudgesPerDay <= 0 || !this.#random.chance((nudgesPerDay * this.#stepS) / dayS)) return;
    this.#zones[this.#random.pick(places)]?.nudge(this.#random.sign() * this.#random.int(1, 3));
  }

  #record(row: number, nowS: number): void {
    const { recorder } = this.#parameters;
    const within = (stretch: { startS: number; endS: number }): boolean =>
      nowS >= stretch.startS && nowS < stretch.endS;
    const isHung = recorder.freezes.some(within);
    const isOff = this.#parameters.lookAlikes.some(
      (item) => item.kind === 'power-cut' && item.machine === -1 && within(item),
    );
    if (isOff || recorder.gaps.some(within)) this.#isRow[row] = 0;
    this.#timeS[row] = nowS + (recorder.jitterS > 0 ? Math.round(this.#random.uniform(0, recorder.jitterS)) : 0);
    this.#zones.forEach((zone, place) =>
      this.#recorders[place]?.record(row, nowS, zone, zone.thermal.bodyDegC, isHung),
    );
    this.#machines.forEach((made, machine) => {
      const run = this.#runs[machine] as MachineRun;
      made.running[row] = isHung && row > 0 ? (made.running[row - 1] ?? 0) : run.isRunning ? 1 : 0;
      const speed = this.#plans[machine]?.speed[Math.min(this.#stepCount - 1, row * this.#stepsPerRow)] ?? 1;
      made.speed[row] = made.running[row] === 1 ? speed : 0;
    });
  }

  /** Operators acknowledge most alarms within a minute or two, some never. */
  #acknowledge(): void {
    this.#alarms.sort((a, b) => a.startS - b.startS || a.zone - b.zone);
    for (const alarm of this.#alarms) {
      if (this.#random.chance(0.25)) continue;
      alarm.acknowledgedS = alarm.startS + 3 + this.#random.exponential(70);
    }
  }

  #finish(): Plant {
    return {
      parameters: this.#parameters,
      timeS: this.#timeS,
      isRow: this.#isRow,
      zones: this.#recorders.map(({ zone }) => zone),
      machines: this.#machines,
      alarms: this.#alarms,
      otherStops: this.#runs.flatMap(({ otherStops }) => otherStops),
      truth: tellTruth(this.#parameters, this.#zones, this.#runs),
    };
  }
}
