// Scores findings on plants whose truth is known and prints tables: overall, per data level, per layout, per fault.
//   npm run evaluate                 makes fresh plants with the project's simulator in a temporary folder
//   npm run evaluate -- --reduced    and scores each plant again without plant file and with columns left out
//   npm run evaluate -- --plants DIR scores plants that are there already
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { analyse } from '../../src/pipeline.js';
import type { Plant } from '../make/made-plant.js';
import { writePlant, writeTruth } from '../make/write-plant.js';
import { plantOfSeed } from '../make/write-plants.js';
import { withFewerColumns } from './fewer-columns.js';
import { printMisses } from './misses.js';
import { calibrationRows, scoreRow, type ScoredZone } from './score.js';
import { isHidden, readTruths, zoneKey, type PlantTruth } from './truth.js';

const { values } = parseArgs({
  options: {
    plants: { type: 'string' },
    count: { type: 'string', default: '60' },
    seed: { type: 'string', default: '900000' },
    'no-plant-file': { type: 'boolean', default: false },
    reduced: { type: 'boolean', default: false },
    misses: { type: 'boolean', default: false },
  },
});

const scored: Record<string, ScoredZone[]> = {};
if (values.plants !== undefined) await scoreFolder('as exported', values.plants, values['no-plant-file']);
else await scoreFreshPlants();

const zones = scored['as exported'] ?? [];
table({ all: zones });
table(grouped((row) => `data: ${row.plant.meta.has}`));
table(grouped((row) => `layout: ${row.plant.meta.dialect.split(' ')[0]}`));
table(grouped((row) => `fault: ${row.truth.fault}`));
console.table(calibrationRows(zones));
if (values.reduced) table(scored);
if (values.misses) printMisses(zones);

async function scoreFreshPlants(): Promise<void> {
  const seed = Number(values.seed);
  for (let i = 0; i < Number(values.count); i++) {
    const plant = plantOfSeed(seed + i);
    await scoreFresh('as exported', plant, values['no-plant-file']);
    if (!values.reduced) continue;
    await scoreFresh('without plant file', plant, true);
    await scoreFresh('without set point', withFewerColumns(plant, 'nosp'), false);
    await scoreFresh('readings only', withFewerColumns(plant, 'pvonly'), false);
  }
}

async function scoreFresh(label: string, plant: Plant | null, ignorePlantFile: boolean): Promise<void> {
  if (plant === null) return;
  const root = mkdtempSync(join(tmpdir(), 'looselead-evaluate-'));
  try {
    const folder = join(root, 'plant');
    writePlant(plant, folder);
    writeTruth(plant, folder);
    await scoreFolder(label, root, ignorePlantFile);
  } finally {
    rmSync(root, { recursive: true });
  }
}

async function scoreFolder(label: string, root: string, ignorePlantFile: boolean): Promise<void> {
  for (const plant of readTruths(root)) (scored[label] ??= []).push(...(await scorePlant(plant, ignorePlantFile)));
}

/** Zones whose fault the loop hides from such a log are left out. */
async function scorePlant(plant: PlantTruth, ignorePlantFile: boolean): Promise<ScoredZone[]> {
  const findings = await analyse([plant.folder], { ignorePlantFile });
  const byKey = new Map(findings.zones.map((zone) => [zoneKey(zone.zone), zone]));
  return plant.zones
    .filter((truth) => !isHidden(truth, plant.meta))
    .map((truth) => ({ plant, truth, found: byKey.get(zoneKey(truth.zone)) ?? null }));
}

function table(groups: Record<string, ScoredZone[]>): void {
  console.table(Object.fromEntries(Object.entries(groups).map(([name, rows]) => [name, scoreRow(rows)])));
}

function grouped(key: (row: ScoredZone) => string): Record<string, ScoredZone[]> {
  const groups: Record<string, ScoredZone[]> = {};
  for (const row of zones) (groups[key(row)] ??= []).push(row);
  return Object.fromEntries(Object.entries(groups).sort(([a], [b]) => a.localeCompare(b)));
}
