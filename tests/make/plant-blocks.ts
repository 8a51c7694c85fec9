import type { AlarmKind, AlarmSpan } from '../../src/model/alarm.js';
import { readingState, type SampleBlock } from '../../src/model/sample-block.js';
import type { Zone } from '../../src/model/zone.js';
import { fullScaleDegC } from './log/log-format.js';
import { cell, type MadeZone, type Plant } from './made-plant.js';
import type { MadeAlarmKind } from './zone-alarms.js';

const states: Readonly<Record<number, number>> = {
  [cell.good]: readingState.good,
  [cell.aboveScale]: readingState.aboveScale,
  [cell.belowScale]: readingState.belowScale,
  [cell.restartZero]: readingState.restartZero,
  [cell.missing]: readingState.blank,
};

/** The zones of a made plant as the program would know them with a full plant file. */
export function plantZones(plant: Plant): Zone[] {
  const { format, recorder, zones, machines } = plant.parameters;
  const degC = 10 ** -format.digits;
  return zones.map((zone, index) => ({
    index,
    name: zone.name,
    machine: machines[zone.machine]?.name ?? '',
    sensor: zone.sensor.kind,
    wires: zone.sensor.wires,
    card: zone.card,
    heaterW: zone.thermal.powerW,
    toleranceClass: null,
    has: {
      reading: true,
      setpoint: format.has === 'full',
      output: format.has !== 'pvonly',
      running: format.runStyle !== 'none',
    },
    samplingMs: recorder.everyS * 1000,
    resolutionDegC: format.unit === 'C' ? degC : degC / 1.8,
  }));
}

/** One block per zone, in °C and UTC ms, rounded to the digits of the log, without the rows that the file lacks. */
export function plantBlocks(plant: Plant): SampleBlock[] {
  const rows: number[] = [];
  plant.isRow.forEach((isRow, row) => {
    if (isRow === 1) rows.push(row);
  });
  return plant.zones.map((zone) => zoneBlock(plant, zone, rows));
}

function zoneBlock(plant: Plant, zone: MadeZone, rows: readonly number[]): SampleBlock {
  const { format, startMs } = plant.parameters;
  const scale = 10 ** format.digits;
  const running = plant.machines[zone.machine]?.running;
  const isLogged = {
    setpoint: format.has === 'full',
    output: format.has !== 'pvonly',
    running: format.runStyle !== 'none',
  };
  return {
    zone: zone.index,
    length: rows.length,
    timeMs: Float64Array.from(rows, (row) => startMs + (plant.timeS[row] ?? 0) * 1000),
    readingDegC: Float64Array.from(rows, (row) => cellDegC(plant, zone, row, scale)),
    state: Uint8Array.from(rows, (row) => states[zone.state[row] ?? cell.missing] ?? readingState.blank),
    setpointDegC: Float64Array.from(rows, (row) => (isLogged.setpoint ? (zone.setpointDegC[row] ?? NaN) : NaN)),
    outputPercent: Float64Array.from(rows, (row) => (isLogged.output ? (zone.outputPercent[row] ?? NaN) : NaN)),
    running: Float64Array.from(rows, (row) => (isLogged.running ? (running?.[row] ?? NaN) : NaN)),
  };
}

function cellDegC(plant: Plant, zone: MadeZone, row: number, scale: number): number {
  const { format } = plant.parameters;
  switch (zone.state[row]) {
    case cell.aboveScale:
      return fullScaleDegC(format, 'high');
    case cell.belowScale:
      return fullScaleDegC(format, 'low');
    case cell.restartZero:
      return 0;
    case cell.missing:
      return NaN;
    default:
      return Math.round((zone.readingDegC[row] ?? NaN) * scale) / scale;
  }
}

const alarmKinds: Readonly<Record<MadeAlarmKind, AlarmKind>> = {
  input: 'sensor-open',
  low: 'deviation-low',
  high: 'deviation-high',
  machine: 'machine-stop',
};

/** The alarms of a made plant as spans, in the program's words. */
export function plantAlarms(plant: Plant): AlarmSpan[] {
  const { startMs, format } = plant.parameters;
  const ms = (seconds: number): number => startMs + seconds * 1000;
  return plant.alarms.map((alarm) => ({
    startMs: ms(alarm.startS),
    endMs: ms(alarm.endS),
    acknowledgedMs: ms(alarm.acknowledgedS),
    source: plant.zones[alarm.zone]?.name ?? plant.machines[alarm.machine]?.name ?? '',
    message: alarm.kind === 'machine' ? (format.alarms.stopTexts[alarm.reason] ?? '') : format.alarms.texts[alarm.kind],
    kind: alarmKinds[alarm.kind],
    zone: alarm.zone >= 0 ? alarm.zone : null,
    machine: plant.machines[alarm.machine]?.name ?? null,
    priority: null,
  }));
}
