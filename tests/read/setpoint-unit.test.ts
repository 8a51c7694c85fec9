import { describe, expect, test } from 'vitest';
import { pourFiles } from './poured.js';

/** Three shifts of a plant that never goes cold, a column of reading and set point for each zone. */
function log(setpoints: readonly number[]): string {
  const names = setpoints.flatMap((_, i) => [`Z${i + 1} PV`, `Z${i + 1} SP`]);
  const rows = Array.from({ length: 200 }, (_, i) => {
    const time = new Date(Date.UTC(2026, 2, 2, 6) + i * 60_000).toISOString().slice(0, 19);
    return [time, ...setpoints.flatMap((sp, z) => [(sp + ((i + z) % 7) / 10).toFixed(1), sp])].join(',');
  });
  return `${[['Time', ...names].join(','), ...rows].join('\n')}\n`;
}
const fromDegC = (degC: number): number => Math.round((degC * 1.8 + 32) * 10) / 10;
const fromDegF = (degF: number): number => Math.round(((degF - 32) / 1.8) * 10) / 10;

describe('the unit of a log that says it in no name', () => {
  const rows = (cell: (degC: number) => string, firstDegC: number): string =>
    ['Time,Z1,Z2']
      .concat(
        Array.from({ length: 300 }, (_, i) => {
          const time = new Date(Date.UTC(2026, 2, 2, 6) + i * 60_000).toISOString().slice(0, 19);
          const degC = Math.min(160, firstDegC + i * 12) + (i % 3) / 10;
          return [time, cell(degC), cell(degC + 0.4)].join(',');
        }),
      )
      .join('\n') + '\n';

  test.each([
    ['a unit behind each number', (degC: number) => `${(degC * 1.8 + 32).toFixed(1)} °F`, 'degF'],
    ['a letter behind each number', (degC: number) => `${(degC * 1.8 + 32).toFixed(1)}F`, 'degF'],
    ['degrees Celsius behind each number', (degC: number) => `${degC.toFixed(1)} °C`, 'degC'],
  ])('%s', async (_, cell, unit) => {
    const { found, zones } = await pourFiles({ 'log.csv': rows(cell, 150) });
    expect(found.files[0]!.columns[1]!.unit).toBe(unit);
    expect(found.problems).toEqual([]);
    expect(zones[0]!.readingDegC[1]).toBeCloseTo(160.1, 1);
  });

  /** Hot but for the first ten minutes. */
  const heatedUp = (cold: (i: number) => readonly [number, number]): string => {
    const [header, ...hot] = rows((degC) => degC.toFixed(1), 160).split('\n');
    const first = hot.slice(0, 10).map((row, i) => [row.slice(0, 19), ...cold(i)].join(','));
    return [header, ...first, ...hot.slice(10)].join('\n');
  };

  test('ten minutes in which all zones are as cold as a hall in °C', async () => {
    const { found } = await pourFiles({ 'log.csv': heatedUp((i) => [19.5 + (i % 3) / 10, 20.4]) });
    expect(found.files[0]!.notes).toContain(
      'unit: °C, all zones lie near 19.6 at the same time, which is a hall in °C',
    );
    expect(found.problems).toEqual([]);
  });

  test.each([
    ['a code on all zones', [20, 20]],
    ['one zone alone', [20, 160.2]],
  ] as const)('%s does not tell the unit', async (_, cold) => {
    const { found } = await pourFiles({ 'log.csv': heatedUp(() => cold) });
    expect(found.problems.map(({ code }) => code)).toEqual(['ambiguous-unit']);
  });
});

describe('the unit of a log that says none and never goes cold, from its set points', () => {
  test.each([
    ['round °C, logged in °F', [150, 170, 190].map(fromDegC), 'degF'],
    ['round °C and halves of ten, logged in °F', [150, 165, 180, 200].map(fromDegC), 'degF'],
    ['round °F, logged in °C', [300, 325, 350, 375].map(fromDegF), 'degC'],
  ])('%s', async (_, setpoints, unit) => {
    const { found, zones } = await pourFiles({ 'log.csv': log(setpoints) });
    expect(found.files[0]!.columns[1]!.unit).toBe(unit);
    expect(found.problems).toEqual([]);
    const degC = unit === 'degF' ? (setpoints[0]! - 32) / 1.8 : setpoints[0]!;
    expect(zones[0]!.setpointDegC[0]).toBeCloseTo(degC, 3);
  });

  test.each([
    ['round as they stand may be either', [300, 325, 350, 375]],
    ['round as they stand and in the other unit', [302, 320, 410, 500]],
    ['odd in both', [187, 192, 203, 211]],
    ['one choice of one plant', [302, 302, 302, 302]],
  ])('stays assumed where they tell nothing: %s', async (_, setpoints) => {
    const { found } = await pourFiles({ 'log.csv': log(setpoints) });
    expect(found.files[0]!.columns[1]!.unit).toBe('degC');
    expect(found.problems.map(({ code }) => code)).toEqual(['ambiguous-unit']);
  });

  test('a log that says nothing is guessed as its neighbour is named, and told', async () => {
    const named = log([310, 330])
      .replace(/Z(\d) PV/g, 'Oven $1 PV (°F)')
      .replace(/Z(\d) SP/g, 'Oven $1 SP');
    const { found } = await pourFiles({ 'a.csv': named, 'b.csv': log([300, 325]) });
    const units = found.files.map(({ columns }) => columns[1]!.unit);
    expect(units).toEqual(['degF', 'degF']);
    expect(found.problems.map(({ code, file }) => [code, file?.slice(-5)])).toEqual([['ambiguous-unit', 'b.csv']]);
  });

  test('of set points at random few are told, fewer than the odds that are asked for', async () => {
    const { unitOfSetpoints } = await import('../../src/read/columns/setpoint-unit.js');
    let seed = 7;
    const random = (): number => (seed = (seed * 16_807) % 2_147_483_647) / 2_147_483_647;
    const told = Array.from({ length: 20_000 }, () => {
      const zones = Array.from({ length: 4 }, () => 100 + Math.floor(random() * 200));
      const series = zones.map((sp) => ({
        series: { value: [sp], decimals: 0 } as never,
        ...{ role: 'setpoint' as const, rest: '', unit: null, scale: 1, why: '' },
      }));
      return unitOfSetpoints(series);
    });
    expect(told.filter((unit) => unit !== null).length).toBeLessThan(20_000 / 100);
  });
});
