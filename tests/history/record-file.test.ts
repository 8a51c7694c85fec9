import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { distinctFindings } from '../../src/history/distinct-findings.js';
import { addToRecord, readRecord, recordFileName } from '../../src/history/record-file.js';
import type { Cause } from '../../src/model/cause.js';
import type { PlacedEntry } from '../../src/model/record.js';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'looselead-record-'));
});
afterAll(() => rm(folder, { recursive: true }));

const entry = (found: Cause, time: string, more: Partial<PlacedEntry> = {}): PlacedEntry => ({
  zone: 'Front jaw',
  machine: 'M1',
  time,
  found,
  note: '',
  ...more,
});
const at = (line: number) => ({ place: { file: 'record.jsonl', line } });

describe('the file', () => {
  test('is no record where there is none', async () => {
    expect(await readRecord(join(folder, 'none', recordFileName))).toEqual({
      isKept: false,
      entries: [],
      problems: [],
    });
  });

  test('many who write at once lose nothing', async () => {
    const path = join(folder, 'crowd', recordFileName);
    const notes = Array.from({ length: 40 }, (_, i) => `job ${i}`);
    await Promise.all(notes.map((note) => addToRecord(path, entry('wiring', '2026-03-04T10:00:00.000Z', { note }))));
    const { entries, problems } = await readRecord(path);
    expect(problems).toEqual([]);
    expect(entries.map(({ note }) => note).sort()).toEqual([...notes].sort());
  });

  test('each bad line is a sentence with its place, and the others count', async () => {
    const path = join(folder, 'bad.jsonl');
    const good = JSON.stringify(entry('sensor', '2026-03-04T10:00:00.000Z'));
    const lines = [
      good,
      good.replace('sensor', 'gremlins'),
      good.replace('2026-03-04', '2026-33-04'),
      good.replace('Front jaw', ''),
      '{"zone":"Front jaw"}',
      '',
      '[1, 2',
    ];
    await writeFile(path, `\uFEFF${lines.join('\r\n')}\r\n${good.slice(0, 20)}`);
    const { entries, problems } = await readRecord(path);
    expect(entries.map(({ place }) => place?.line)).toEqual([1]);
    expect(problems.map(({ line, what }) => [line, what])).toEqual([
      [
        2,
        'This line of the record does not say which of the known causes was found, but "gremlins", so it was left out.',
      ],
      [3, 'This line of the record has no time that can be read, but "2026-33-04T10:00:00.000Z", so it was left out.'],
      [4, 'This line of the record names no zone, so it was left out.'],
      [5, 'This line of the record has no time that can be read, so it was left out.'],
      [7, 'This line of the record is not whole, so it was left out.'],
      [8, 'This line of the record is not whole, so it was left out.'],
    ]);
    expect(problems.every(({ file, todo }) => file === path && todo.includes('sensor, wiring, input'))).toBe(true);
  });

  test('what is noted after a line that was cut short stands on a line of its own', async () => {
    const path = join(folder, 'torn.jsonl');
    await writeFile(path, '{"zone":"Fro');
    await addToRecord(path, entry('heater', '2026-03-05T10:00:00.000Z'));
    const { entries, problems } = await readRecord(path);
    expect([entries.map(({ found }) => found), problems.map(({ line }) => line)]).toEqual([['heater'], [1]]);
    expect((await readFile(path, 'utf8')).split('\n')).toHaveLength(3);
  });

  test('a folder in its place is a sentence', async () => {
    await expect(readRecord(folder)).rejects.toMatchObject({ code: 'bad-history' });
    await expect(
      addToRecord(join(folder, 'bad.jsonl', 'x'), entry('none', '2026-03-05T10:00:00.000Z')),
    ).rejects.toMatchObject({ code: expect.stringMatching(/bad-history|write-failed/) as string });
  });
});

describe('one repair counts once', () => {
  const zones = [
    { zone: 'Front jaw', machine: 'M1' },
    { zone: 'Rear jaw', machine: 'M1' },
    { zone: 'Rear jaw', machine: 'M2' },
  ];
  const told = (entries: PlacedEntry[], timezone = 'UTC') => {
    const { findings, problems } = distinctFindings(entries, zones, timezone);
    return { found: findings.map(({ found, time }) => [found, time.slice(0, 10)]), problems };
  };

  test('in the maintenance list and in the record, with or without the machine', () => {
    const list = entry('sensor', '2026-03-04T08:00:00.000Z');
    const record = entry('sensor', '2026-03-04T18:00:00.000Z', { ...at(1), machine: null });
    expect(told([list, record])).toEqual({ found: [['sensor', '2026-03-04']], problems: [] });
  });

  test('noted some days late, but not the next fault of the kind', () => {
    const days = ['2026-03-04', '2026-03-09', '2026-03-12', '2026-03-18'];
    const { found } = told(days.map((day, i) => entry('wiring', `${day}T10:00:00.000Z`, at(i + 1))));
    expect(found.map(([, day]) => day)).toEqual(['2026-03-04', '2026-03-12']);
  });

  test('typed twice: the second line is told', () => {
    const { found, problems } = told([1, 2].map((line) => entry('input', '2026-03-04T10:00:00.000Z', at(line))));
    expect(found).toHaveLength(1);
    expect(problems).toMatchObject([{ line: 2, what: 'This says the same as record.jsonl:1 and counts once.' }]);
  });

  test('two findings of one day contradict each other: the later line counts, and is told', () => {
    const two = told([
      entry('sensor', '2026-03-04T10:00:00.000Z', at(1)),
      entry('wiring', '2026-03-04T09:00:00.000Z', at(2)),
    ]);
    expect(two.found).toEqual([['wiring', '2026-03-04']]);
    expect(two.problems).toMatchObject([{ file: 'record.jsonl', line: 2 }]);
    expect(two.problems[0]!.what).toMatch(/found to be wiring here, but sensor in record\.jsonl:1 on the same day/);
  });

  test('where the record speaks, the maintenance list of that week is silent, and a contradiction is told', () => {
    const list = entry('heater', '2026-03-04T10:00:00.000Z');
    const late = told([list, entry('none', '2026-03-06T09:00:00.000Z', at(7))]);
    expect(late.found).toEqual([['none', '2026-03-06']]);
    expect(late.problems).toMatchObject([{ line: 7 }]);
    expect(late.problems[0]!.what).toContain(
      'none here, but heater in the maintenance list of 2026-03-04; this line counts',
    );
    const rear = told([list, entry('none', '2026-03-06T09:00:00.000Z', { ...at(7), zone: 'Rear jaw' })]);
    expect([rear.found.length, rear.problems]).toEqual([2, []]);
  });

  test('a day is a day on the clock of the plant', () => {
    const evening = [
      entry('sensor', '2026-03-05T03:00:00.000Z', at(1)), // 4 March, 21:00 in Chicago
      entry('wiring', '2026-03-04T18:00:00.000Z', at(2)),
    ];
    expect(told(evening, 'America/Chicago').found).toHaveLength(1);
    expect(told(evening, 'UTC').found).toHaveLength(2);
  });

  test('a zone that no report knows, or that two machines have, is told and left out', () => {
    const { found, problems } = told([
      entry('sensor', '2026-03-04T10:00:00.000Z', { ...at(1), zone: 'Fornt jaw' }),
      entry('sensor', '2026-03-04T10:00:00.000Z', { ...at(2), machine: 'M9' }),
      entry('sensor', '2026-03-04T10:00:00.000Z', { ...at(3), zone: 'Rear jaw', machine: null }),
    ]);
    expect(found).toEqual([]);
    expect(problems.map(({ line, what }) => [line, what])).toEqual([
      [1, 'No report has a zone "Fornt jaw" on "M1", so the line was left out.'],
      [2, 'No report has a zone "Front jaw" on "M9", so the line was left out.'],
      [3, 'There is a zone "Rear jaw" on M1 and on M2; the line says no machine, so it was left out.'],
    ]);
  });
});
