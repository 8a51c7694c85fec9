import { faultCauses, type Fault, type FaultKind } from './faults/fault.js';
import { CardReference, SensorDrift } from './faults/offsets.js';
import type { MachineRun } from './machine-run.js';
import type { PlantParameters } from './plant-parameters.js';
import type { SimulatedZone } from './simulated-zone.js';
import type { MachineTruth, PlantTruth, ZoneTruth } from './truth.js';

/** A fault counts only when a careful reader could see it: an open, a shift of this many K, or this long at work. */
const visibleShiftK = 0.8;
const visibleS = 1200;

/** Faults whose course starts at a planned moment; the others start with their first act. */
const startsAsPlanned: readonly FaultKind[] = [
  'sensor_drift',
  'card_reference',
  'channel_frozen',
  'tag_frozen',
  'tag_missing',
];

function leftTrace(fault: Fault, zone: SimulatedZone, endS: number): boolean {
  const { kind, onsetS, fixedS, shape } = fault.plan;
  if (Number.isNaN(fault.firstActS)) return false;
  const atWorkS = (fixedS ?? endS) - fault.firstActS;
  if (fault instanceof SensorDrift || fault instanceof CardReference)
    return Math.abs(fault.driftDegC) >= 0.5 || shape === 'come-and-go';
  if (kind === 'wire_contact' || kind === 'wire_wet' || kind === 'sensor_noise') return zone.maxShiftK >= visibleShiftK;
  if (faultCauses[kind] === 'heater') return zone.faultyHeatingS >= visibleS;
  if (kind === 'channel_frozen' || kind === 'tag_frozen' || kind === 'tag_missing')
    return endS - onsetS >= visibleS && atWorkS >= visibleS;
  return fault.opens > 0 || kind === 'wire_short' || kind === 'leads_swapped';
}

/** The heaviest fault first: one that left a trace, then the one with more opens. */
function mainFault(zone: SimulatedZone, endS: number): { fault: Fault | undefined; isTrace: boolean } {
  const traced = zone.faults.filter((fault) => leftTrace(fault, zone, endS));
  const [fault] = traced.length > 0 ? traced : zone.faults;
  return { fault, isTrace: traced.length > 0 };
}

function zoneTruth(
  parameters: PlantParameters,
  zone: SimulatedZone,
  index: number,
  run: MachineRun | undefined,
): ZoneTruth {
  const endS = parameters.days * 86400;
  const { fault, isTrace } = mainFault(zone, endS);
  const plan = fault?.plan;
  const iso = (seconds: number | null): string | null =>
    seconds === null || Number.isNaN(seconds) ? null : new Date(parameters.startMs + seconds * 1000).toISOString();
  const onsetS =
    !fault || !plan || !isTrace ? null : startsAsPlanned.includes(plan.kind) ? plan.onsetS : fault.firstActS;
  const drift =
    (fault instanceof SensorDrift || fault instanceof CardReference) && plan?.fixedS === null && isTrace
      ? fault.driftDegC
      : null;
  const seen = isTrace && plan;
  return {
    zone: zone.parameters.name,
    machine: parameters.machines[zone.parameters.machine]?.name ?? '',
    card: zone.parameters.card,
    cause: seen ? faultCauses[plan.kind] : 'none',
    fault: seen ? plan.kind : 'none',
    drawn: plan?.kind ?? 'none',
    onset: iso(onsetS),
    fixed: seen ? iso(plan.fixedS) : null,
    driftC: drift,
    downtimeMin: (run?.lostByZoneS[index] ?? 0) / 60,
    restartMin: (run?.restartByZoneS[index] ?? 0) / 60,
    opens: fault?.opens ?? 0,
    shape: plan?.shape ?? null,
    openS: fault?.openS ?? 0,
    contactOhm: plan?.numbers['contactOhm'] ?? null,
    shuntOhm: plan?.numbers['shuntOhm'] ?? null,
    second: zone.faults.find((other) => other !== fault)?.plan.kind ?? null,
    lookAlikes: parameters.lookAlikes
      .filter(
        ({ machine, zone: only }) =>
          (machine === -1 || machine === zone.parameters.machine) && (only === -1 || only === index),
      )
      .map(({ kind }) => kind),
  };
}

function machineTruth(name: string, run: MachineRun): MachineTruth {
  const lostToZonesS = run.lostByZoneS.reduce((sum, lostS) => sum + lostS, 0);
  const restartS = run.restartByZoneS.reduce((sum, lostS) => sum + lostS, 0);
  const ranS = run.plannedS - lostToZonesS - restartS - run.lostOtherS - run.lostWarmingS;
  return {
    machine: name,
    plannedMin: run.plannedS / 60,
    ranMin: ranS / 60,
    lostToZonesMin: lostToZonesS / 60,
    restartMin: restartS / 60,
    lostToOtherStopsMin: run.lostOtherS / 60,
    lostWarmingUpMin: run.lostWarmingS / 60,
  };
}

/** Writes down what really happened, from the parts that did it. */
export function tellTruth(
  parameters: PlantParameters,
  zones: readonly SimulatedZone[],
  runs: readonly MachineRun[],
): PlantTruth {
  const { format, recorder } = parameters;
  return {
    meta: {
      seed: parameters.seed,
      dialect: format.dialect,
      every: recorder.everyS,
      has: format.has,
      runStyle: format.runStyle,
      digits: format.digits,
      alarmStyle: format.alarms.layout,
      withPlantFile: format.hasPlantFile,
      sensor: parameters.zones[0]?.sensor.kind,
      wires: parameters.zones[0]?.sensor.wires,
      unit: format.unit,
      pattern: parameters.pattern,
      rest: parameters.machines[0]?.rest,
      days: parameters.days,
      fsHigh: format.codes.high,
      fsLow: format.codes.low,
      textSentinel: format.codes.text,
      start: new Date(parameters.startMs).toISOString(),
      gaps: recorder.gaps,
      freezes: recorder.freezes,
      logsMean: recorder.logsMean,
      alarmShiftS: format.alarms.shiftS,
      lookAlikes: parameters.lookAlikes,
    },
    zones: zones.map((zone, index) => zoneTruth(parameters, zone, index, runs[zone.parameters.machine])),
    machines: runs.map((run, index) => machineTruth(parameters.machines[index]?.name ?? '', run)),
  };
}
