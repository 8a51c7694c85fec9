// Rewrites sample-logs/, byte for byte the same each time: npm run sample-logs
import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeAlarms } from './log/write-alarms.js';
import { writeMaintenance } from './log/write-maintenance.js';
import { writePlantFile } from './log/write-plant-file.js';
import { writeTemperatures } from './log/write-temperatures.js';
import { answersText } from './sample/sample-answers.js';
import { samplePlants, sampleSite } from './sample/sample-plant.js';

const folder = fileURLToPath(new URL('../../sample-logs', import.meta.url));
for (const name of readdirSync(folder)) if (/\.(csv|gz|yaml)$/.test(name)) rmSync(join(folder, name));
const plants = samplePlants();
for (const plant of plants) {
  writeTemperatures(plant, folder);
  writeAlarms(plant, folder);
}
writePlantFile(
  plants.map(({ parameters }) => parameters),
  folder,
  sampleSite,
);
writeMaintenance(plants, folder);
writeFileSync(join(folder, 'ANSWERS.md'), answersText(plants));
