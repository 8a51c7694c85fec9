import { join } from 'node:path';
import { stringify } from 'yaml';
import type { PlantParameters } from '../plant-parameters.js';
import { TextFile } from './text-file.js';

/** Writes plant.yaml for one plant, or for several logged apart: what is installed where, and keys for the whole site. */
export function writePlantFile(
  plants: readonly PlantParameters[],
  folder: string,
  site: Readonly<Record<string, unknown>>,
): void {
  const zones = plants.flatMap(({ zones: own, machines }) =>
    own.map((zone) => ({
      name: zone.name,
      machine: machines[zone.machine]?.name ?? '',
      sensor: zone.sensor.kind,
      ...(zone.sensor.kind.startsWith('pt') ? { wires: zone.sensor.wires } : {}),
      card: zone.card,
    })),
  );
  const file = new TextFile(join(folder, 'plant.yaml'), { lineEnd: '\n', encoding: 'utf8', isGzipped: false });
  file.line('# What is installed; every key but a zone name may be left out.');
  file.line(stringify({ ...site, zones }).trimEnd());
  file.close();
}

/** What a single plant's file says of its logs. */
export function siteOf({ format }: PlantParameters): Record<string, unknown> {
  return { unit: `deg${format.unit}`, ...(format.timezone === null ? {} : { timezone: format.timezone }) };
}
