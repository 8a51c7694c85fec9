import type { PlantFile } from '../model/plant-file.js';
import type { ProblemNote } from '../model/problem.js';
import type { Zone } from '../model/zone.js';
import { parseSensorType, sensorIds } from './sensor-types.js';

/** The zone with the id of its sensor's type where plant.yaml names that in other words ("type K"); else as it was. */
export function withSensorId(zone: Zone): Zone {
  return { ...zone, sensor: parseSensorType(zone.sensor ?? '') ?? zone.sensor };
}

/** One note for each sensor of plant.yaml that no table knows: no ohms or millivolts can be printed for its zone. */
export function unknownSensorTypes({ zones }: PlantFile): ProblemNote[] {
  return zones.flatMap(({ name, sensor }) =>
    sensor === undefined || parseSensorType(sensor)
      ? []
      : [
          {
            code: 'bad-plant-file' as const,
            what: `plant.yaml says that the sensor of "${name}" is a ${sensor}, which is not known, so no values to expect can be printed for it.`,
            todo: `Known are ${sensorIds.join(', ')}.`,
          },
        ],
  );
}
