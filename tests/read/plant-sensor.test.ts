import { expect, test } from 'vitest';
import { gather } from '../../src/gather.js';
import { inFolder } from './poured.js';

const log = `Time,Zone 1\n${Array.from({ length: 60 }, (_, i) => `2026-03-02 08:${String(i).padStart(2, '0')}:00,${150 + (i % 3)}\n`).join('')}`;

test.each([
  ['type K', 'tc-k'],
  ['Thermocouple J', 'tc-j'],
  ['PT-100', 'pt100'],
  ['something else', 'something else'],
])('knows what sensor plant.yaml means by "%s"', async (written, sensor) => {
  const plant = `zones:\n  - name: Zone 1\n    sensor: "${written}"\n`;
  await inFolder({ 'log.csv': log, 'plant.yaml': plant }, async (folder) => {
    const { evidence } = await gather([folder], {});
    expect(evidence.zones[0]!.sensor).toBe(sensor);
  });
});
