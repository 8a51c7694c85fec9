import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Findings } from '../../src/model/findings.js';
import { analyse } from '../../src/pipeline.js';
import { Random } from '../make/random.js';

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
  readonly separator: ',' | ';' | '\t';
  readonly isCrlf: boolean;
  readonly hasMark: boolean;
  readonly isPacked: boolean;
  readonly isSplitByDay: boolean;
  readonly isRepeated: boolean;
  readonly isBackwards: boolean;
  readonly offsetHours: number;
  readonly unit: 'degC' | 'degF';
}

const plain: Packaging = {
  separator: ',',
  isCrlf: false,
  hasMark: false,
  isPacked: false,
  isSplitByDay: false,
  isRepeated: false,
  isBackwards: false,
  offsetHours: 0,
  unit: 'degC',
};

function textOf(
  rows: readonly Row[],
  { separator, isCrlf, hasMark, isBackwards, offsetHours, unit }: Packaging,
): string {
  const number = (degC: number): string => {
    if (Number.isNaN(degC)) return 'OPEN';
    const text = (unit === 'degF' ? degC * 1.8 + 32 : degC).toFixed(2);
    return separator === ';' ? text.replace('.', ',') : text;
  };
  const time = (ms: number): string => {
    const local = new Date(ms + offsetHours * 3_600_000).toISOString().slice(0, 19);
    return offsetHours === 0 ? `${local}Z` : `${local}+0${offsetHours}:00`;
  };
  const header = ['Time', ...Array.from({ length: ZONES }, (_, zone) => `Zone ${zone + 1} PV [${unit}]`)];
  const lines = rows.map(({ timeMs, degC }) => [time(timeMs), ...degC.map(number)].join(separator));
  if (isBackwards) lines.reverse();
  return (hasMark ? '\uFEFF' : '') + [header.join(separator), ...lines, ''].join(isCrlf ? '\r\n' : '\n');
}

let root = '';
let rows: Row[] = [];
let usual: Findings;
let count = 0;

async function findingsOf(packaging: Packaging, given = rows): Promise<Findings> {
  const folder = join(root, String(count++));
  mkdirSync(folder);
  const half = given.findIndex(({ timeMs }) => timeMs >= START_MS + 86_400_000);
  const parts = packaging.isSplitByDay ? [given.slice(0, half), given.slice(half)] : [given];
  for (const [i, part] of parts.entries()) {
    const bytes = Buffer.from(textOf(part, packaging));
    const name = packaging.isPacked ? `log-${i}.csv.gz` : `log-${i}.csv`;
    writeFileSync(join(folder, name), packaging.isPacked ? gzipSync(bytes) : bytes);
    if (packaging.isRepeated && i === 0) writeFileSync(join(folder, `again.csv`), bytes);
  }
  return analyse([folder]);
}

const byZone = ({ zones }: Findings) => new Map(zones.map((zone) => [zone.zone, zone]));

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), 'looselead-packaging-'));
  rows = makeRows();
  usual = await findingsOf(plain);
});
afterAll(() => rmSync(root, { recursive: true }));

const packagings = fc.record<Packaging>({
  separator: fc.constantFrom(',', ';', '\t'),
  isCrlf: fc.boolean(),
  hasMark: fc.boolean(),
  isPacked: fc.boolean(),
  isSplitByDay: fc.boolean(),
  isRepeated: fc.boolean(),
  isBackwards: fc.boolean(),
  offsetHours: fc.constantFrom(0, 2),
  unit: fc.constant('degC'),
});

describe('one log, however it is packed', () => {
  test('zone 2 has something to find', () => {
    expect(byZone(usual).get('Zone 2')!.probabilities.none).toBeLessThan(0.2);
    expect(byZone(usual).get('Zone 1')!.probabilities.none).toBeGreaterThan(0.8);
  });

  test('the same verdicts, onsets and counts from every packaging', { timeout: 120_000 }, async () => {
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
      { numRuns: 12, seed: 9 },
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
