import type { LookAlike, PlantParameters } from './plant-parameters.js';
import { smallPlantParameters, type SmallPlantWish } from './small-plant.js';

const hourS = 3600;
const dayS = 24 * hourS;

const lookAlike = (kind: LookAlike['kind'], size: number, startS: number, endS: number): LookAlike[] => [
  { kind, machine: 0, zone: -1, startS, endS, size },
];

/** A plant with nothing wrong on which something happens that fools people: its name, what is wished for, what is changed after. */
export type LookAlikeCase = readonly [string, SmallPlantWish, ((plant: PlantParameters) => PlantParameters)?];

/** Zones that start, stop and follow a new set point within one row of the log or two, with and without set points. */
function slowLogs(name: string, wish: SmallPlantWish): LookAlikeCase[] {
  const light = (plant: PlantParameters): PlantParameters => withMasses(plant, [0.03, 0.06, 0.05, 0.1, 0.04]);
  return (['full', 'pvonly'] as const).map((has) => [
    `${name}, a log every three minutes, ${has}`,
    { ...wish, everyS: 180, format: { has } },
    light,
  ]);
}

/** What happens to healthy zones and fools people, each on five days of a plant, logged every minute, with nothing wrong. */
export const lookAlikeCases: readonly LookAlikeCase[] = [
  ['heat-up and cool-down every day, short stops', { machine: { stopsPerHour: 3, stopMedianS: 240 } }],
  ['a stand-by temperature between shifts', { machine: { rest: 'standby', standbyDegC: 80 } }],
  ['changes of set point and changeovers', { machine: { changeoversPerDay: 3, nudgesPerDay: 2 } }],
  ['wash-downs every day', { machine: { washDownsPerDay: 1 } }],
  ['a line that changes its speed', { machine: { speedChangesPerShift: 4 } }],
  ['a faster line for all zones', { lookAlikes: lookAlike('fast-line', 1.4, 2.3 * dayS, 5 * dayS) }],
  ['thick product for a shift', { lookAlikes: lookAlike('thick-product', 1.5, 3.3 * dayS, 3.6 * dayS) }],
  ['a hot day', { lookAlikes: lookAlike('hot-day', 9, 2 * dayS, 3 * dayS) }],
  [
    'air that swings between day and night',
    {},
    (plant) => ({ ...plant, air: { ...plant.air, daySwingK: 5, trendKPerDay: 0.8 } }),
  ],
  ['a draught on the whole machine', { lookAlikes: lookAlike('draught', 1.3, 2.5 * dayS, 4 * dayS) }],
  ['a restart of the controller', { lookAlikes: lookAlike('restart', 1, 2.4 * dayS, 2.4 * dayS + 60) }],
  ['a power cut', { lookAlikes: lookAlike('power-cut', 1, 3.4 * dayS, 3.4 * dayS + hourS) }],
  ['whole degrees', { format: { digits: 0 } }],
  ['a log every ten seconds', { everyS: 10 }],
  ['a log every two minutes in whole degrees', { everyS: 120, format: { digits: 0 } }],
  ['readings alone', { format: { has: 'pvonly' } }],
  ['no set point', { format: { has: 'nosp' } }],
  ['a week in three shifts', { pattern: '3shift5' }],
  ['a hunting loop on one zone', {}, (plant) => withZone(plant, 2, { gainTimes: 4, integralS: 60 })],
  ['on/off control on one zone', {}, (plant) => withZone(plant, 1, { kind: 'on-off' })],
  ['a log every five minutes', { everyS: 300 }],
  ...slowLogs('light zones', {}),
  ...slowLogs('light zones and new set points', { machine: { nudgesPerDay: 2 } }),
  ...slowLogs('light zones and a moment without power', {
    lookAlikes: lookAlike('power-cut', 1, 3.4 * dayS, 3.4 * dayS + 40),
  }),
  ['a light zone and a heavy one', {}, (plant) => withMasses(plant, [0.4, 1, 1, 3, 1])],
];

/** The parameters of one case, by default for five days of five zones. */
export function lookAlikeParameters([, wish, change]: LookAlikeCase, seed: number): PlantParameters {
  const parameters = smallPlantParameters({ zones: 5, days: 5, everyS: 60, ...wish, seed });
  return change ? change(parameters) : parameters;
}

export function withZone(
  plant: PlantParameters,
  index: number,
  { gainTimes = 1, integralS, kind }: { gainTimes?: number; integralS?: number; kind?: 'on-off' },
): PlantParameters {
  const zones = plant.zones.map((zone, i) => {
    if (i !== index) return zone;
    const controller = {
      ...zone.controller,
      gainPercentPerK: gainTimes * zone.controller.gainPercentPerK,
      integralS: integralS ?? zone.controller.integralS,
      kind: kind ?? zone.controller.kind,
    };
    return { ...zone, controller };
  });
  return { ...plant, zones };
}

function withMasses(plant: PlantParameters, times: readonly number[]): PlantParameters {
  const zones = plant.zones.map((zone, i) => {
    const factor = times[i] ?? 1;
    const { bodyJPerK, heaterJPerK } = zone.thermal;
    return { ...zone, thermal: { ...zone.thermal, bodyJPerK: factor * bodyJPerK, heaterJPerK: factor * heaterJPerK } };
  });
  return { ...plant, zones };
}
