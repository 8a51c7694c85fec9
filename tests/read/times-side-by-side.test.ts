import { describe, expect, test } from 'vitest';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 2, 2, 6);
const clock = (ms: number): string => new Date(ms).toISOString().slice(0, 19).replace('T', ' ');
const degC = (z: number, i: number): number => Math.min(150 + z, 24 + z + 3 * i) + (i % 3) / 10;

/** One column of times and one of values, as an export puts tag beside tag. */
function tag(z: number, count: number, stepMs: number, value = (i: number) => degC(z, i)): string[] {
  return Array.from({ length: count }, (_, i) => `${clock(startMs + 1000 * z + i * stepMs)};${value(i)}`);
}

function beside(header: string, tags: readonly (readonly string[])[], blank = ';'): string {
  const longest = Math.max(...tags.map(({ length }) => length));
  const rows = Array.from({ length: longest }, (_, i) => tags.map((cells) => cells[i] ?? blank).join(';'));
  return `${header}\n${rows.join('\n')}\n`;
}

describe('columns of times side by side', () => {
  test('each tag keeps its own times, steps and length', async () => {
    const tags = [tag(1, 300, 60_000), tag(2, 150, 120_000), tag(3, 20, 900_000)];
    const text = beside('Time1;Zone 1 PV;Time2;Zone 2 PV;Time3;Zone 3 PV', tags);
    const { zones, result } = await pourFiles({ 'log.csv': text });
    expect(zones.map(({ name, timeMs }) => [name, timeMs.length, timeMs[1]! - timeMs[0]!])).toEqual([
      ['Zone 1', 300, 60_000],
      ['Zone 2', 150, 120_000],
      ['Zone 3', 20, 900_000],
    ]);
    for (const [z, { timeMs, readingDegC }] of zones.entries()) {
      expect(timeMs[0]).toBe(startMs + 1000 * (z + 1));
      expect(readingDegC).toEqual(timeMs.map((_, i) => degC(z + 1, i)));
    }
    expect(result.sources[0]).toMatchObject({ rowsRejected: 0 });
  });

  test.each([
    ['names above the times', 'Zone 1 PV;;Zone 1 SP;', ['']],
    ['names above both', 'Zone 1 PV;;Zone 1 SP;\nTimestamp;Value;Timestamp;Value', ['']],
    ['names of times that say which', 'Zone 1 PV Time;Zone 1 PV Value;Zone 1 SP Time;Zone 1 SP Value', ['']],
    ['a running number in front', 'No;Time;Zone 1 PV;Time;Zone 1 SP', ['1;']],
  ])('%s', async (_, header, [front]) => {
    const tags = [tag(1, 200, 30_000), tag(1, 200, 30_000, () => 151)];
    const text = beside(header, tags).replace(/^(?=2026)/gm, front!);
    const { zones } = await pourFiles({ 'log.csv': text });
    expect(zones.map(({ name }) => name)).toEqual(['Zone 1']);
    expect(zones[0]!.readingDegC).toEqual(Array.from({ length: 200 }, (__, i) => degC(1, i)));
    expect(zones[0]!.setpointDegC[100]).toBe(151);
  });

  test('value, quality and time of each tag: a bad quality is of its own value only', async () => {
    const rows = Array.from({ length: 200 }, (_, i) =>
      [1, 2]
        .map((z) => `${degC(z, i)};${z === 2 && i === 150 ? 'Bad' : 'Good'};${clock(startMs + i * 30_000)}`)
        .join(';'),
    );
    const header = [1, 2].map((z) => `Z${z}.Value;Z${z}.Quality;Z${z}.Timestamp`).join(';');
    const { zones } = await pourFiles({ 'log.csv': `${header}\n${rows.join('\n')}\n` });
    expect(zones.map(({ name }) => name)).toEqual(['Z1', 'Z2']);
    expect(zones.map(({ state }) => state.map((it, i) => (it === state[149] ? -1 : i)).filter((i) => i >= 0))).toEqual([
      [],
      [150],
    ]);
  });

  test('a second time of the same row is none of these', async () => {
    const rows = Array.from({ length: 200 }, (_, i) => {
      const time = clock(startMs + i * 30_000);
      return `${time};${time};${degC(1, i)};${degC(2, i)}`;
    });
    const { found } = await pourFiles({ 'log.csv': `Local;UTC;Zone 1 PV;Zone 2 PV\n${rows.join('\n')}\n` });
    expect(found.files[0]).toMatchObject({ layout: 'wide' });
    expect(found.zones.map(({ name }) => name)).toEqual(['Zone 1', 'Zone 2']);
  });
});

test('values are named by cells that say the same in every row', async () => {
  const rows = Array.from({ length: 200 }, (_, i) => {
    const cells = [1, 2].map((z) => `Zone ${z} PV;${z === 2 && i === 150 ? 'Bad' : 'Good'};${degC(z, i)}`);
    return `${clock(startMs + i * 30_000)};${cells.join(';')}`;
  });
  const { zones } = await pourFiles({
    'log.csv': `time;TagA;QualityA;ValueA;TagB;QualityB;ValueB\n${rows.join('\n')}\n`,
  });
  expect(zones.map(({ name }) => name)).toEqual(['Zone 1', 'Zone 2']);
  expect(zones.map(({ state }) => state[150] === state[149])).toEqual([true, false]);
});
