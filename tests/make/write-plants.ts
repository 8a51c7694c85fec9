// Writes many random plants with the truth beside each: tsx tests/make/write-plants.ts COUNT SEED FOLDER
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { drawPlantParameters, type DrawOptions } from './draw/draw-plant.js';
import { makePlant } from './make-plant.js';
import type { Plant } from './made-plant.js';
import { Random } from './random.js';
import { writePlant, writeTruth } from './write-plant.js';

export interface PlantsWanted {
  readonly count: number;
  /** Plant i is drawn from seed + i, so any one of them can be made again alone. */
  readonly seed: number;
  readonly folder: string;
  readonly options?: DrawOptions;
}

/** Draws and makes the plant of one seed, in memory. */
export function plantOfSeed(seed: number, options: DrawOptions = {}): Plant {
  return makePlant(drawPlantParameters(new Random(seed), { ...options, seed }));
}

/** Writes `count` plants as `plant-<seed>/` with `plant-<seed>.truth.json` beside it. */
export async function writePlants(
  { count, seed, folder, options = {} }: PlantsWanted,
  told: (name: string) => void = () => undefined,
): Promise<void> {
  for (let i = 0; i < count; i++) {
    const plant = plantOfSeed(seed + i, options);
    const target = join(folder, `plant-${seed + i}`);
    writePlant(plant, target);
    writeTruth(plant, target);
    told(target);
    // Lets a caller's other work and signals through between plants.
    await new Promise((done) => setImmediate(done));
  }
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const [count = '10', seed = '1', folder = 'plants'] = process.argv.slice(2);
  await writePlants({ count: Number(count), seed: Number(seed), folder }, (name) => console.log(name));
}
