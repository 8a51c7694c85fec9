import type { Plant } from '../make/made-plant.js';

const columnCount = { pvonly: 1, nosp: 2, full: 3 } as const;
export type Columns = keyof typeof columnCount;

/** The same plant with a log that leaves columns out; null when its log holds no more than that already. */
export function withFewerColumns(plant: Plant, has: Columns): Plant | null {
  const { parameters, truth } = plant;
  if (columnCount[parameters.format.has] <= columnCount[has]) return null;
  return {
    ...plant,
    parameters: { ...parameters, format: { ...parameters.format, has } },
    truth: { ...truth, meta: { ...truth.meta, has } },
  };
}
