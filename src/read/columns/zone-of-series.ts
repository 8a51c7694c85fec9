import type { PlantFile, PlantZone } from '../../model/plant-file.js';
import { looseName } from '../names/column-name.js';
import type { RoledSeries } from './column-roles.js';
import type { ZoneSource } from './draft-zone.js';
import type { FileMachine } from './file-machines.js';
import { zoneOfPreamble } from '../names/zone-name.js';
import { machineOfName, sharedPrefixes, stemOf } from '../names/machine-name.js';

/** A series and the zone it belongs to. */
export interface Keyed {
  readonly roled: RoledSeries;
  readonly key: string;
  readonly name: string;
  readonly machine: string | null;
  readonly plant: PlantZone | null;
  /** Why it is left alone although its name says a role. */
  readonly left: string | null;
}

/** Says for each series of a file which zone it belongs to, from its name, the file's name, and plant.yaml. */
export function keySeries(
  file: ZoneSource,
  { name: machine, isShared, zone }: FileMachine,
  plant: PlantFile | null,
): Keyed[] {
  const bare = file.roled.filter((it) => it.role === 'reading' && it.rest === '');
  const ownName = zone ?? (zoneOfPreamble(file.preamble) || stemOf(file.name) || 'Zone');
  const prefixes = sharedPrefixes(file.roled.filter((it) => it.role === 'reading').map((it) => it.rest));
  const isRepeating = areRepeated(bare);
  const taken = new Map<string, RoledSeries>();
  return file.roled.map((roled) => {
    const name =
      roled.rest !== ''
        ? roled.rest
        : isRepeating
          ? `Zone ${timesStood(roled.series.name)}`
          : roled.role === 'reading' && bare.length > 1 && !isCopyOfFirst(roled, bare)
            ? roled.series.name
            : ownName;
    const rowMachine = roled.series.machine ?? null;
    const namedMachine = rowMachine ?? machineOfName(name, prefixes);
    const ownMachine = namedMachine ?? machine;
    const entry = findPlantZone(name, ownMachine, isShared, plant);
    const key = entry
      ? looseName(`${entry.machine ?? ''} ${entry.name}`)
      : looseName(`${rowMachine ?? (namedMachine ? '' : (machine ?? ''))} ${name}`);
    return settle(roled, key, entry?.name ?? name, entry?.machine ?? ownMachine, entry, taken);
  });
}

/** "PV, SP, PV, SP": the same names again for the next zone. */
function areRepeated(bare: readonly RoledSeries[]): boolean {
  const names = new Set(bare.map(({ series }) => series.name.replace(repeatMark, '')));
  const own = bare.filter((it, i) => !bare.slice(0, i).some((other) => isCopy(other, it)));
  return names.size === 1 && own.length > 1;
}

/** As the reader writes it behind a name that stood before. */
const repeatMark = / \((\d+)\)$/;

function timesStood(name: string): number {
  return Number(repeatMark.exec(name)?.[1] ?? 1);
}

/** The second series of the same role and zone: a copy in another unit is left alone, another value is a zone of its own. */
function settle(
  roled: RoledSeries,
  key: string,
  name: string,
  machine: string | null,
  plant: PlantZone | null,
  taken: Map<string, RoledSeries>,
): Keyed {
  const slot = `${roled.role} ${key}`;
  const isShared = roled.role === 'running' || roled.role === 'alarm' || roled.role === 'ignored';
  const earlier = isShared ? undefined : taken.get(slot);
  const base = { roled, key, name, machine, plant, left: null };
  if (!earlier) {
    taken.set(slot, roled);
    return base;
  }
  if (roled.role !== 'reading')
    return {
      ...base,
      left: `"${earlier.series.name}" is already the ${roled.role === 'setpoint' ? 'set point' : 'output'} of this zone`,
    };
  if (isCopy(earlier, roled)) return { ...base, left: `it repeats "${earlier.series.name}" in another unit` };
  const ownName = roled.series.name;
  return { ...base, key: looseName(`${machine ?? ''} ${ownName}`) + key, name: ownName, plant: null };
}

function isCopyOfFirst(roled: RoledSeries, bare: readonly RoledSeries[]): boolean {
  return bare.some((other) => other === roled || isCopy(other, roled));
}

/** The same temperature twice: equal, or °F = °C · 9/5 + 32 within the rounding of both. */
export function isCopy(a: RoledSeries, b: RoledSeries): boolean {
  let compared = 0;
  let agreeing = 0;
  const rounding = 1.5 * (10 ** -a.series.decimals + 10 ** -b.series.decimals);
  for (let i = 0; i < Math.min(a.series.value.length, b.series.value.length); i++) {
    const [x, y] = [a.series.value[i]! * a.scale, b.series.value[i]! * b.scale];
    if (Number.isNaN(x) || Number.isNaN(y)) continue;
    compared++;
    const asDegF = (value: number) => value * 1.8 + 32;
    if (Math.abs(asDegF(x) - y) <= rounding || Math.abs(asDegF(y) - x) <= rounding) agreeing++;
  }
  return compared >= 3 && agreeing >= 0.99 * compared;
}

/** @param isShared Whether another machine's file has the same names; then the name alone tells no zone. */
function findPlantZone(
  name: string,
  machine: string | null,
  isShared: boolean,
  plant: PlantFile | null,
): PlantZone | null {
  const zones = plant?.zones ?? [];
  const loose = looseName(name);
  const full = looseName(`${machine ?? ''} ${name}`);
  const byFull = zones.find((zone) =>
    [looseName(zone.name), looseName(`${zone.machine ?? ''} ${zone.name}`)].includes(full),
  );
  if (byFull) return byFull;
  const byName = zones.filter(
    (zone) => looseName(zone.name) === loose || looseName(`${zone.machine ?? ''} ${zone.name}`) === loose,
  );
  return (
    byName.find(
      (zone) => machine === null || zone.machine === undefined || looseName(zone.machine) === looseName(machine),
    ) ?? (byName.length === 1 && !isShared ? byName[0]! : null)
  );
}
