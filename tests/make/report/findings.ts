import type { AlarmFindings } from '../../../src/model/alarm-findings.js';
import type { DowntimeFindings } from '../../../src/model/downtime-findings.js';
import type { Findings, ZoneFinding } from '../../../src/model/findings.js';
import { Random } from '../random.js';
import { noAlarms, noDowntime, plantAlarms, plantDowntime } from './losses.js';
import {
  days,
  dayText,
  driftingZone,
  endMs,
  healthyZone,
  iso,
  looseLeadZone,
  noisyZone,
  startMs,
  untoldZone,
} from './zones.js';

const sealerZones = ['Front jaw', 'Rear jaw', 'Left edge', 'Right edge', 'Platen centre'] as const;
const formerZones = [
  'Upper plate 1',
  'Upper plate 2',
  'Upper plate 3',
  'Lower plate 1',
  'Lower plate 2',
  'Lower plate 3',
] as const;

function plantZones(): readonly ZoneFinding[] {
  const names = [
    ...sealerZones.map((zone) => [zone, 'Tray sealer 1'] as const),
    ...sealerZones.map((zone) => [zone, 'Tray sealer 2'] as const),
    ...formerZones.map((zone) => [zone, 'Blister former'] as const),
  ];
  return names.map(([zone, machine], index) => {
    if (index === 0) return looseLeadZone(index, zone, machine);
    if (index === 12) return driftingZone(index, zone, machine);
    if (index === 7) return noisyZone(index, zone, machine);
    if (index === 9) return untoldZone(index, zone, machine);
    return healthyZone(index, zone, machine);
  });
}

const rankFirst = { faulty: 0, watch: 1, 'insufficient-data': 2, healthy: 3 } as const;

function ranked(zones: readonly ZoneFinding[]): readonly ZoneFinding[] {
  return [...zones]
    .sort((a, b) => rankFirst[a.status] - rankFirst[b.status] || b.downtimeMinutes - a.downtimeMinutes)
    .map((zone, index) => ({ ...zone, rank: index + 1 }));
}

interface Parts {
  readonly zones: readonly ZoneFinding[];
  readonly alarms?: AlarmFindings;
  readonly downtime?: DowntimeFindings;
}

/** Findings around any list of zones, with nothing else in them. */
export function findingsOf({ zones, alarms = noAlarms, downtime = noDowntime }: Parts): Findings {
  return {
    schemaVersion: 1,
    window: { start: iso(startMs), end: iso(endMs) },
    timezone: 'Europe/Oslo',
    sources: [],
    zones,
    alarms,
    downtime,
    problems: [],
    assumptions: [],
    history: null,
    trackRecord: null,
  };
}

/** Two weeks of the invented packer of sterile trays: two tray sealers, one blister former, 16 zones. */
export function plantFindings(): Findings {
  return {
    ...findingsOf({ zones: ranked(plantZones()), alarms: plantAlarms, downtime: plantDowntime }),
    sources: [
      {
        file: 'sealer-1.csv',
        kind: 'temperature',
        layout: 'wide, comma, ISO times',
        rowsRead: 120_960,
        rowsRejected: 3,
        rejectedByReason: { 'half a line at the end': 1, 'not a number': 2 },
        notes: ['A cell "####" is taken as an open circuit.'],
      },
      {
        file: 'sealer-2.csv',
        kind: 'temperature',
        layout: 'wide, semicolon, day first, decimal comma',
        rowsRead: 120_950,
        rowsRejected: 0,
        notes: [],
      },
      {
        file: 'former.csv.gz',
        kind: 'temperature',
        layout: 'long, tag and value, °F',
        rowsRead: 725_760,
        rowsRejected: 0,
        notes: [],
      },
      { file: 'alarms.csv', kind: 'alarm', layout: 'one row per event', rowsRead: 1_204, rowsRejected: 0, notes: [] },
      {
        file: 'maintenance.csv',
        kind: 'maintenance',
        layout: 'when, zone, done, found',
        rowsRead: 9,
        rowsRejected: 0,
        notes: [],
      },
    ],
    problems: [
      {
        code: 'bad-cell',
        file: 'sealer-1.csv',
        line: 1842,
        what: 'Column "Left edge" holds "24O.5", which is not a number.',
        todo: 'Correct that line; it was left out.',
        count: 2,
      },
      {
        code: 'clock-shift',
        file: 'alarms.csv',
        what: 'The alarm clock runs 74 s ahead of the temperature log.',
        todo: 'Set both clocks; the report corrects for it.',
      },
    ],
    assumptions: [
      'The log’s clock is Europe/Oslo, from plant.yaml.',
      'Sensors are Pt100 with 3 wires, from plant.yaml.',
    ],
    history: {
      runs: 4,
      previousEnd: iso(startMs),
      changes: [
        { zone: 'Front jaw', change: 'new', says: 'Not seen in the weeks before.' },
        { zone: 'Upper plate 3', change: 'worse', says: 'Offset 1.1 °C last time, 4.2 °C now.' },
      ],
      offsets: [
        {
          zone: 'Upper plate 3',
          points: [-28, -21, -14, -7].map((day) => ({
            time: iso(startMs + day * 86_400_000),
            offsetDegC: (28 + day) * 0.02,
          })),
        },
      ],
      weeks: [4, 5, 6, 7].map((week, i) => ({
        week: `2026-W0${week}`,
        alarms: 120 + 160 * i,
        zoneFaultMinutes: 20 + 60 * i,
        otherMinutes: 300 - 20 * i,
        zonesFaulty: i,
      })),
    },
    trackRecord: {
      confirmed: 7,
      right: 6,
      byCause: [
        { cause: 'sensor', said: 4, right: 4, low: 0.48, high: 1 },
        { cause: 'wiring', said: 3, right: 2, low: 0.19, high: 0.93 },
      ],
    },
  };
}

export const hostileNames = [
  '</script><b>bold</b>',
  '"><img src=x onerror=alert(1)>',
  'x'.repeat(500),
  'منطقة اللحام الأمامية 3',
  '__proto__',
  '=cmd|calc',
  'line\u2028separator\u2029end',
] as const;

/** Zones named by someone who means harm, or writes right to left. */
export function hostileFindings(): Findings {
  const zones = hostileNames.map((zone, index) =>
    (index % 2 ? driftingZone : looseLeadZone)(index, zone, hostileNames[(index + 1) % 4]!),
  );
  return {
    ...findingsOf({ zones: ranked(zones), alarms: plantAlarms, downtime: plantDowntime }),
    assumptions: [...hostileNames],
  };
}

export function emptyFindings(): Findings {
  return findingsOf({ zones: [] });
}

/** Many zones on many machines. */
export function manyFindings(count = 200): Findings {
  const zones = Array.from({ length: count }, (_, index) => {
    const machine = `Line ${1 + Math.floor(index / 16)}`;
    const name = `Zone ${1 + (index % 16)}`;
    if (index % 50 === 3) return looseLeadZone(index, name, machine);
    return healthyZone(index, name, machine);
  });
  return findingsOf({ zones: ranked(zones), alarms: plantAlarms, downtime: plantDowntime });
}

/**
 * The size the limit is stated for: 24 zones, two weeks. As many soaks, settled stretches and marks as real logs give:
 * a soak every six hours of rest, a stretch every half hour of work, an alarm for every open.
 */
export function sizedFindings(): Findings {
  const zones = Array.from({ length: 24 }, (_, index) => {
    const name = `Zone ${index + 1}`;
    if (index < 3) return withManyPoints(looseLeadZone(index, name, 'Barrel'));
    return withManyPoints(index < 6 ? driftingZone(index, name, 'Barrel') : healthyZone(index, name, 'Barrel'));
  });
  return { ...plantFindings(), zones: ranked(zones) };
}

function withManyPoints(zone: ZoneFinding): ZoneFinding {
  const random = new Random(77 + zone.rank);
  const at = (index: number, of: number): string => iso(startMs + ((index + 0.3) / of) * (endMs - startMs));
  return {
    ...zone,
    soaks: Array.from({ length: 50 }, (_, i) => ({
      time: at(i, 50),
      offsetDegC: Math.round(random.gauss() * 30) / 100,
      uncertaintyDegC: 0.03,
    })),
    duty: Array.from({ length: 320 }, (_, i) => ({
      time: at(i, 320),
      residualDegC: Math.round(random.gauss() * 500) / 100,
      residualPercent: Math.round(random.gauss() * 150) / 100,
    })),
    alarmMarks: Array.from({ length: 60 }, (_, i) => ({
      start: at(i, 60),
      end: at(i + 0.1, 60),
      message: `${zone.zone} temperature low`,
    })),
  };
}

export { days, dayText };
