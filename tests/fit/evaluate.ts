// Scores findings on plants whose truth is known and prints tables: overall, per data level, per layout, per fault.
//   npm run evaluate                 makes fresh plants with the project's simulator in a temporary folder
//   npm run evaluate -- --plants DIR scores plants that are there already
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { analyse } from '../../src/pipeline.js';
import { isHidden, readTruths, zoneKey } from './truth.js';
import { scoreRow, type ScoredZone } from './score.js';
import { writePlants } from '../make/write-plants.js';

const { values } = parseArgs({
  options: {
    plants: { type: 'string' },
    count: { type: 'string', default: '60' },
    seed: { type: 'string', default: '900000' },
    'no-plant-file': { type: 'boolean', default: false },
    misses: { type: 'boolean', default: false },
  },
});

const made = values.plants === undefined ? mkdtempSync(join(tmpdir(), 'looselead-evaluate-')) : null;
if (made) await writePlants({ count: Number(values.count), seed: Number(values.seed), folder: made });
const zones: ScoredZone[] = [];
let hidden = 0;
for (const plant of readTruths(values.plants ?? made!)) {
  const findings = await analyse([plant.folder], { ignorePlantFile: values['no-plant-file'] });
  const byKey = new Map(findings.zones.map((zone) => [zoneKey(zone.zone), zone]));
  for (const truth of plant.zones) {
    if (isHidden(truth, plant.meta)) hidden++;
    else zones.push({ plant, truth, found: byKey.get(zoneKey(truth.zone)) ?? null });
  }
}
console.log(`${zones.length} zones scored, ${hidden} hidden by the loop and not scored`);
const table = (groups: Record<string, ScoredZone[]>): void =>
  console.table(Object.fromEntries(Object.entries(groups).map(([name, rows]) => [name, scoreRow(rows)])));
table({ all: zones });
table(grouped((row) => `data: ${row.plant.meta.has}`));
table(grouped((row) => `layout: ${row.plant.meta.dialect}`));
table(grouped((row) => `fault: ${row.truth.fault}`));
if (values.misses) printMisses();
if (made) rmSync(made, { recursive: true });

function grouped(key: (row: ScoredZone) => string): Record<string, ScoredZone[]> {
  const groups: Record<string, ScoredZone[]> = {};
  for (const row of zones) (groups[key(row)] ??= []).push(row);
  return Object.fromEntries(Object.entries(groups).sort(([a], [b]) => a.localeCompare(b)));
}

function printMisses(): void {
  for (const { plant, truth, found } of zones) {
    const top = found ? Object.entries(found.probabilities).sort((a, b) => b[1] - a[1])[0] : undefined;
    if (top?.[0] === truth.cause || (truth.cause === 'none' && truth.drawn !== 'none')) continue;
    const terms = (found?.terms ?? []).slice(0, 5).map((term) => `${term.term} ${term.value.toFixed(2)}`);
    console.log(
      `${plant.name} ${plant.meta.has} ${truth.zone}: ${truth.cause}/${truth.fault} drift ${truth.driftC?.toFixed(1) ?? '-'}` +
        ` → ${top?.[0] ?? 'missing'} ${top?.[1].toFixed(2) ?? ''} [${terms.join(', ')}]`,
    );
  }
}
