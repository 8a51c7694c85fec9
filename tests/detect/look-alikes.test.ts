import { describe, expect, test } from 'vitest';
import { judges } from '../../src/detect/index.js';
import { runJudges } from '../../src/detect/run-judges.js';
import type { Outcome } from '../../src/model/detector.js';
import { makePlant } from '../make/make-plant.js';
import { plantEvidence } from '../make/plant-evidence.js';
import type { LookAlike, PlantParameters } from '../make/plant-parameters.js';
import { plainFault, smallPlantParameters, type SmallPlantWish } from '../make/small-plant.js';

const hourS = 3600;
const dayS = 24 * hourS;

const lookAlike = (kind: LookAlike['kind'], size: number, startS: number, endS: number): LookAlike[] => [
  { kind, machine: 0, zone: -1, startS, endS, size },
];

/** What happens to healthy zones and fools people, each on five days of a plant, logged every minute, with nothing wrong. */
const cases: readonly (readonly [string, SmallPlantWish, ((plant: PlantParameters) => PlantParameters)?])[] = [
  ['heat-up and cool-down every day, short stops', { machine: { stopsPerHour: 3, stopMedianS: 240 } }],
  ['a stand-by temperature between shifts', { machine: { rest: 'standby', standbyDegC: 80 } }],
  ['changes of set point and changeovers', { machine: { changeoversPerDay: 3, nudgesPerDay: 2 } }],
  ['wash-downs every day', { machine: { washDownsPerDay: 1 } }],
  ['a line that changes its speed', { machine: { speedChangesPerShift: 4 } }],
  ['a faster line for all zones', { lookAlikes: lookAlike('fast-line', 1.4, 2.3 * dayS, 5 * dayS) }],
  ['thick product for a shift', { lookAlikes: lookAlike('thick-product', 1.5, 3.3 * dayS, 3.6 * dayS) }],
  ['a hot day', { lookAlikes: lookAlike('hot-day', 9, 2 * dayS, 3 * dayS) }],
  [
    'air that swings between day and night',
    {},
    (plant) => ({ ...plant, air: { ...plant.air, daySwingK: 5, trendKPerDay: 0.8 } }),
  ],
  ['a draught on the whole machine', { lookAlikes: lookAlike('draught', 1.3, 2.5 * dayS, 4 * dayS) }],
  ['a restart of the controller', { lookAlikes: lookAlike('restart', 1, 2.4 * dayS, 2.4 * dayS + 60) }],
  ['a power cut', { lookAlikes: lookAlike('power-cut', 1, 3.4 * dayS, 3.4 * dayS + hourS) }],
  ['whole degrees', { format: { digits: 0 } }],
  ['a log every ten seconds', { everyS: 10 }],
  ['a log every two minutes in whole degrees', { everyS: 120, format: { digits: 0 } }],
  ['readings alone', { format: { has: 'pvonly' } }],
  ['no set point', { format: { has: 'nosp' } }],
  ['a week in three shifts', { pattern: '3shift5' }],
  ['a hunting loop on one zone', {}, (plant) => withZone(plant, 2, { gainTimes: 4, integralS: 60 })],
  ['on/off control on one zone', {}, (plant) => withZone(plant, 1, { kind: 'on-off' })],
  ['a light zone and a heavy one', {}, (plant) => withMasses(plant, [0.4, 1, 1, 3, 1])],
];

function withZone(
  plant: PlantParameters,
  index: number,
  { gainTimes = 1, integralS, kind }: { gainTimes?: number; integralS?: number; kind?: 'on-off' },
): PlantParameters {
  const zones = plant.zones.map((zone, i) => {
    if (i !== index) return zone;
    const controller = {
      ...zone.controller,
      gainPercentPerK: gainTimes * zone.controller.gainPercentPerK,
      integralS: integralS ?? zone.controller.integralS,
      kind: kind ?? zone.controller.kind,
    };
    return { ...zone, controller };
  });
  return { ...plant, zones };
}

function withMasses(plant: PlantParameters, times: readonly number[]): PlantParameters {
  const zones = plant.zones.map((zone, i) => {
    const factor = times[i] ?? 1;
    const { bodyJPerK, heaterJPerK } = zone.thermal;
    return { ...zone, thermal: { ...zone.thermal, bodyJPerK: factor * bodyJPerK, heaterJPerK: factor * heaterJPerK } };
  });
  return { ...plant, zones };
}

function seen(wish: SmallPlantWish, change?: (plant: PlantParameters) => PlantParameters): readonly Outcome[] {
  const parameters = smallPlantParameters({ zones: 5, days: 5, seed: 11, everyS: 60, ...wish });
  const evidence = plantEvidence(makePlant(change ? change(parameters) : parameters));
  const { outcomes, problems } = runJudges(evidence, judges);
  expect(problems).toEqual([]);
  expect(outcomes).toHaveLength(judges.length * evidence.zones.length);
  return outcomes.filter(({ symptoms }) => symptoms.length > 0);
}

const told = ({ detector, zone, symptoms }: Outcome) => `${detector} in zone ${zone}: ${JSON.stringify(symptoms[0])}`;

describe('every judge is silent, or says that it cannot tell, on', () => {
  test.each(cases.map(([name, wish, change]) => ({ name, wish, change })))('$name', ({ wish, change }) => {
    expect(seen(wish, change).map(told)).toEqual([]);
  });
});

test('the same plant with a fault is not passed over in silence', () => {
  const faults = [plainFault('wire_flex_open', 1, 2)];
  expect(new Set(seen({ faults }).map(({ zone }) => zone))).toEqual(new Set([1]));
});

test('a clock put forward leaves an hour without rows, which is told as a gap of all zones and of none alone', () => {
  const hour = { startS: 3 * dayS + 2 * hourS, endS: 3 * dayS + 3 * hourS };
  const outcomes = seen({}, (plant) => ({ ...plant, recorder: { ...plant.recorder, gaps: [hour] } }));
  expect(new Set(outcomes.map(({ detector }) => detector))).toEqual(new Set(['frozen-record']));
  for (const { symptoms } of outcomes) {
    expect(symptoms[0]!.facts).toMatchObject({ gapCount: 1, ownGapCount: 0, tagFrozenCount: 0, fileFrozenCount: 0 });
  }
});
