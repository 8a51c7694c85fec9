import { expect, test } from 'vitest';
import { opensByHeat } from '../../../src/detect/judges/opens-by-heat.js';
import { ask, factsOf } from '../../make/ask.js';
import { evidenceOf, opened, zoneLog } from '../../make/zone-log.js';

test('tells opens near operating temperature, running or not', () => {
  const log = zoneLog({ recorded: (s) => ((s.timeMs / 60_000) % 41 === 0 && s.degC > 175 ? opened(s) : s) });
  const facts = factsOf(opensByHeat, evidenceOf([log]));
  expect(facts['coldCount']).toBe(0);
  expect(facts['hotStoppedCount']!).toBeGreaterThan(0);
  expect(facts['hotHigherPValue']!).toBeLessThan(1e-4);
});

test('is not taken in by the many hot hours', () => {
  const log = zoneLog({ recorded: (s) => ((s.timeMs / 60_000) % 41 === 0 ? opened(s) : s) });
  const facts = factsOf(opensByHeat, evidenceOf([log]));
  expect(facts['hotHigherPValue']!).toBeGreaterThan(0.05);
});

test('cannot tell where the zone was never cold', () => {
  const log = zoneLog().filter((s) => s.setpointDegC! > 0 && s.degC > 170);
  expect(ask(opensByHeat, evidenceOf([log])).unable).toMatch(/lesser side of hot and cold/);
});
