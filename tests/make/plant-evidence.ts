import { watchers } from '../../src/detect/index.js';
import { startWatchers } from '../../src/detect/run-watchers.js';
import { startDigest } from '../../src/digest/build-digest.js';
import { AlarmList } from '../../src/model/alarm-list.js';
import type { Evidence } from '../../src/model/detector.js';
import type { Plant } from './made-plant.js';
import { plantAlarms, plantBlocks, plantZones } from './plant-blocks.js';

/** A made plant as the judges see it: digest, watchers and alarms, without the files between. */
export function plantEvidence(plant: Plant): Evidence {
  const zones = plantZones(plant);
  const digest = startDigest(zones);
  const watching = startWatchers(zones, watchers);
  for (const block of plantBlocks(plant)) {
    digest.take(block);
    watching.take(block);
  }
  return {
    zones,
    digest: digest.finish(),
    episodes: watching.finish().episodes,
    alarms: AlarmList.of(plantAlarms(plant)),
    hasAlarmLog: true,
    maintenance: [],
    stops: [],
    plant: { zones: [] },
  };
}
