import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { pourSamples } from '../../src/intake/pour-samples.js';
import { readingState } from '../../src/model/sample-block.js';
import { survey, type SurveyOptions } from '../../src/read/survey/survey.js';
import { pourFiles } from './poured.js';

const folder = mkdtempSync(join(tmpdir(), 'looselead-changes-'));
afterAll(() => rmSync(folder, { recursive: true }));

const header = 'Time,Zone 1 PV [°C],Zone 1 SP [°C],Zone 1 OUT [%],Zone 2 PV [°C],Zone 2 SP [°C],Zone 2 OUT [%]';
const startMs = Date.UTC(2026, 0, 5, 6);
const stepMs = 5000;
const rowCount = 2000;
const deadbandDegC = 0.3;

/** What the plant does: two zones about their set points, with a noise of fixed seed. */
function plantRows(): number[][] {
  let seed = 7;
  const noise = () => (seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31) / 2 ** 31 - 0.5;
  return Array.from({ length: rowCount }, (_, i) =>
    [150, 165].flatMap((setpoint) => [
      Math.round((setpoint + 2 * Math.sin(i / 40 + setpoint) + 0.4 * noise()) * 10) / 10,
      setpoint,
      Math.round(40 + 10 * Math.sin(i / 60)),
    ]),
  );
}

/** The same as a log of changes: a cell is written when it differs from the last one written. */
function asChanges(rows: readonly number[][], isLogged: (row: number) => boolean = () => true): string {
  const last = new Array<number>(6).fill(NaN);
  const lines = rows.map((row, i) => {
    if (!isLogged(i)) return '';
    const cells = row.map((value, k) => {
      const isSame = Math.abs(value - last[k]!) < (k % 3 === 0 ? deadbandDegC : 0.5);
      if (!isSame) last[k] = value;
      return isSame ? '' : String(value);
    });
    return cells.every((cell) => cell === '') ? '' : line(i, cells);
  });
  return text(lines);
}

const line = (i: number, cells: readonly string[]) =>
  `${new Date(startMs + i * stepMs).toISOString()},${cells.join(',')}`;
const text = (lines: readonly string[]) => `${[header, ...lines.filter((it) => it !== '')].join('\n')}\n`;

async function read(name: string, content: string, options: SurveyOptions = {}) {
  const file = join(folder, name);
  writeFileSync(file, content);
  const found = await survey([file], options);
  const samples: { zone: number; ms: number; degC: number; state: number; setpointDegC: number }[] = [];
  const poured = await pourSamples(found, {
    block({ zone, length, timeMs, readingDegC, state, setpointDegC }) {
      for (let i = 0; i < length; i++)
        samples.push({
          ...{ zone, ms: timeMs[i]!, degC: readingDegC[i]! },
          state: state[i]!,
          setpointDegC: setpointDegC[i]!,
        });
    },
  });
  return { file: found.files[0]!, zones: found.zones, samples, sources: poured.sources };
}

/** Longest time between two samples of the first zone. */
function longestStepMs(samples: readonly { zone: number; ms: number }[]): number {
  const times = samples.filter(({ zone }) => zone === 0).map(({ ms }) => ms);
  return Math.max(...times.slice(1).map((ms, i) => ms - times[i]!));
}

test('a blank holds the last value, within the deadband of the log, and this is told', async () => {
  const rows = plantRows();
  const { file, zones, samples, sources } = await read('changes.csv', asChanges(rows));
  expect(file.isChangeLogged).toBe(true);
  expect(sources[0]!.notes.join()).toMatch(
    /a blank cell holds the last value, at most 24 h while others are written; [\d.]+ min without any is a gap/,
  );
  expect(zones.every(({ isChangeLogged }) => isChangeLogged)).toBe(true);
  expect(longestStepMs(samples)).toBeLessThanOrEqual(6 * stepMs);
  for (const { zone, ms, degC, state, setpointDegC } of samples) {
    const row = rows[Math.floor((ms - startMs) / stepMs)]!;
    expect(state).toBe(readingState.good);
    expect(Math.abs(degC - row[zone * 3]!)).toBeLessThan(deadbandDegC);
    expect(setpointDegC).toBe(row[zone * 3 + 1]);
  }
});

test('a hole longer than the limit stays a hole, and the limit can be given', async () => {
  const changes = asChanges(plantRows(), (row) => row < 500 || row >= 1220); // an hour without rows
  const usual = longestStepMs((await read('hole.csv', changes)).samples);
  expect(usual).toBeGreaterThan(48 * 60_000);
  expect(usual).toBeLessThan(52 * 60_000);
  expect(longestStepMs((await read('hole.csv', changes, { holdMinutes: 20 })).samples)).toBeLessThan(42 * 60_000);
});

test('a word for an open input is news, not a blank', async () => {
  const rows = asChanges(plantRows()).split('\n');
  const at = rows.findIndex((row, i) => i > 300 && /Z,\d/.test(row));
  rows[at] = rows[at]!.replace(/Z,[\d.]+/, 'Z,OPEN');
  const { samples } = await read('open.csv', rows.join('\n'));
  expect(samples.some(({ zone, state }) => zone === 0 && state === readingState.openText)).toBe(true);
});

test.each([
  [
    'readings that drop out beside set points that do not',
    (row: number[], i: number) => row.map((v, k) => (k % 3 === 0 && (i * 7 + k) % 3 === 0 ? '' : String(v))),
  ],
  ['one input that is dead', (row: number[]) => row.map((v, k) => (k === 0 ? '' : String(v)))],
  [
    'columns written every sixth row',
    (row: number[], i: number) => row.map((v, k) => (k % 3 !== 0 ? '' : i % 6 === 0 ? v.toFixed(3) : '')),
  ],
])('%s: blanks stay blanks', async (_, cells) => {
  const { file, samples } = await read('blanks.csv', text(plantRows().map((row, i) => line(i, cells(row, i)))));
  expect(file.isChangeLogged).toBe(false);
  expect(samples.some(({ state }) => state === readingState.blank)).toBe(true);
});

test('tags that are read in turn are no log of changes', async () => {
  const rows = Array.from({ length: 900 }, (_, i) => {
    const time = new Date(Date.UTC(2026, 8, 6) + i * 10_000).toISOString().slice(0, 19);
    return `${time};Zone ${(i % 3) + 1} Ist;${(150 + ((i * 7) % 23) / 10).toFixed(1)}`;
  });
  const { found, zones } = await pourFiles({ 'log.csv': `Zeit;Kanal;Wert\n${rows.join('\n')}\n` });
  expect(found.files[0]!.isChangeLogged).toBe(false);
  expect(found.files[0]!.samplingMs).toBe(30_000);
  expect(zones.map(({ timeMs }) => timeMs.length)).toEqual([300, 300, 300]);
});
