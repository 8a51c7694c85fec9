import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { currentGolden, goldenFile, type Golden } from './golden-findings.js';
import { differences } from './differences.js';

test('the findings on sample-logs are those that were reviewed', async () => {
  const reviewed = JSON.parse(readFileSync(goldenFile, 'utf8')) as Golden;
  const changed = differences(reviewed, await currentGolden());
  const help =
    'If every change below is meant, run "npm run golden", read the diff and say in the commit why it moved.';
  expect(changed, `${help}\n${changed.join('\n')}`).toEqual([]);
});

test('differences are told one by one, by their place', () => {
  const before = { zones: { Left: { share: 0.2, signs: ['a', 'b'] }, Gone: 1 }, none: null };
  const after = { zones: { Left: { share: 0.3, signs: ['b', 'c'] }, New: 2 }, none: null };
  expect(differences(before, after)).toEqual([
    'zones.Left.share: 0.2 → 0.3',
    'zones.Left.signs: no longer "a"',
    'zones.Left.signs: now also "c"',
    'zones.Gone: no longer 1',
    'zones.New: now also 2',
  ]);
  expect(differences(before, before)).toEqual([]);
});

test('the reviewed findings stay small enough to be read', () => {
  expect(readFileSync(goldenFile).length).toBeLessThan(60_000);
});
