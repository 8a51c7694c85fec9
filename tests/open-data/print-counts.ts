// Prints the counts of labelled blocks for DEVELOPERS.md: npx tsx tests/open-data/print-counts.ts
import { sharedData } from '../make/shared-data.js';
import { countBlocks, labels, meaning, type Label } from './labelled.js';

const folder = sharedData('open/santander-fault-benchmark');
if (folder === undefined) throw new Error('The open data are not on this machine: ../shared/data/open.');
const sensors = ['santander163', 'santander20'] as const;
const cells = async (sensor: string, file: string, label: Label): Promise<string> => {
  const { byLabel, strays } = await countBlocks(`${folder}/${sensor}_${file}.txt`);
  const count = byLabel.get(label);
  return count
    ? `${count.found} of ${count.blocks} | ${count.foundVisible} of ${count.visible} | ${strays}`
    : '– | – | –';
};
for (const label of Object.keys(labels) as Label[])
  for (const file of [label, 'mixed'])
    for (const sensor of sensors)
      console.log(`| ${sensor}_${file} | ${label}: ${meaning[label]} | ${await cells(sensor, file, label)} |`);
