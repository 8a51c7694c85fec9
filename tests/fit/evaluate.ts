// Scores findings on plants whose truth is known and prints tables: overall, per data level, per layout, per fault.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { analyse } from '../../src/pipeline.js';
import { aNumber } from '../make/a-number.js';
import type { Plant } from '../make/made-plant.js';
import { writePlant, writeTruth } from '../make/write-plant.js';
import { plantOfSeed } from '../make/write-plants.js';
import { withFewerColumns } from './fewer-columns.js';
import { printMisses } from './misses.js';
import { calibrationRows, scoreRow, type ScoredZone } from './score.js';
import { isHidden, readTruths, zoneKey, type PlantTruth } from './truth.js';

interface Options {
  readonly plants?: string;
  readonly count: number;
  readonly seed: number;
  readonly plantFile: boolean;
  readonly reduced?: boolean;
  readonly misses?: boolean;
}

const options = new Command('evaluate')
  .description('scores findings on plants whose truth is known')
  .option('--plants <folder>', 'plants that are there already; else fresh ones are made')
  .option('--count <count>', 'how many fresh ones', aNumber, 60)
  .option('--seed <number>', 'seed of the first', aNumber, 900_000)
  .option('--no-plant-file', 'pass over plant.yaml')
  .option('--reduced', 'score each fresh plant again without plant file and with columns left out')
  .option('--misses', 'list what was missed')
  .parse()
  .opts<Options>();

const scored: Record<string, ScoredZone[]> = {};
if (options.plants !== undefined) await scoreFolder('as exported', options.plants, !options.plantFile);
else await scoreFreshPlants();

const zones = scored['as exported'] ?? [];
table({ all: zones });
table(grouped((row) => `data: ${row.plant.meta.has}`));
table(grouped((row) => `layout: ${row.plant.meta.dialect.split(' ')[0]}`));
table(grouped((row) => `fault: ${row.truth.fault}`));
console.table(calibrationRows(zones));
if (options.reduced) table(scored);
if (options.misses) printMisses(zones);

async function scoreFreshPlants(): Promise<void> {
  for (let i = 0; i < options.count; i++) {
    const plant = plantOfSeed(options.seed + i);
    await scoreFresh('as exported', plant, !options.plantFile);
    if (!options.reduced) continue;
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
