import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readEvents, type EventOptions } from '../../src/intake/read-events.js';
import type { LogFile } from '../../src/model/log-file.js';
import type { PlantFile } from '../../src/model/plant-file.js';
import type { Zone } from '../../src/model/zone.js';
import { survey } from '../../src/read/survey/survey.js';
import { makeZone } from './blocks.js';

/** A zone that only has a name and a machine. */
export function namedZone(index: number, name: string, machine = 'M1'): Zone {
  return makeZone({ index, name, machine, samplingMs: 10_000 });
}

/** Surveys and reads event files given as texts by name, as a run would. */
export async function readEventTexts(
  texts: Readonly<Record<string, string>>,
  zones: readonly Zone[],
  plant: PlantFile = { zones: [] },
  options?: EventOptions,
) {
  const folder = await mkdtemp(join(tmpdir(), 'looselead-events-'));
  try {
    for (const [name, text] of Object.entries(texts)) await writeFile(join(folder, name), text);
    return await readEventPaths([folder], zones, plant, options);
  } finally {
    await rm(folder, { recursive: true });
  }
}

export async function readEventPaths(
  paths: readonly string[],
  zones: readonly Zone[],
  plant: PlantFile = { zones: [] },
  options?: EventOptions,
) {
  const found = await survey(paths, {});
  const files: readonly LogFile[] = found.files;
  const events = await readEvents(files, zones, plant, options);
  return { ...events, alarms: [...events.alarms], files };
}
