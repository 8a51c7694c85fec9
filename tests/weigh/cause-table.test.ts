import { expect, test } from 'vitest';
import { causes } from '../../src/model/cause.js';
import { causeTable } from '../../src/weigh/cause-table.js';
import { terms } from '../../src/weigh/terms/index.js';
import { plantStrengths } from '../../src/weigh/weigh-plant.js';

test('every cause has its share, its loudest terms first, and what stays open', () => {
  const rows = causeTable(plantStrengths({ zones: [] }), terms);
  expect(rows.map(({ cause }) => cause)).toEqual([...causes]);
  expect(rows.reduce((sum, { priorShare }) => sum + priorShare, 0)).toBeCloseTo(1, 9);
  for (const row of rows) {
    expect(row.cannotTell).not.toBe('');
    const loud = row.for.map(({ logOdds }) => logOdds);
    expect(loud).toEqual([...loud].sort((a, b) => b - a));
    expect(row.against.every(({ logOdds }) => logOdds < 0)).toBe(true);
  }
});

test('a strength set in plant.yaml shows in the table', () => {
  const rows = causeTable(plantStrengths({ zones: [], strengths: { 'card-shifts': { input: 99 } } }), terms);
  const input = rows.find(({ cause }) => cause === 'input')!;
  expect(input.for[0]).toMatchObject({ term: 'card-shifts', logOdds: 99 });
});
