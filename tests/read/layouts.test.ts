import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readingState } from '../../src/model/sample-block.js';
import { inFolder, pourFiles, pourPaths, type PouredZone } from './poured.js';

// One log with a known content, written in every way; whatever the way, the same samples must come out.
const startMs = Date.UTC(2026, 8, 13, 22, 0, 0);
const rows = 40;
const stepMs = 30_000;
const degC = (zone: number, row: number): number =>
  Math.round((22 + zone + Math.min(row, 20) * 6.5 + ((row * 7) % 3) / 10) * 10) / 10;
const percent = (zone: number, row: number): number => (row < 20 ? 100 : 30 + zone + (row % 4));

interface Notation {
  readonly separator?: string;
  readonly decimal?: string;
  readonly time?: (date: Date) => string;
  readonly names?: readonly string[];
  readonly timeName?: string;
  readonly lineEnd?: string;
  readonly before?: string;
  readonly unitRow?: string;
  readonly number?: (value: number) => string;
}

const isoText = (date: Date): string => date.toISOString().slice(0, 19).replace('T', ' ');
const two = (value: number): string => String(value).padStart(2, '0');
const clock = (date: Date): string => date.toISOString().slice(11, 19);
const at = (row: number): Date => new Date(startMs + row * stepMs);

function wide(notation: Notation = {}): string {
  const {
    separator = ',',
    decimal = '.',
    time = isoText,
    lineEnd = '\n',
    before = '',
    unitRow,
    timeName = 'Date/Time',
  } = notation;
  const names = notation.names ?? [
    'Front jaw PV',
    'Front jaw SP',
    'Front jaw OUT',
    'Rear jaw PV',
    'Rear jaw SP',
    'Rear jaw OUT',
  ];
  const number = notation.number ?? ((value: number) => value.toFixed(1).replace('.', decimal));
  const lines = Array.from({ length: rows }, (_, row) =>
    [time(at(row)), ...[0, 1].flatMap((zone) => [degC(zone, row), 150 + zone, percent(zone, row)].map(number))].join(
      separator,
    ),
  );
  return (
    before + [[timeName, ...names].join(separator), ...(unitRow ? [unitRow] : []), ...lines].join(lineEnd) + lineEnd
  );
}

function long(line: (time: Date, tag: string, value: string) => string, header: string): string {
  const lines = [header];
  for (let row = 0; row < rows; row++)
    for (const [zone, name] of ['Front jaw', 'Rear jaw'].entries()) {
      lines.push(line(at(row), `${name}.PV`, degC(zone, row).toFixed(1)));
      lines.push(line(at(row), `${name}.SP`, String(150 + zone)));
      lines.push(line(at(row), `${name}.CV`, String(percent(zone, row))));
    }
  return `${lines.join('\n')}\n`;
}

function expectAll(zones: readonly PouredZone[], names = ['Front jaw', 'Rear jaw'], scale = 1): void {
  expect(zones.map((zone) => zone.name)).toEqual(names);
  for (const [zone, got] of zones.entries()) {
    expect(got.timeMs).toEqual(Array.from({ length: rows }, (_, row) => startMs + row * stepMs));
    got.readingDegC.forEach((value, row) => expect(value).toBeCloseTo(degC(zone, row) * scale, 6));
    expect(got.state).toEqual(new Array(rows).fill(0));
    got.setpointDegC.forEach((value) => expect(value).toBeCloseTo(150 + zone, 6));
    expect(got.outputPercent).toEqual(Array.from({ length: rows }, (_, row) => percent(zone, row)));
  }
}

const dotted = (date: Date): string =>
  `${two(date.getUTCDate())}.${two(date.getUTCMonth() + 1)}.${date.getUTCFullYear()} ${clock(date)}`;
const twelve = (date: Date): string => {
  const hour = date.getUTCHours();
  return `${date.getUTCMonth() + 1}/${date.getUTCDate()}/${date.getUTCFullYear()} ${hour % 12 || 12}:${two(date.getUTCMinutes())}:${two(date.getUTCSeconds())} ${hour < 12 ? 'AM' : 'PM'}`;
};

describe('wide text', () => {
  const cases: [string, string | Uint8Array][] = [
    ['comma and ISO times', wide()],
    ['semicolon, decimal comma, day first', wide({ separator: ';', decimal: ',', time: dotted })],
    ['tab, month first, 12-hour clock', wide({ separator: '\t', time: twelve })],
    ['pipe and epoch seconds', wide({ separator: '|', time: (date) => String(date.getTime() / 1000) })],
    ['epoch milliseconds', wide({ time: (date) => String(date.getTime()) })],
    ['spreadsheet days', wide({ time: (date) => String(date.getTime() / 86_400_000 + 25_569) })],
    ['carriage returns alone', wide().replaceAll('\n', '\r')],
    ['CRLF and quotes', wide({ lineEnd: '\r\n', number: (value) => `"${value.toFixed(1)}"` })],
    ['quoted decimal commas parted by commas', wide({ number: (value) => `"${value.toFixed(1).replace('.', ',')}"` })],
    [
      'runs of blanks, date and clock apart',
      wide({
        separator: '   ',
        timeName: 'Date   Time',
        names: ['Front_jaw_PV', 'Front_jaw_SP', 'Front_jaw_OUT', 'Rear_jaw_PV', 'Rear_jaw_SP', 'Rear_jaw_OUT'],
      }),
    ],
    [
      'date and clock columns, dots in the clock',
      wide({
        separator: ';',
        timeName: 'Datum;Uhrzeit',
        time: (date) => dotted(date).replace(' ', ';').replace(/:/g, '.'),
      }),
    ],
    ['preamble', wide({ before: 'Controller trend export\nSite: Plant 7\nInterval: 30 s\n\n' })],
    ['row of units', wide({ unitRow: ',°C,°C,%,°C,°C,%' })],
    [
      'German words',
      wide({
        names: [
          'Front jaw Istwert',
          'Front jaw Sollwert',
          'Front jaw Stellgrad',
          'Rear jaw Istwert',
          'Rear jaw Sollwert',
          'Rear jaw Stellgrad',
        ],
      }),
    ],
    [
      'times and numbers as texts of formulas',
      wide({ time: (date) => `="${dotted(date)}"`, number: (value) => `="${value.toFixed(1)}"` }),
    ],
    ['month names', wide({ time: (date) => `${date.getUTCDate()}-Sep-26 ${clock(date)}` })],
    ['UTF-8 with mark', `\uFEFF${wide()}`],
    ['UTF-16 LE', Buffer.from(`\uFEFF${wide({ separator: '\t' })}`, 'utf16le')],
    ['UTF-16 BE', Buffer.from(`\uFEFF${wide({ separator: '\t' })}`, 'utf16le').swap16()],
    [
      'Windows-1252',
      Buffer.from(
        wide({
          names: [
            'Front jaw PV (°C)',
            'Front jaw SP (°C)',
            'Front jaw OUT',
            'Rear jaw PV (°C)',
            'Rear jaw SP (°C)',
            'Rear jaw OUT',
          ],
        }),
        'latin1',
      ),
    ],
    ['no line end after the last row', wide().trimEnd()],
  ];
  test.each(cases)('%s', async (_, text) => {
    const { zones, result, found } = await pourFiles({ 'log.csv': text });
    const isBlank = found.files[0]!.dialect.separator === ' ';
    expectAll(zones, isBlank ? ['Front_jaw', 'Rear_jaw'] : undefined);
    expect(result.sources[0]).toMatchObject({ rowsRead: rows, rowsRejected: 0 });
  });

  test('tenths of a degree as whole numbers', async () => {
    const { zones } = await pourFiles({ 'log.csv': wide({ number: (value) => String(Math.round(value * 10)) }) });
    expect(zones[0]!.readingDegC[30]).toBeCloseTo(degC(0, 30), 6);
    expect(zones[0]!.setpointDegC[30]).toBeCloseTo(150, 6);
    expect(zones[0]!.outputPercent[30]).toBeCloseTo(percent(0, 30), 6);
  });
  test('tenths of a degree in a hall so cold that the readings alone would not tell', async () => {
    const cold = Array.from({ length: 300 }, (_, i) => (i < 120 ? 60 + (i % 9) : 1795 + (i % 9)));
    const lines = cold.map((value, i) => `${isoText(at(i))},${value},${i < 100 ? 0 : 1800}`);
    const { zones } = await pourFiles({ 'log.csv': `Time,Z1 PV,Z1 SP\n${lines.join('\n')}\n` });
    expect(zones[0]!.readingDegC[0]).toBeCloseTo(6, 6);
    expect(zones[0]!.readingDegC[299]).toBeCloseTo(179.7, 6);
    expect(zones[0]!.setpointDegC[299]).toBeCloseTo(180, 6);
  });
  test('Fahrenheit, by the words and by the hall', async () => {
    const asDegF = (value: number): string => value.toFixed(1);
    const lines = (name: string) =>
      `Time,${name}\n${Array.from({ length: rows }, (_, row) => `${isoText(at(row))},${asDegF(degC(0, row) * 1.8 + 32)}`).join('\n')}\n`;
    for (const name of ['Front jaw temp [degF]', 'Front jaw (°F)', 'Front jaw PV']) {
      const { zones } = await pourFiles({ 'log.csv': lines(name) });
      expect(zones[0]!.readingDegC[25]).toBeCloseTo(degC(0, 25), 1);
    }
  });
  test('output from 0 to 1', async () => {
    const text = `Time,Z1 PV,Z1 OUT\n${Array.from({ length: rows }, (_, row) => `${isoText(at(row))},${degC(0, row)},${percent(0, row) / 100}`).join('\n')}\n`;
    const { zones } = await pourFiles({ 'log.csv': text });
    expect(zones[0]!.outputPercent[30]).toBeCloseTo(percent(0, 30), 6);
  });
});

describe('long text', () => {
  test.each([
    ['epoch ms, semicolon', long((time, tag, value) => `${time.getTime()};${tag};${value}`, 'time;tag;value')],
    [
      'ISO, comma, quality',
      long((time, tag, value) => `${time.toISOString()},${tag},${value},Good`, 'time,tag,value,quality'),
    ],
    [
      'decimal comma',
      long((time, tag, value) => `${dotted(time)};${tag};${value.replace('.', ',')}`, 'Zeit;Name;Wert'),
    ],
    [
      'OPC status numbers',
      long((time, tag, value) => `${isoText(time)},${tag},${value},192`, 'Timestamp,TagName,Value,Quality'),
    ],
    ['no header', long((time, tag, value) => `${isoText(time)},${tag},${value}`, '').trimStart()],
  ])('%s', async (_, text) => expectAll((await pourFiles({ 'log.csv': text })).zones));

  test('an empty value with a bad quality is a bad value, an empty one with a good quality is none', async () => {
    const row = (time: Date, tag: string, value: string) => `${isoText(time)},${tag},${value}`;
    const text = long((time, tag, value) => `${row(time, tag, value)},Good`, 'time,tag,value,quality').split('\n');
    const firstTag = text[1]!.split(',')[1]!;
    const own = text.flatMap((line, i) => (line.split(',')[1] === firstTag ? [i] : []));
    for (const [nth, quality] of [
      [5, 'Bad: sensor failure'],
      [8, 'Good'],
    ] as const) {
      const [time, tag] = text[own[nth]!]!.split(',');
      text[own[nth]!] = `${time},${tag},,${quality}`;
    }
    const { zones } = await pourFiles({ 'log.csv': text.join('\n') });
    const states = zones.find(({ state }) => state.some((s) => s !== readingState.good))!.state;
    expect([states[5], states[8]]).toEqual([readingState.badQuality, readingState.blank]);
  });

  test.each([
    ['1', '0'],
    ['0', '1'],
    ['192', '0'],
  ])('a quality that is %s in most rows means good by it, and bad by %s', async (good, bad) => {
    const row = (time: Date, tag: string, value: string) => `${isoText(time)},${tag},${value},${good}`;
    const text = long(row, 'time,tag,value,quality').split('\n');
    const ofReading = text.flatMap((line, i) => (line.split(',')[1] === text[1]!.split(',')[1] ? [i] : []));
    text[ofReading[5]!] = text[ofReading[5]!]!.replace(/[^,]*$/, bad);
    const { zones } = await pourFiles({ 'log.csv': text.join('\n') });
    const states = zones.flatMap(({ state }) => [...state]);
    expect(states.filter((state) => state === readingState.badQuality)).toHaveLength(1);
    expect(states.filter((state) => state === readingState.good)).toHaveLength(states.length - 1);
  });

  test('tag after tag, newest first, and shuffled rows', async () => {
    const [header, ...lines] = long((time, tag, value) => `${time.getTime()};${tag};${value}`, 'time;tag;value')
      .trimEnd()
      .split('\n');
    const byTag = [...lines].sort((a, b) => a.split(';')[1]!.localeCompare(b.split(';')[1]!));
    const shuffled = lines
      .map((line, i) => [(i * 37) % lines.length, line] as const)
      .sort((a, b) => a[0] - b[0])
      .map(([, line]) => line);
    const names = (zones: readonly PouredZone[]) => [...zones].sort((a, b) => a.name.localeCompare(b.name));
    for (const order of [byTag, [...lines].reverse(), shuffled]) {
      const { zones } = await pourFiles({ 'log.csv': [header, ...order].join('\n') + '\n' });
      expectAll(names(zones));
    }
  });

  test('a long file that lists tag after tag beyond what is sampled', async () => {
    const perTag = 2500;
    const names = Array.from({ length: 40 }, (_, tag) => `Zone ${tag + 1}`);
    const lines = names.flatMap((name, tag) =>
      Array.from(
        { length: perTag },
        (_, row) => `${at(row).toISOString()},${name} PV (°C),${(20 + tag + (row % 50) / 10).toFixed(1)}`,
      ),
    );
    const { zones, result } = await pourFiles({ 'log.csv': `time,tag,value\n${lines.join('\n')}\n` });
    expect(zones.map((zone) => zone.name).sort()).toEqual([...names].sort());
    for (const zone of zones) expect(zone.timeMs).toHaveLength(perTag);
    expect(result.sources[0]).toMatchObject({ rowsRead: 40 * perTag, rowsRejected: 0 });
  });

  test('a zone column beside columns of reading, set point and output', async () => {
    const lines = Array.from({ length: rows }, (_, row) =>
      ['Front jaw', 'Rear jaw']
        .map((name, zone) => `${isoText(at(row))},${name},${degC(zone, row)},${150 + zone},${percent(zone, row)}`)
        .join('\n'),
    );
    expectAll((await pourFiles({ 'log.csv': `Time,Zone,Actual,Setpoint,Output\n${lines.join('\n')}\n` })).zones);
  });

  test('a log of changes is held on its grid up to its own sign of life, and longer silence is a gap', async () => {
    const lines = ['time,tag,value'];
    const hour = 120; // rows of 30 s
    let held = NaN;
    for (let row = 0; row < 6 * hour; row++) {
      const value = row < 3 * hour ? 22 + Math.floor(row / 2) : row % (hour / 4) === 0 ? 400 : held;
      const isSilent = row >= 5 * hour && row < 5.6 * hour;
      const isSignOfLife = row >= 3 * hour && row % 20 === 0; // every 10 min
      if (!isSilent && (value !== held || isSignOfLife)) lines.push(`${at(row).toISOString()},Z1 PV (°C),${value}`);
      held = value;
    }
    const { zones, found } = await pourFiles({ 'log.csv': `${lines.join('\n')}\n` });
    const log = found.files[0]!;
    expect(log.isChangeLogged).toBe(true);
    expect(found.zones[0]!.isChangeLogged).toBe(true);
    expect(log.holdMs).toBeGreaterThanOrEqual(10 * 60_000);
    const steps = zones[0]!.timeMs.slice(1).map((ms, i) => ms - zones[0]!.timeMs[i]!);
    expect(steps.filter((step) => step > 60_000)).toHaveLength(1);
    expect(Math.max(...steps)).toBeGreaterThan(20 * 60_000);
  });
});

describe('several files', () => {
  const lineOf = (row: number): string =>
    `${isoText(at(row))},${[0, 1].flatMap((zone) => [degC(zone, row), 150 + zone, percent(zone, row)]).join(',')}`;
  const header = 'Time,Front jaw PV,Front jaw SP,Front jaw OUT,Rear jaw PV,Rear jaw SP,Rear jaw OUT';
  const part = (from: number, to: number): string =>
    `${[header, ...Array.from({ length: to - from }, (_, i) => lineOf(from + i))].join('\n')}\n`;

  test('daily files that overlap', async () => {
    const { zones, result } = await pourFiles({
      'log_2026-09-13.csv': part(0, 25),
      'log_2026-09-14.csv': part(20, rows),
    });
    expectAll(zones);
    expect(result.sources.map((source) => source.rejectedByReason)).toEqual([{}, { repeated: 5 }]);
  });
  test('a file per zone, named by its file or by a line above the header', async () => {
    const one = (zone: number): string =>
      `Time,PV,SP,OUT\n${Array.from({ length: rows }, (_, row) => `${isoText(at(row))},${degC(zone, row)},${150 + zone},${percent(zone, row)}`).join('\n')}\n`;
    expectAll((await pourFiles({ 'Front jaw.csv': one(0), 'Rear jaw.csv': one(1) })).zones);
    expectAll((await pourFiles({ 'a.csv': `Zone: Front jaw\n${one(0)}`, 'b.csv': `Zone: Rear jaw\n${one(1)}` })).zones);
  });
  test('a file per tag, merged by time', async () => {
    const files: Record<string, string> = {};
    for (const [zone, name] of ['Front jaw', 'Rear jaw'].entries()) {
      const column = (role: string, value: (row: number) => number): string =>
        `Time,${name} ${role}\n${Array.from({ length: rows }, (_, row) => `${isoText(at(row))},${value(row)}`).join('\n')}\n`;
      files[`${name} PV.csv`] = column('PV', (row) => degC(zone, row));
      files[`${name} SP.csv`] = column('SP', () => 150 + zone);
      files[`${name} OUT.csv`] = column('OUT', (row) => percent(zone, row));
    }
    expectAll((await pourFiles(files)).zones);
  });
  test('two machines with the same zone names', async () => {
    const { zones } = await pourFiles({
      'line 1/log.csv': part(0, rows),
      'line 2/log.csv': part(0, rows).replace(/,(\d+\.?\d*),150,/g, ',99,150,'),
    });
    expect(zones.map((zone) => [zone.machine, zone.name])).toEqual([
      ['line 1', 'line 1 Front jaw'],
      ['line 1', 'line 1 Rear jaw'],
      ['line 2', 'line 2 Front jaw'],
      ['line 2', 'line 2 Rear jaw'],
    ]);
  });
  test('packed: .gz and a .zip of files', async () => {
    expectAll((await pourFiles({ 'log.csv.gz': gzipSync(part(0, rows)) })).zones);
    const zip = zipSync({ 'a/log1.csv': Buffer.from(part(0, 20)), 'a/log2.csv': Buffer.from(part(20, rows)) });
    expectAll((await pourFiles({ 'logs.zip': zip })).zones);
  });
  test('no header: columns are numbered, names can be given', async () => {
    const text = part(0, rows).split('\n').slice(1).join('\n');
    const bare = await pourFiles({ 'log.csv': text });
    expect(bare.found.problems.map((problem) => problem.code)).toContain('unknown-layout');
    await inFolder({ 'log.csv': text }, async (folder) =>
      expectAll((await pourPaths([folder], { names: header.split(',') })).zones),
    );
  });
  test('running columns go to their machine', async () => {
    const text = `Time,M1 Jaw PV,M2 Jaw PV,M1 Running,M2 State\n${Array.from({ length: rows }, (_, row) => `${isoText(at(row))},${degC(0, row)},${degC(1, row)},${row % 2},${row < 10 ? 'STOP' : 'RUN'}`).join('\n')}\n`;
    const { zones } = await pourFiles({ 'log.csv': text });
    expect(zones.map((zone) => [zone.name, zone.machine])).toEqual([
      ['M1 Jaw', 'M1'],
      ['M2 Jaw', 'M2'],
    ]);
    expect(zones[0]!.running.slice(0, 4)).toEqual([0, 1, 0, 1]);
    expect(zones[1]!.running.slice(8, 12)).toEqual([0, 0, 1, 1]);
  });
  test('a column that all zones share is read in every day file', async () => {
    const day = (from: number, to: number) =>
      `Time,Front PV,Rear PV,Set point,Line speed\n${Array.from({ length: to - from }, (_, i) => from + i)
        .map((row) => `${isoText(at(row))},${degC(0, row)},${degC(1, row)},150,${row % 2 ? 42 : 0}`)
        .join('\n')}\n`;
    const { zones } = await pourFiles({ 'day-1.csv': day(0, 20), 'day-2.csv': day(20, 40) });
    expect(zones).toHaveLength(2);
    for (const zone of zones) {
      expect(zone.running).toEqual(Array.from({ length: 40 }, (_, row) => row % 2));
      expect(new Set(zone.setpointDegC)).toEqual(new Set([150]));
    }
  });
});
