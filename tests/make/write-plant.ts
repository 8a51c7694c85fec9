import { mkdirSync, writeFileSync } from 'node:fs';
import { writeAlarms } from './log/write-alarms.js';
import { writeMaintenance } from './log/write-maintenance.js';
import { siteOf, writePlantFile } from './log/write-plant-file.js';
import { writeTemperatures } from './log/write-temperatures.js';
import type { Plant } from './made-plant.js';

/** Writes what a user of this plant would have: temperature logs, alarm log, and maybe plant.yaml and a maintenance list. */
export function writePlant(plant: Plant, folder: string): void {
  mkdirSync(folder, { recursive: true });
  writeTemperatures(plant, folder);
  writeAlarms(plant, folder);
  const { parameters } = plant;
  if (parameters.format.hasPlantFile) writePlantFile([parameters], folder, siteOf(parameters));
  if (parameters.format.hasMaintenance) writeMaintenance([plant], folder);
}

/** Writes the truth beside the plant's folder, as `<folder>.truth.json`. */
export function writeTruth(plant: Plant, folder: string): void {
  writeFileSync(`${folder}.truth.json`, `${JSON.stringify(plant.truth, null, 1)}\n`);
}
