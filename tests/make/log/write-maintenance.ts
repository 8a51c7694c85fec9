import { join } from 'node:path';
import { faultCauses, type FaultKind } from '../faults/fault.js';
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

/** Writes the maintenance list: one line per repair, plus routine work that means nothing. */
export function writeMaintenance(plant: Plant, folder: string): void {
  const { format, faults, startMs, zones, days } = plant.parameters;
  if (!format.hasMaintenance) return;
  const style = format.time.startsWith('epoch')
    ? 'iso'
    : format.time === 'dots-dmy' || format.time === 'split-dots'
      ? 'dots-dmy'
      : 'iso';
  const write = timeWriter(style, format.timezone, ',');
  const lines = faults
    .filter(({ kind, fixedS }) => fixedS !== null && words[kind] !== undefined && faultCauses[kind] !== 'recording')
    .map(({ kind, fixedS, zone }) => ({
      atS: fixedS ?? 0,
      zone: zones[zone]?.name ?? '',
      text: words[kind] ?? ['', ''],
    }));
  const routine = zones[Math.floor(zones.length / 2)];
  if (routine) lines.push({ atS: (days * 86400) / 3, zone: routine.name, text: ['Weekly clean', ''] });
  lines.sort((a, b) => a.atS - b.atS);
  const file = new TextFile(join(folder, 'maintenance.csv'), { lineEnd: '\n', encoding: 'utf8', isGzipped: false });
  file.line('Date,Zone,Done,Found');
  for (const { atS, zone, text } of lines)
    file.line(
      [write(startMs + atS * 1000), zone, text[0], text[1]]
        .map((cellText) => (/[",]/.test(cellText) ? `"${cellText}"` : cellText))
        .join(','),
    );
  file.close();
}
