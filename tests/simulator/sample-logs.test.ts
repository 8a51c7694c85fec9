import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { answersText } from '../make/sample/sample-answers.js';
import { samplePlants } from '../make/sample/sample-plant.js';

const folder = fileURLToPath(new URL('../../sample-logs', import.meta.url));

test('the answers beside the sample logs are those of the simulator today', () => {
  const plants = samplePlants();
  expect(readFileSync(join(folder, 'ANSWERS.md'), 'utf8')).toBe(answersText(plants));
  const zones = plants.flatMap(({ truth }) => truth.zones);
  expect(zones.length).toBe(16);
  expect(zones.filter(({ cause }) => cause !== 'none').length).toBe(5);
});

test('the sample logs stay small', () => {
  const bytes = readdirSync(folder).reduce((sum, name) => sum + statSync(join(folder, name)).size, 0);
  expect(bytes).toBeLessThan(6e6);
});
