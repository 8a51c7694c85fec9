import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { judges } from '../../src/detect/index.js';
import { runJudges } from '../../src/detect/run-judges.js';
import { gather } from '../../src/gather.js';
import type { Outcome } from '../../src/model/detector.js';
import type { Zone } from '../../src/model/zone.js';
import { zoneEvidence } from '../../src/weigh/weigh-plant.js';
import type { ZoneEvidence } from '../../src/weigh/term.js';
import { readTruths, zoneKey, type PlantTruth, type ZoneTruth } from './truth.js';

/** What the judges said of one plant, kept so that a new fit need not read the logs again. */
interface KeptOutcomes {
  readonly zones: readonly Zone[];
  readonly outcomes: readonly Outcome[];
}

/** One zone with its truth and all that the judges said of it and its plant. */
export interface KnownZone {
  readonly plant: PlantTruth;
  readonly truth: ZoneTruth;
  readonly evidence: ZoneEvidence;
}

/** Judges every plant of a folder, or takes what was kept of it; zones without a log are left out. */
export async function knownZones(root: string, keepIn: string): Promise<KnownZone[]> {
  mkdirSync(keepIn, { recursive: true });
  const known: KnownZone[] = [];
  for (const plant of readTruths(root)) {
    const { zones, outcomes } = await outcomesOf(plant, join(keepIn, `${plant.name}.json`)).catch(toldAsUnread(plant));
    const byKey = new Map(zoneEvidence(zones, outcomes).map((evidence) => [zoneKey(evidence.zone.name), evidence]));
    for (const truth of plant.zones) {
      const evidence = byKey.get(zoneKey(truth.zone));
      if (evidence) known.push({ plant, truth, evidence });
      else console.error(`${plant.name}: no zone ${truth.zone} among ${zones.map(({ name }) => name).join(', ')}`);
    }
  }
  return known;
}

/** A plant that cannot be read teaches nothing, but must be told. */
function toldAsUnread(plant: PlantTruth): (error: unknown) => KeptOutcomes {
  return (error) => {
    console.error(`${plant.name}: not read. ${error instanceof Error ? error.message : String(error)}`);
    return { zones: [], outcomes: [] };
  };
}

async function outcomesOf(plant: PlantTruth, file: string): Promise<KeptOutcomes> {
  if (existsSync(file)) return JSON.parse(readFileSync(file, 'utf8')) as KeptOutcomes;
  const { evidence } = await gather([plant.folder], {});
  const kept: KeptOutcomes = { zones: evidence.zones, outcomes: runJudges(evidence, judges).outcomes };
  writeFileSync(file, JSON.stringify(kept));
  return kept;
}
