import { alarmFindings } from '../../src/alarms/alarm-findings.js';
import { attributeDowntime } from '../../src/downtime/attribute-downtime.js';
import { AlarmList } from '../../src/model/alarm-list.js';
import type { Findings, ZoneFinding } from '../../src/model/findings.js';

const plant = { zones: [] };

/** A zone of findings with nothing to say but what is given. */
export function madeZone(zone: string, more: Partial<ZoneFinding> = {}): ZoneFinding {
  return {
    zone,
    machine: 'M1',
    rank: 1,
    status: 'healthy',
    probabilities: { sensor: 0, wiring: 0, input: 0, heater: 0, recording: 0, none: 1 },
    onset: null,
    fixed: null,
    offsetDegC: null,
    seriesOhm: null,
    shuntOhm: null,
    downtimeMinutes: 0,
    symptoms: [],
    unable: [],
    checks: [],
    terms: [],
    prior: {},
    sensor: null,
    wires: null,
    card: null,
    setpointDegC: null,
    roomDegC: null,
    leavesTolerance: null,
    trend: null,
    nextCheck: null,
    repairs: [],
    soaks: [],
    duty: [],
    opensByDay: [],
    trace: null,
    ...more,
  };
}

/** Findings of a window, with so many alarms and lost minutes each day. */
export function madeFindings(
  start: string,
  end: string,
  zones: readonly ZoneFinding[],
  daily = { alarms: 10, lostMinutes: 5 },
): Findings {
  const window = { start: Date.parse(start), end: Date.parse(end) };
  const days: string[] = [];
  for (let at = window.start; at < window.end; at += 86_400_000) days.push(new Date(at).toISOString().slice(0, 10));
  const digest = { startMs: window.start, periodMs: 60_000, length: 0, zones: [] };
  const { findings: downtime } = attributeDowntime({
    zones: [],
    digest,
    alarms: AlarmList.of([]),
    stops: [],
    faults: [],
    plant,
  });
  const alarms = alarmFindings({
    alarms: AlarmList.of([]),
    hasLog: true,
    zones: [],
    window,
    faultyZones: [],
    opensByZone: [],
    plant,
    clockShiftSeconds: null,
    clockShiftsByMachine: [],
  });
  return {
    schemaVersion: 1,
    window: { start: new Date(start).toISOString(), end: new Date(end).toISOString() },
    sources: [
      { file: 'a.csv', kind: 'temperature', layout: 'wide', rowsRead: days.length, rowsRejected: 0, notes: [] },
    ],
    zones,
    alarms: { ...alarms, byDay: days.map((day) => ({ day, count: daily.alarms })) },
    downtime: {
      ...downtime,
      byDay: days.map((day) => ({ day, zoneFaultMinutes: daily.lostMinutes, otherMinutes: 1, unknownMinutes: 1 })),
    },
    problems: [],
    assumptions: [],
    history: null,
    trackRecord: null,
  } as Findings;
}
