import { gzipSync } from 'node:zlib';
import { strToU8, zipSync } from 'fflate';
import { parquetWriteBuffer } from 'hyparquet-writer';
import { madeFindings, madeZone } from '../make/made-findings.js';
import { workbookOf } from '../make/workbook.js';

/** What one reader is given: the file that is mutated, and sound files that lie beside it. */
export interface WholeFile {
  readonly reader: string;
  readonly name: string;
  readonly bytes: Buffer;
  readonly beside: Readonly<Record<string, Buffer>>;
}

const rows = 60;
const startMs = Date.UTC(2026, 0, 5, 6);
const timeOf = (row: number): string => new Date(startMs + row * 10_000).toISOString();
const degC = (row: number, zone: number): string =>
  row % 23 === 22 ? '3276.7' : (150 + zone + (row % 5) / 10).toFixed(1);
const lines = (line: (row: number) => string, count = rows): string =>
  Array.from({ length: count }, (_, row) => line(row)).join('');
/** Lists say the same things over and over; few rows hold them all. */
const listRows = 24;

const wide = `Time,Z1 PV,Z1 SP,Z1 OUT,Z2 PV,Z2 SP,Z2 OUT,Running\n${lines(
  (row) => `${timeOf(row)},${degC(row, 0)},150,${30 + (row % 3)},${degC(row, 1)},151,31,${row < 40 ? 1 : 0}\n`,
)}`;
const german = `Datum;Uhrzeit;"Zone 1 Istwert";"Zone 1 Sollwert"\r\n${lines(
  (row) => `05.01.2026;${timeOf(row).slice(11, 19)};${degC(row, 0).replace('.', ',')};150,0\r\n`,
)}`;
const long = `Time,Tag,Value,Quality\n${lines(
  (row) => `${timeOf(row)},Z1.PV,${degC(row, 0)},Good\n${timeOf(row)},Z1.SP,150,Good\n`,
)}`;
const single = `Timestamp,Value\n${lines((row) => `${timeOf(row)},${degC(row, 0)}\n`)}`;
const alarms = `Time,Source,Message,State,Priority\n${lines(
  (row) => `${timeOf(row)},Z${1 + (row % 2)},Sensor break,${row % 4 < 2 ? 'Active' : 'Cleared'},${1 + (row % 3)}\n`,
  listRows,
)}`;
const maintenance = `Date,Zone,Done,Found\n${lines(
  (row) => `${timeOf(row)},Z1,${row % 2 === 0 ? 'Replaced sensor' : 'Tightened terminal'},loose wire\n`,
  listRows,
)}`;
const stops = `Start,End,Reason,Planned\n${lines((row) => `${timeOf(row)},${timeOf(row + 1)},Tray jam,no\n`, listRows)}`;
const plant = `timezone: Europe/Oslo
unit: degC
costPerHour: { M1: 900 }
currency: EUR
zones:
  - name: Z1
    machine: M1
    sensor: pt100
    wires: 3
    card: 1A
  - &second
    name: Z2
    machine: M1
    sensor: type-k
`;

const sound = { 'log.csv': Buffer.from(wide) };

/** One sound file for each reader, each with readings, codes and a change of state in it. */
export function wholeFiles(): WholeFile[] {
  const file = (
    reader: string,
    name: string,
    bytes: Uint8Array | string,
    beside: WholeFile['beside'] = {},
  ): WholeFile => ({
    reader,
    name,
    bytes: Buffer.from(bytes as string),
    beside,
  });
  return [
    file('wide', 'wide.csv', wide),
    file('wide, decimal comma', 'wide.txt', german),
    file('wide, UTF-16', 'wide16.csv', Buffer.from(`\uFEFF${wide}`, 'utf16le')),
    file('long', 'long.csv', long),
    file('a file per zone', 'Zone 1.csv', single, { 'Zone 2.csv': Buffer.from(single) }),
    file('alarms', 'alarms.csv', alarms, sound),
    file('maintenance list', 'maintenance.csv', maintenance, sound),
    file('stop list', 'stops.csv', stops, sound),
    file('workbook', 'log.xlsx', workbookOf(wide)),
    file('Parquet', 'log.parquet', parquet()),
    file('gzip', 'log.csv.gz', gzipSync(wide)),
    file('zip', 'logs.zip', zipSync({ 'a/log.csv': strToU8(wide), 'alarms.csv': strToU8(alarms) })),
    file('plant.yaml', 'plant.yaml', plant, sound),
    file('findings', 'findings.json', findings()),
    file('history', 'run-20260105T000000Z-0123456789ab.json', findings(), sound),
    file('record', 'record.jsonl', record(), sound),
  ];
}

function parquet(): Uint8Array {
  const each = Array.from({ length: rows }, (_, row) => row);
  return new Uint8Array(
    parquetWriteBuffer({
      columnData: [
        { name: 'time', data: each.map((row) => new Date(startMs + row * 10_000)), type: 'TIMESTAMP' },
        { name: 'Z1 PV', data: each.map((row) => Number(degC(row, 0))), type: 'DOUBLE' },
        { name: 'State', data: each.map((row) => (row < 40 ? 'RUN' : 'STOP')), type: 'STRING' },
      ],
    }),
  );
}

function findings(): string {
  const faulty = {
    status: 'faulty',
    probabilities: { sensor: 0.8, wiring: 0.1, input: 0, heater: 0, recording: 0, none: 0.1 },
    offsetDegC: 2.5,
    onset: '2026-01-02T00:00:00.000Z',
  } as const;
  return JSON.stringify(
    madeFindings('2025-12-29T00:00:00.000Z', '2026-01-05T00:00:00.000Z', [madeZone('Z1', faulty), madeZone('Z2')]),
  );
}

function record(): string {
  const entry = { machine: null, found: 'wiring', note: '' };
  const lines = [
    { ...entry, zone: 'Z1', time: '2026-01-04T10:00:00.000Z' },
    { ...entry, zone: 'Z2', time: '2026-01-04T11:00:00.000Z' },
  ];
  return lines.map((line) => `${JSON.stringify(line)}\n`).join('');
}
