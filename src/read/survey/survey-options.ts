import type { TemperatureUnit } from '../../model/log-file.js';

export interface SurveyOptions {
  /** Path of a plant.yaml; without it the one in a folder given is used. */
  readonly plant?: string | undefined;
  /** True = no plant.yaml is used, not even the one in a folder given. */
  readonly ignorePlantFile?: boolean | undefined;
  /** Each wins over plant.yaml. */
  readonly timezone?: string | undefined;
  readonly dates?: 'day-first' | 'month-first' | undefined;
  readonly unit?: TemperatureUnit | undefined;
  /** Names of the columns, for files without a header. */
  readonly names?: readonly string[] | undefined;
  readonly holdMinutes?: number | undefined;
}
