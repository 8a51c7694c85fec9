import { join } from 'node:path';
import { stringify } from 'yaml';
import type { PlantParameters } from '../plant-parameters.js';
import { TextFile } from './text-file.js';

/** Writes plant.yaml: what is installed where. */
export function writePlantFile({ format, zones, machines }: PlantParameters, folder: string): void {
  if (!format.hasPlantFile) return;
  const body = {
    unit: `deg${format.unit}`,
    ...(format.timezone === null ? {} : { timezone: format.timezone }),
    zones: zones.map((zone) => ({
      name: zone.name,
      machine: machines[zone.machine]?.name ?? '',
      sensor: zone.sensor.kind,
      ...(zone.sensor.kind.startsWith('pt') ? { wires: zone.sensor.wires } : {}),
      card: zone.card,
    })),
  };
  const file = new TextFile(join(folder, 'plant.yaml'), { lineEnd: '\n', encoding: 'utf8', isGzipped: false });
  file.line('# What is installed; every key but a zone name may be left out.');
  file.line(stringify(body).trimEnd());
  file.close();
}
