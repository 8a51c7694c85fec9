import type { AlarmFindings } from '../../../src/model/alarm-findings.js';
import type { DowntimeFindings, DowntimeRow } from '../../../src/model/downtime-findings.js';
import { days, dayText, iso, startMs } from './zones.js';

export const noAlarms: AlarmFindings = {
  hasLog: false,
  activations: 0,
  hoursCovered: 0,
  perTenMinutesMean: 0,
  perTenMinutesPeak: 0,
  perHourMean: 0,
  perDayMean: 0,
  medianSecondsToAcknowledge: null,
  medianSecondsToClear: null,
  floods: [],
  shareOfTimeInFlood: 0,
  chattering: [],
  fleeting: [],
  stale: [],
  mostFrequent: [],
  byZone: [],
  byMachine: [],
  byPriority: [],
  byShift: [],
  byDay: [],
  removable: [],
  contradictions: [],
  clockShiftSeconds: null,
  thresholds: {},
};

const count = (name: string, activations: number, minutesInAlarm: number) => ({
  name,
  count: activations,
  share: activations / 602,
  minutesInAlarm,
});

export const plantAlarms: AlarmFindings = {
  ...noAlarms,
  hasLog: true,
  activations: 602,
  hoursCovered: 336,
  perTenMinutesMean: 0.3,
  perTenMinutesPeak: 17,
  perHourMean: 1.8,
  perDayMean: 43,
  medianSecondsToAcknowledge: 41,
  medianSecondsToClear: 95,
  floods: [
    {
      start: iso(startMs + 11.4 * 86_400_000),
      end: iso(startMs + 11.42 * 86_400_000),
      count: 31,
      peakPerTenMinutes: 17,
    },
  ],
  shareOfTimeInFlood: 0.003,
  chattering: [count('Front jaw sensor open', 288, 61)],
  fleeting: [count('Rear jaw deviation low', 12, 1)],
  stale: [{ name: 'Guard 4 bypassed', since: iso(startMs + 86_400_000), hours: 311 }],
  mostFrequent: [
    count('Front jaw sensor open', 288, 61),
    count('Film splice', 96, 240),
    count('Low air pressure', 60, 31),
  ],
  byZone: [count('Front jaw', 310, 70), count('Upper plate 3', 14, 22)],
  byMachine: [count('Tray sealer 1', 402, 150), count('Blister former', 120, 95), count('Tray sealer 2', 80, 44)],
  byPriority: [count('high', 310, 70), count('low', 292, 219)],
  byShift: [count('06:00–14:00', 340, 160), count('14:00–22:00', 262, 129)],
  byDay: Array.from({ length: days }, (_, day) => ({ day: dayText(day), count: day < 8 ? 20 : 20 + (day - 8) * 12 })),
  removable: [
    { zone: 'Front jaw', count: 310, cumulativeShare: 0.515 },
    { zone: 'Upper plate 3', count: 14, cumulativeShare: 0.538 },
    { zone: 'Right edge', count: 9, cumulativeShare: 0.553 },
  ],
  contradictions: [
    { zone: 'Rear jaw', what: 'alarm-without-sign', count: 3, says: '3 sensor alarms with no sign in the readings.' },
  ],
  clockShiftSeconds: -74,
  thresholds: { floodStartPerTenMinutes: 10, floodEndPerTenMinutes: 5 },
};

const row = (
  name: string,
  bucket: DowntimeRow['bucket'],
  machine: string | null,
  minutes: number,
  stops: number,
): DowntimeRow => ({
  name,
  bucket,
  machine,
  minutes,
  stops,
  longestMinutes: Math.ceil(minutes / Math.max(1, stops)) + 4,
  cost: (minutes / 60) * 420,
});

export const noDowntime: DowntimeFindings = {
  from: [],
  stoppedMinutes: 0,
  plannedMinutes: 0,
  zoneFaultMinutes: 0,
  otherMinutes: 0,
  unknownMinutes: 0,
  currency: null,
  cost: null,
  byZone: [],
  byMachine: [],
  byWeek: [],
  pareto: [],
  reliability: [],
  notes: [],
};

export const plantDowntime: DowntimeFindings = {
  from: ['running', 'stop list'],
  stoppedMinutes: 9_850,
  plannedMinutes: 9_120,
  zoneFaultMinutes: 212,
  otherMinutes: 388,
  unknownMinutes: 130,
  currency: 'EUR',
  cost: 5_110,
  byZone: [row('Front jaw', 'zone-fault', 'Tray sealer 1', 212, 31)],
  byMachine: [
    row('Tray sealer 1', 'zone-fault', 'Tray sealer 1', 212, 31),
    row('Tray sealer 1', 'other-cause', 'Tray sealer 1', 190, 12),
    row('Blister former', 'other-cause', 'Blister former', 198, 16),
    row('Tray sealer 2', 'unknown', 'Tray sealer 2', 130, 9),
  ],
  byWeek: [
    row('2026-W06', 'zone-fault', null, 40, 6),
    row('2026-W06', 'other-cause', null, 201, 14),
    row('2026-W07', 'zone-fault', null, 172, 25),
    row('2026-W07', 'other-cause', null, 187, 14),
    row('2026-W07', 'unknown', null, 130, 9),
  ],
  pareto: [
    row('Front jaw', 'zone-fault', 'Tray sealer 1', 212, 31),
    row('Film splice', 'other-cause', null, 208, 20),
    row('Low air pressure', 'other-cause', null, 180, 8),
    row('Not told', 'unknown', null, 130, 9),
  ],
  reliability: [
    {
      name: 'Tray sealer 1',
      operatingHours: 160,
      failures: 31,
      mtbfHours: 5.2,
      mtbfLowHours: 3.8,
      mtbfHighHours: 7.5,
      mttrMinutes: 6.8,
      availability: 0.96,
    },
    {
      name: 'Tray sealer 2',
      operatingHours: 168,
      failures: 0,
      mtbfHours: null,
      mtbfLowHours: null,
      mtbfHighHours: null,
      mttrMinutes: null,
      availability: 0.99,
    },
  ],
  notes: ['Planned time is taken from the shift calendar in plant.yaml.'],
};
