import type { PlantFile } from '../model/plant-file.js';
import type { ProblemNote } from '../model/problem.js';
import { parseSensorType, sensorIds } from './sensor-types.js';

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
