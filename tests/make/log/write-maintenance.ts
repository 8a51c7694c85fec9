import { join } from 'node:path';
import type { FaultKind } from '../faults/fault.js';
import type { Plant } from '../made-plant.js';
import { TextFile } from './text-file.js';
import { timeWriter } from './time-text.js';

/** What a fitter writes down after each kind of repair. */
const words: Partial<Record<FaultKind, readonly [done: string, found: string]>> = {
  sensor_open: ['Sensor replaced', 'element open at its own connector'],
  sensor_hot_open: ['Sensor replaced', 'element opens when hot'],
  sensor_drift: ['Sensor replaced', 'old one read wrong against a reference'],
  sensor_noise: ['Sensor replaced', 'unsteady reading'],
  wire_flex_open: ['Cable replaced', 'conductor broken where the cable bends'],
  wire_broken: ['Cable replaced', 'conductor broken'],
  wire_contact: ['Terminal tightened', 'loose terminal, burnt look'],
  wire_wet: ['Connector dried and sealed', 'water in the connector'],
  wire_short: ['Cable replaced', 'insulation chafed, leads touching'],
  card_blips: ['Input card reseated', 'loose card'],
  card_reference: ['Input card replaced', 'all channels off by the same amount'],
  channel_frozen: ['Input card power cycled', 'channel did not update'],
  heater_dead: ['Heater replaced', 'heater open'],
  heater_half: ['Heater replaced', 'one element of the heater open'],
  heater_ageing: ['Heater replaced', 'resistance up'],
  relay_stuck: ['Solid-state relay replaced', 'output shorted'],
};

interface Entry {
  readonly utcMs: number;
  readonly zone: string;
  readonly done: string;
  readonly found: string;
}

/** One entry per repair of a plant, plus routine work that means nothing. */
export function maintenanceEntries({ parameters: { faults, startMs, zones, days } }: Plant): Entry[] {
  const entries: Entry[] = [];
  const told = new Set<string>();
  for (const { kind, fixedS, zone } of faults) {
    const text = words[kind];
    // One visit mends a whole card: one line, for the first of its zones.
    const visit = `${kind} ${fixedS}`;
    if (fixedS === null || !text || told.has(visit)) continue;
    told.add(visit);
    entries.push({ utcMs: startMs + fixedS * 1000, zone: zones[zone]?.name ?? '', done: text[0], found: text[1] });
  }
  const cleaned = zones[Math.floor(zones.length / 2)];
  if (cleaned)
    entries.push({ utcMs: startMs + (days / 3) * 86_400_000, zone: cleaned.name, done: 'Weekly clean', found: '' });
  return entries;
}

/** Writes the maintenance list of one plant, or of several logged apart, in time order. */
export function writeMaintenance(plants: readonly Plant[], folder: string): void {
  const format = plants[0]!.parameters.format;
  const style = format.time === 'dots-dmy' || format.time === 'split-dots' ? 'dots-dmy' : 'iso';
  const write = timeWriter(style, format.timezone, ',');
  const file = new TextFile(join(folder, 'maintenance.csv'), { lineEnd: '\n', encoding: 'utf8', isGzipped: false });
  file.line('Date,Zone,Done,Found');
  const entries = plants.flatMap(maintenanceEntries).sort((a, b) => a.utcMs - b.utcMs);
  for (const { utcMs, zone, done, found } of entries)
    file.line([write(utcMs), zone, done, found].map(quotedCell).join(','));
  file.close();
}

function quotedCell(text: string): string {
  return /[",]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
