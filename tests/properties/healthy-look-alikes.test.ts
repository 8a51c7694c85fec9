import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { analyse } from '../../src/pipeline.js';
import { lookAlikeCases, lookAlikeParameters, withZone, type LookAlikeCase } from '../make/look-alikes.js';
import { makePlant } from '../make/make-plant.js';
import type { PlantParameters } from '../make/plant-parameters.js';
import { runsOf } from '../make/runs.js';
import { plainFault } from '../make/small-plant.js';
import { writePlant } from '../make/write-plant.js';

const hourS = 3600;
const dayS = 24 * hourS;

const hunts = (plant: PlantParameters): PlantParameters => withZone(plant, 2, { gainTimes: 4, integralS: 60 });

/** A machine that heats and cools, stops, changes product and speed and is washed, all on the same days. */
const busy = { stopsPerHour: 2, changeoversPerDay: 2, nudgesPerDay: 1, washDownsPerDay: 1, speedChangesPerShift: 2 };

/** Midnight in Oslo before the clocks go forward (29 March 2026) and back (25 October 2026; tz database). */
const springMs = Date.UTC(2026, 2, 26, 23);
const autumnMs = Date.UTC(2026, 9, 22, 22);
const at = (startMs: number) => (plant: PlantParameters) => ({ ...plant, startMs });
const oslo = { timezone: 'Europe/Oslo', isGzipped: false };

/** What needs files, and what comes together in real logs. */
const inFiles: readonly LookAlikeCase[] = [
  ['summer time begins, zone known', { pattern: '24x7', format: { ...oslo, hasPlantFile: true } }, at(springMs)],
  ['summer time ends, zone known', { pattern: '24x7', format: { ...oslo, hasPlantFile: true } }, at(autumnMs)],
  ['summer time begins, zone not known', { pattern: '24x7', format: oslo }, at(springMs)],
  ['summer time ends, zone not known', { pattern: '24x7', format: oslo }, at(autumnMs)],
  ['a clock put back by half an hour', { format: { clockJump: { atS: 2.4 * dayS, byS: -hourS / 2 } } }],
  ['a clock put forward by half an hour', { format: { clockJump: { atS: 2.4 * dayS, byS: hourS / 2 } } }],
  ['everything on the same days', { machine: busy }],
  ['everything on the same days, in whole degrees', { machine: busy, format: { digits: 0 } }],
  ['everything on the same days, no set point', { machine: busy, format: { has: 'nosp' } }],
  ['everything on the same days, readings alone', { machine: busy, format: { has: 'pvonly' } }],
  ['whole degrees and a hunting loop', { format: { digits: 0 } }, hunts],
  ['whole degrees, a hunting loop, no set point', { format: { digits: 0, has: 'nosp' } }, hunts],
  ['whole degrees, a hunting loop, readings alone', { format: { digits: 0, has: 'pvonly' } }, hunts],
  [
    'whole degrees, a hunting loop, readings alone, no running column',
    { format: { digits: 0, has: 'pvonly', runStyle: 'none' } },
    hunts,
  ],
];

let root = '';
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'looselead-look-alikes-'));
});
afterAll(() => rmSync(root, { recursive: true }));

let count = 0;
/** Zones called faulty or worth a look, by the whole job on files, with what was seen on them. */
async function flagged(parameters: PlantParameters): Promise<string[]> {
  const folder = join(root, String(count++));
  writePlant(makePlant(parameters), folder);
  const { zones } = await analyse([folder]);
  expect(zones).toHaveLength(parameters.zones.length);
  return zones
    .filter(({ status }) => status === 'faulty' || status === 'watch')
    .map(({ zone, probabilities, symptoms }) =>
      [
        zone,
        JSON.stringify(probabilities),
        ...symptoms.map(({ detector, facts }) => `${detector}: ${JSON.stringify(facts)}`),
      ].join('\n'),
    );
}

const seeds = [21, 22].slice(0, runsOf(1, 2));
const cases = [...lookAlikeCases, ...inFiles].flatMap((look) =>
  seeds.map((seed) => ({ name: `${look[0]}, seed ${seed}`, look, seed })),
);

describe('no zone is flagged, from files to findings, on', () => {
  test.each(cases)('$name', async ({ look, seed }) => {
    expect(await flagged(lookAlikeParameters(look, seed))).toEqual([]);
  });
});

test('the busy machine with one cable that flexes is flagged, on that zone alone', async () => {
  const look: LookAlikeCase = ['busy', { machine: busy, faults: [plainFault('wire_flex_open', 1, 2)] }];
  const zones = (await flagged(lookAlikeParameters(look, 21))).map((text) => text.split('\n')[0]);
  expect(zones).toEqual(['Zone 2']);
});
