import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Findings } from '../../src/model/findings.js';
import { analyse } from '../../src/pipeline.js';
import { Random } from '../make/random.js';
import { runsOf } from '../make/runs.js';
import { workbookOf } from '../make/workbook.js';

/** One row of a small log: time and reading, °C, per zone; NaN = open. */
interface Row {
  readonly timeMs: number;
  readonly degC: readonly number[];
}

const ZONES = 4;
const START_MS = Date.UTC(2026, 4, 4);

/** Two days of a machine that heats in two shifts; zone 2 loses its sensor for short times, more on the second day. */
function makeRows(): Row[] {
  const random = new Random(4);
  const levels = Array.from({ length: ZONES }, () => 20);
  const rows: Row[] = [];
  for (let minute = 0; minute < 2 * 1440; minute++) {
    const isOn = minute % 1440 > 360 && minute % 1440 < 1320;
    for (let zone = 0; zone < ZONES; zone++) {
      const target = isOn ? 150 + 10 * zone : 20;
      levels[zone]! += (target - levels[zone]!) / (8 + zone);
    }
    const isOpen = isOn && random.chance(minute > 1440 ? 0.03 : 0.01);
    rows.push({
      timeMs: START_MS + minute * 60_000,
      degC: levels.map((degC, zone) => (zone === 1 && isOpen ? NaN : degC + 0.2 * random.gauss())),
    });
  }
  return rows;
}

interface Packaging {
  readonly layout: 'wide' | 'long' | 'a file per zone';
  readonly separator: ',' | ';' | '\t';
  readonly isCrlf: boolean;
  readonly hasMark: boolean;
  readonly container: 'text' | 'gzip' | 'zip' | 'workbook';
  readonly isSplitByDay: boolean;
  readonly isRepeated: boolean;
  readonly isBackwards: boolean;
  /** How times are written; "local" is the clock of Oslo, named in plant.yaml. */
  readonly time: 'UTC' | '+02:00' | 'local' | 'epoch' | 'dots, local';
  readonly unit: 'degC' | 'degF';
}

const plain: Packaging = {
  ...{ layout: 'wide', separator: ',', isCrlf: false, hasMark: false, container: 'text' },
  ...{ isSplitByDay: false, isRepeated: false, isBackwards: false, time: 'UTC', unit: 'degC' },
};

const clockAt = (ms: number): string => new Date(ms).toISOString().slice(0, 19);
/** Oslo is two hours ahead of UTC in May (tz database). */
const osloAheadMs = 2 * 3_600_000;
const timeTexts: Record<Packaging['time'], (ms: number) => string> = {
  UTC: (ms) => `${clockAt(ms)}Z`,
  '+02:00': (ms) => `${clockAt(ms + osloAheadMs)}+02:00`,
  local: (ms) => clockAt(ms + osloAheadMs),
  epoch: (ms) => String(ms / 1000),
  'dots, local': (ms) =>
    clockAt(ms + osloAheadMs).replace(/^(\d+)-(\d+)-(\d+)T(.*)$/, (_, year, month, day, clock) =>
      [`${day}.${month}.${year}`, clock].join(' '),
    ),
};

/** The text of a file that holds some zones of some rows. */
function textOf(rows: readonly Row[], zones: readonly number[], packaging: Packaging): string {
  const { layout, separator, isCrlf, hasMark, isBackwards, time, unit } = packaging;
  const number = (degC: number): string => {
    if (Number.isNaN(degC)) return 'OPEN';
    const text = (unit === 'degF' ? degC * 1.8 + 32 : degC).toFixed(2);
    return separator === ';' ? text.replace('.', ',') : text;
  };
  const name = (zone: number): string => `Zone ${zone + 1} PV [${unit}]`;
  const ordered = isBackwards ? [...rows].reverse() : rows;
  const lines = ordered.flatMap(({ timeMs, degC }) => {
    const stamp = timeTexts[time](timeMs);
    if (layout === 'long') return zones.map((zone) => [stamp, name(zone), number(degC[zone]!)]);
    return [[stamp, ...zones.map((zone) => number(degC[zone]!))]];
  });
  const header = layout === 'long' ? ['Time', 'Tag', 'Value'] : ['Time', ...zones.map(name)];
  const text = [header, ...lines].map((cells) => cells.join(separator));
  return (hasMark ? '\uFEFF' : '') + [...text, ''].join(isCrlf ? '\r\n' : '\n');
}

/** Files by name. */
function filesOf(rows: readonly Row[], packaging: Packaging): Map<string, Uint8Array> {
  const half = rows.findIndex(({ timeMs }) => timeMs >= START_MS + 86_400_000);
  const parts = packaging.isSplitByDay ? [rows.slice(0, half), rows.slice(half)] : [rows];
  const all = Array.from({ length: ZONES }, (_, zone) => zone);
  const groups = packaging.layout === 'a file per zone' ? all.map((zone) => [zone]) : [all];
  const files = new Map<string, Uint8Array>();
  parts.forEach((part, i) =>
    groups.forEach((zones, k) => {
      const text = textOf(part, zones, packaging);
      files.set(`log-${i}-${k}.csv`, Buffer.from(text));
      if (packaging.isRepeated && i === 0) files.set(`again-${k}.csv`, Buffer.from(text));
    }),
  );
  return inContainer(files, packaging.container);
}

function inContainer(files: Map<string, Uint8Array>, container: Packaging['container']): Map<string, Uint8Array> {
  if (container === 'zip') return new Map([['logs.zip', zipSync(Object.fromEntries(files))]]);
  if (container === 'gzip') return new Map([...files].map(([name, bytes]) => [`${name}.gz`, gzipSync(bytes)]));
  if (container === 'text') return files;
  const sheet = (bytes: Uint8Array): Uint8Array => workbookOf(Buffer.from(bytes).toString());
  return new Map([...files].map(([name, bytes]) => [name.replace('.csv', '.xlsx'), sheet(bytes)]));
}

let root = '';
let rows: Row[] = [];
let usual: Findings;
let count = 0;

async function findingsOf(packaging: Packaging, given = rows): Promise<Findings> {
  const folder = join(root, String(count++));
  mkdirSync(folder);
  for (const [name, bytes] of filesOf(given, packaging)) writeFileSync(join(folder, name), bytes);
  if (packaging.time.endsWith('local')) writeFileSync(join(folder, 'plant.yaml'), 'timezone: Europe/Oslo\n');
  return analyse([folder]);
}

const byZone = ({ zones }: Findings) => new Map(zones.map((zone) => [zone.zone, zone]));

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), 'looselead-packaging-'));
  rows = makeRows();
  usual = await findingsOf(plain);
});
afterAll(() => rmSync(root, { recursive: true }));

const anyPackaging = fc.record<Packaging>({
  layout: fc.constantFrom('wide', 'long', 'a file per zone'),
  separator: fc.constantFrom(',', ';', '\t'),
  isCrlf: fc.boolean(),
  hasMark: fc.boolean(),
  container: fc.constantFrom('text', 'gzip', 'zip', 'workbook'),
  isSplitByDay: fc.boolean(),
  isRepeated: fc.boolean(),
  isBackwards: fc.boolean(),
  time: fc.constantFrom('UTC', '+02:00', 'local', 'epoch', 'dots, local'),
  unit: fc.constant('degC'),
});
/** A sheet has cells and no separators. */
const packagings = anyPackaging.map((packaging): Packaging =>
  packaging.container === 'workbook' ? { ...packaging, separator: ',', isCrlf: false, hasMark: false } : packaging,
);

describe('one log, however it is packed', () => {
  test('zone 2 has something to find', () => {
    expect(byZone(usual).get('Zone 2')!.probabilities.none).toBeLessThan(0.2);
    expect(byZone(usual).get('Zone 1')!.probabilities.none).toBeGreaterThan(0.8);
  });

  test('the same verdicts, onsets and counts from every packaging', { timeout: 600_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(packagings, async (packaging) => {
        const found = byZone(await findingsOf(packaging));
        for (const zone of usual.zones) {
          const other = found.get(zone.zone)!;
          for (const [cause, share] of Object.entries(zone.probabilities)) {
            expect(other.probabilities[cause as keyof typeof zone.probabilities]).toBeCloseTo(share, 6);
          }
          expect(other.onset).toBe(zone.onset);
          expect(other.symptoms.map(({ detector, count: n }) => [detector, n])).toEqual(
            zone.symptoms.map(({ detector, count: n }) => [detector, n]),
          );
        }
      }),
      { numRuns: runsOf(6, 40), seed: 9 },
    );
  });

  test('°F and °C agree: a hundredth of a degree moves no verdict by a hundredth', async () => {
    const found = byZone(await findingsOf({ ...plain, unit: 'degF' }));
    for (const zone of usual.zones) {
      expect(Math.abs(found.get(zone.zone)!.probabilities.none - zone.probabilities.none)).toBeLessThan(0.01);
      expect(found.get(zone.zone)!.onset).toBe(zone.onset);
    }
  });

  test('an hour more of a healthy zone does not make it worse', async () => {
    const less = byZone(await findingsOf(plain, rows.slice(0, -60)));
    for (const name of ['Zone 1', 'Zone 3', 'Zone 4']) {
      const more = byZone(usual).get(name)!.probabilities.none;
      expect(less.get(name)!.probabilities.none - more).toBeLessThan(0.05);
    }
  });
});
