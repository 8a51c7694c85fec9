import { expect, test } from 'vitest';
import { LogProblem } from '../../src/model/problem.js';
import { parsePlantFile } from '../../src/read/plant/plant-text.js';
import { pourFiles } from './poured.js';

test('reads every key of the contract', () => {
  const plant = parsePlantFile(
    'unit: degF\ntimezone: Europe/Oslo\nzones:\n  - name: Front jaw\n    machine: M1\n    sensor: pt100\n    wires: 3\n    card: 1A\n',
    'plant.yaml',
  );
  expect(plant).toEqual({
    unit: 'degF',
    timezone: 'Europe/Oslo',
    zones: [{ name: 'Front jaw', machine: 'M1', sensor: 'pt100', wires: 3, card: '1A' }],
  });
});

test.each([
  ['zones:\n  - name: A\n    wires: 5\n', 3, 'wires'],
  ['zones:\n  - name: A\n  - nam: B\n', 3, 'nam'],
  ['unit: celsius\n', 1, 'unit'],
  ['priors:\n  none: 0.9\n  sensor: 60\n', 3, 'from 0 to 1'],
  ['unit: degC\npriors:\n  none: 0.9\n  sensor: 0.2\n', 2, 'at most 1 together'],
  ['priorFindings: 0\n', 1, 'priorFindings'],
  ['# comment\ntimezone: Mars/Base\n', 2, 'timezone'],
  ['zones:\n  - name: A\n  bad indent: [\n', 3, 'YAML'],
])('a slip is told with its line and key: %j', (text, line, key) => {
  const error = thrownBy(() => parsePlantFile(text, 'plant.yaml'));
  expect(error).toBeInstanceOf(LogProblem);
  expect(error).toMatchObject({ code: 'bad-plant-file', place: { file: 'plant.yaml', line } });
  expect((error as LogProblem).message).toContain(key);
});

test('a plant file of megabytes is refused before it is read, with what to do', async () => {
  const text = Array.from({ length: 60_000 }, (_, zone) => `  - name: Zone ${zone}\n    sensor: pt100\n`).join('');
  const files = { 'log.csv': 'Time,Zone 1 PV\n2026-01-05 06:00:00,150\n', 'plant.yaml': `zones:\n${text}` };
  await expect(pourFiles(files)).rejects.toThrow(/It holds 2\.\d MB, and a plant file may hold 2 MB\. Keep the zones/);
});

test('shares and strengths of causes', () => {
  const text =
    'priors: { none: 0.9, sensor: 0.06 }\npriorFindings: 50\nstrengths:\n  card-shifts: { input: 4, none: -2 }\n';
  expect(parsePlantFile(text, 'plant.yaml')).toEqual({
    zones: [],
    priors: { none: 0.9, sensor: 0.06 },
    priorFindings: 50,
    strengths: { 'card-shifts': { input: 4, none: -2 } },
  });
});

function thrownBy(step: () => unknown): unknown {
  try {
    step();
  } catch (error) {
    return error;
  }
  return null;
}

test('names are matched by ear, and what plant.yaml knows fills the zone', async () => {
  const log = `Time,FRONT-JAW_ACT,other PV\n${Array.from({ length: 20 }, (_, i) => `2026-01-05 00:00:${10 + i},${22 + i},22`).join('\n')}\n`;
  const plant =
    'zones:\n  - name: Front jaw\n    machine: M7\n    sensor: tc-k\n    wires: 2\n    card: 2B\n  - name: Not there\n';
  const { found } = await pourFiles({ 'log.csv': log, 'plant.yaml': plant });
  expect(found.zones[0]).toMatchObject({ name: 'Front jaw', machine: 'M7', sensor: 'tc-k', wires: 2, card: '2B' });
  expect(found.problems.find((problem) => problem.code === 'unmatched-zone')!.what).toContain('Not there');
});

test('any column can be named', async () => {
  const log = `Time,A7,B9,C3\n${Array.from({ length: 20 }, (_, i) => `2026-01-05 00:00:${10 + i},${22 + i},150,40`).join('\n')}\n`;
  const { zones } = await pourFiles({
    'log.csv': log,
    'plant.yaml': 'zones:\n  - name: Jaw\n    reading: A7\n    setpoint: B9\n    output: C3\n',
  });
  expect(zones).toHaveLength(1);
  expect([zones[0]!.readingDegC[3], zones[0]!.setpointDegC[3], zones[0]!.outputPercent[3]]).toEqual([25, 150, 40]);
});

test.each([
  ['zones:\n  - nme: Bar\n', 2, '"nme" of entry 1 of "zones" is wrong: there is no such key'],
  ['zones:\n  - machine: M1\n', 2, '"name" of entry 1 of "zones" is wrong: it must be there'],
  ['zones:\n  - name: Bar\n    wires: 5\n', 3, '"wires" of entry 1 of "zones" is wrong: it must be 2, 3 or 4'],
  ['zones: Bar\n', 1, '"zones" is wrong: it must be a list'],
  ['unit: degC\nholdMinutes: -3\n', 2, '"holdMinutes" is wrong: it must be above 0'],
  [
    'shifts:\n  - days: shift A\n    from: "06:00"\n    to: "14:00"\n',
    2,
    '"days" of entry 1 of "shifts" is wrong: it must be days such as "mon-fri", "sat, sun" or "daily"',
  ],
  [
    'shifts:\n  - days: mon\n    from: "25:00"\n    to: "14:00"\n',
    3,
    '"from" of entry 1 of "shifts" is wrong: it must be a clock',
  ],
])('%j: line and key are told in words', (text, line, says) => {
  const error = thrownBy(() => parsePlantFile(text, 'plant.yaml')) as { place: { line: number }; what: string };
  expect(error.place.line).toBe(line);
  expect(error.what).toContain(says);
});

const nine = (item: string): string => `[${new Array(9).fill(item).join(', ')}]`;
test.each([
  [
    'aliases that unfold a billion times',
    `a: &a ${nine('x')}\n${[...'bcdefghij'].map((name, i) => `${name}: &${name} ${nine(`*${'abcdefghi'[i]}`)}\n`).join('')}zones: *j\n`,
    'unfold to more',
  ],
  ['an alias of nothing', 'zones: *nothing\n', 'nothing'],
  ['lists in lists', `zones: ${'['.repeat(100_000)}`, 'nested too deeply'],
])('%s end with a sentence', (_, text, says) => {
  const error = thrownBy(() => parsePlantFile(text, 'plant.yaml'));
  expect(error).toMatchObject({ code: 'bad-plant-file', place: { file: 'plant.yaml' } });
  expect((error as LogProblem).what).toContain(says);
});
