import { judges, watchers } from '../../src/detect/index.js';
import { runJudges } from '../../src/detect/run-judges.js';
import { startWatchers } from '../../src/detect/run-watchers.js';
import { startDigest } from '../../src/digest/build-digest.js';
import { AlarmList } from '../../src/model/alarm-list.js';
import type { SampleBlock } from '../../src/model/sample-block.js';
import type { Zone } from '../../src/model/zone.js';
import { weighPlant } from '../../src/weigh/weigh-plant.js';
import type { Verdict } from '../../src/weigh/weigh-plant.js';
import type { Plant } from '../make/made-plant.js';
import { plantAlarms, plantBlocks, plantZones } from '../make/plant-blocks.js';

/** Columns that a log may do without. */
export const optionalColumns = ['setpoint', 'output', 'running'] as const;
export type OptionalColumn = (typeof optionalColumns)[number];

const arrays = { setpoint: 'setpointDegC', output: 'outputPercent', running: 'running' } as const;

/** Verdicts on a made plant, by zone index, as if its log lacked some columns of every zone. */
export function verdictsWithout(plant: Plant, columns: readonly OptionalColumn[]): Verdict[] {
  const zones = plantZones(plant).map((zone) => zoneWithout(zone, columns));
  const digest = startDigest(zones);
  const watching = startWatchers(zones, watchers);
  for (const block of plantBlocks(plant)) {
    blank(block, columns);
    digest.take(block);
    watching.take(block);
  }
  const noPlantFile = { zones: [] };
  const given = {
    zones,
    alarms: AlarmList.of(plantAlarms(plant)),
    hasAlarmLog: true,
    maintenance: [],
    stops: [],
    plant: noPlantFile,
  };
  const { outcomes } = runJudges({ ...given, digest: digest.finish(), episodes: watching.finish().episodes }, judges);
  return weighPlant(zones, outcomes, noPlantFile);
}

function zoneWithout(zone: Zone, columns: readonly OptionalColumn[]): Zone {
  const lacks = Object.fromEntries(columns.map((column) => [column, false]));
  return { ...zone, has: { ...zone.has, ...lacks } };
}

function blank(block: SampleBlock, columns: readonly OptionalColumn[]): void {
  for (const column of columns) block[arrays[column]].fill(NaN);
}
