import { expect, test } from 'vitest';
import { returningSteps } from '../../../src/detect/judges/returning-steps.js';
import { ask, factsOf } from '../../make/ask.js';
import { DAY_MS, evidenceOf, MINUTE_MS, MONDAY_MS, zoneLog, zoneOfLog } from '../../make/zone-log.js';

/** A contact that adds 3 °C for 20 of every 47 minutes from the second day on; starts and stops come elsewhere. */
const contact = (ms: number) => (ms > MONDAY_MS + DAY_MS && (ms / MINUTE_MS) % 47 < 20 ? 3 : 0);
const others = [zoneLog({ seed: 2, everyS: 10 }), zoneLog({ seed: 3, everyS: 10 })];
const zones = [0, 1, 2].map((index) => zoneOfLog(index, { samplingMs: 10_000, sensor: 'pt100', wires: 2 }));

test('tells steps that come and go, with their size and the answer of the loop', () => {
  const facts = factsOf(
    returningSteps,
    evidenceOf([zoneLog({ everyS: 10, offsetDegC: contact }), ...others], { zones }),
  );
  expect(facts['upCount']!).toBeGreaterThan(20);
  expect(facts['downCount']!).toBeGreaterThan(20);
  expect(Math.abs(facts['medianStepDegC']! - 3)).toBeLessThan(0.4);
  expect(facts['loopReactionPercent']!).toBeGreaterThan(0);
  // IEC 60751 slope: 0.390 Ω per °C at 20 °C, 0.370 at 180 °C.
  expect(facts['medianStepOhm']! / facts['medianStepDegC']!).toBeGreaterThan(0.36);
  expect(facts['medianStepOhm']! / facts['medianStepDegC']!).toBeLessThan(0.395);
});

test('is silent on the same steps in all zones, and on healthy ones', () => {
  const common = [1, 2, 3].map((seed) => zoneLog({ seed, everyS: 10, offsetDegC: contact }));
  expect(ask(returningSteps, evidenceOf(common, { zones })).symptoms).toEqual([]);
  expect(ask(returningSteps, evidenceOf([zoneLog({ everyS: 10 }), ...others], { zones })).symptoms).toEqual([]);
});
