import type { PlantFile, PlantZone } from '../model/plant-file.js';
import type { ProblemNote } from '../model/problem.js';
import type { Zone } from '../model/zone.js';
import { looseName } from './column-name.js';
import type { RoledSeries } from './column-roles.js';
import { machineOfName, machineOfPath, sharedPrefixes, stemOf } from './machine-name.js';

/** What the assembly of zones needs to know of a file. */
export interface ZoneSource {
  readonly name: string;
  readonly preamble: readonly string[];
  readonly roled: readonly RoledSeries[];
  readonly firstMs: number;
  readonly lastMs: number;
  readonly samplingMs: number;
  readonly isChangeLogged: boolean;
}

export interface Attached extends RoledSeries {
  readonly zones: readonly number[];
}

export interface ZoneAssembly {
  readonly zones: readonly Zone[];
  /** By file, then by series, in the order given. */
  readonly attached: readonly (readonly Attached[])[];
  readonly problems: readonly ProblemNote[];
}

interface DraftZone {
  readonly key: string;
  name: string;
  machine: string | null;
  readonly file: number;
  /** Files that hold its reading, with the series. */
  readonly readings: { file: number; roled: RoledSeries }[];
  readonly has: { reading: boolean; setpoint: boolean; output: boolean; running: boolean };
  /** Name of the column that several zones share, by role; the file of the next day has it again. */
  readonly shared: { running?: string; setpoint?: string };
  plant: PlantZone | null;
}

/**
 * Joins the series of all files to zones: readings make them, set points and outputs of the same name go to them, running
 * states go to all zones of their machine. plant.yaml fills in what it knows, names matched by ear.
 */
export function assembleZones(files: readonly ZoneSource[], plant: PlantFile | null): ZoneAssembly {
  const drafts = new Map<string, DraftZone>();
  const keyed = files.map((file, i) => keySeries(file, i, files, plant));
  keyed.forEach((series, file) => series.forEach((it) => addReading(drafts, it, file)));
  const list = [...drafts.values()];
  nameByFolder(list, files, plant);
  const attached = keyed.map((series, file) => series.map((it) => attach(it, file, list, drafts)));
  const problems = [...withoutReadings(files), ...(list.length > 0 ? unmatchedZones(list, plant) : [])];
  return { zones: nameApart(list).map((draft, index) => toZone(draft, index, files)), attached, problems };
}

interface Keyed {
  readonly roled: RoledSeries;
  readonly key: string;
  readonly name: string;
  readonly machine: string | null;
  readonly plant: PlantZone | null;
  /** Why it is left alone although its name says a role. */
  readonly left: string | null;
}

function keySeries(
  file: ZoneSource,
  fileIndex: number,
  files: readonly ZoneSource[],
  plant: PlantFile | null,
): Keyed[] {
  const bare = file.roled.filter((it) => it.role === 'reading' && it.rest === '');
  const ownName = zoneOfFile(file);
  const isShared = isNameShared(fileIndex, files);
  const machine = machineOfPath(file.name) ?? (isShared ? stemOf(file.name) || null : null);
  const prefixes = sharedPrefixes(file.roled.filter((it) => it.role === 'reading').map((it) => it.rest));
  const taken = new Map<string, RoledSeries>();
  return file.roled.map((roled) => {
    const name =
      roled.rest !== ''
        ? roled.rest
        : roled.role === 'reading' && bare.length > 1 && !isCopyOfFirst(roled, bare)
          ? roled.series.name
          : ownName;
    const namedMachine = machineOfName(name, prefixes);
    const ownMachine = namedMachine ?? machine;
    const entry = findPlantZone(name, ownMachine, isShared, plant);
    const key = entry
      ? looseName(`${entry.machine ?? ''} ${entry.name}`)
      : looseName(`${namedMachine ? '' : (machine ?? '')} ${name}`);
    return settle(roled, key, entry?.name ?? name, entry?.machine ?? ownMachine, entry, taken);
  });
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
  const earlier = roled.role === 'running' || roled.role === 'ignored' ? undefined : taken.get(slot);
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

/** "Zone: Front jaw", in the languages that exports are met in (common practice). */
const zoneLine =
  /^\W*(?:(?:heiz)?zone|tag|tag ?name|name|channel|kanal|sensor|point|loop|zona|strefa|sone|messstelle|bezeichnung|nom|nome|nombre|naam|nazwa|voie|canal|sonde|sonda|sensore|kanaal|anneau|regelkreis)(?: name)?\s*[:=;,\t][:=;,\s]*(.+?)\W*$/i;

/** Name for a file that holds one zone: a line above the header that names it, else the file's own name. */
function zoneOfFile(file: ZoneSource): string {
  for (const line of file.preamble) {
    const said = zoneLine.exec(line);
    if (said && /\p{L}/u.test(said[1]!)) return said[1]!;
    const zone = /\b((?:heiz)?(?:zone|zona|strefa|sone|zon)[ _-]?\d+)\b/i.exec(line);
    if (zone) return zone[1]!;
  }
  return stemOf(file.name) || 'Zone';
}

/** True when another file over the same time has the same reading names with other values: then they are two machines. */
function isNameShared(index: number, files: readonly ZoneSource[]): boolean {
  const file = files[index]!;
  return files.some((other, i) => i !== index && overlaps(file, other) && hasOtherValues(file, other));
}

function overlaps(a: ZoneSource, b: ZoneSource): boolean {
  return a.firstMs <= b.lastMs && b.firstMs <= a.lastMs;
}

function hasOtherValues(a: ZoneSource, b: ZoneSource): boolean {
  let same = 0;
  let different = 0;
  for (const reading of a.roled.filter((it) => it.role === 'reading' && it.rest !== '')) {
    const twin = b.roled.find((it) => it.role === 'reading' && looseName(it.rest) === looseName(reading.rest));
    if (!twin) continue;
    const values = new Map(twin.series.clockMs.map((ms, i) => [ms, twin.series.value[i]!]));
    reading.series.clockMs.forEach((ms, i) => {
      const other = values.get(ms);
      if (other === undefined || Number.isNaN(other) || Number.isNaN(reading.series.value[i])) return;
      if (other === reading.series.value[i]) same++;
      else different++;
    });
  }
  return different >= 3 && different > same;
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

function addReading(drafts: Map<string, DraftZone>, it: Keyed, file: number): void {
  if (it.roled.role !== 'reading' || it.left) return;
  const draft = drafts.get(it.key);
  if (draft) draft.readings.push({ file, roled: it.roled });
  else
    drafts.set(it.key, {
      ...{
        key: it.key,
        name: it.name,
        machine: it.machine,
        file,
        plant: it.plant,
        readings: [{ file, roled: it.roled }],
      },
      has: { reading: true, setpoint: false, output: false, running: false },
      shared: {},
    });
}

function attach(it: Keyed, file: number, list: readonly DraftZone[], drafts: ReadonlyMap<string, DraftZone>): Attached {
  const { roled } = it;
  const left = (why: string): Attached => ({ ...roled, role: 'ignored', zones: [], why });
  if (it.left) return left(it.left);
  if (roled.role === 'ignored') return { ...roled, zones: [] };
  if (roled.role === 'running') return attachRunning(roled, file, list);
  const draft = drafts.get(it.key);
  if (!draft) return attachToAll(roled, file, list) ?? left('no reading goes with it');
  draft.has[roled.role] = true;
  return { ...roled, zones: [list.indexOf(draft)] };
}

/** A set point without a zone's name in a file of several zones is the set point of all of them. */
function attachToAll(roled: RoledSeries, file: number, list: readonly DraftZone[]): Attached | null {
  if (roled.role !== 'setpoint' || roled.rest !== '') return null;
  const free = list.filter(
    (draft) => takesShared(draft, 'setpoint', roled) && draft.readings.some((reading) => reading.file === file),
  );
  if (free.length === 0) return null;
  for (const draft of free) share(draft, 'setpoint', roled);
  return {
    ...roled,
    zones: free.map((draft) => list.indexOf(draft)),
    why: `${roled.why}; it names no zone, so it counts for all zones of the file`,
  };
}

/** Whether a zone still lacks what the column says, or has it from the column of that name in an earlier file. */
function takesShared({ has, shared }: DraftZone, role: 'running' | 'setpoint', { series }: RoledSeries): boolean {
  return !has[role] || shared[role] === looseName(series.name);
}

function share(draft: DraftZone, role: 'running' | 'setpoint', { series }: RoledSeries): void {
  draft.has[role] = true;
  draft.shared[role] = looseName(series.name);
}

/** Words that mean the one machine of a file. */
const wholeMachine =
  /^(the)?(machine|macchina|maquina|maszyna|stroj|makine|line|maschine|linie|anlage|anlagen|ligne|linea|linje|press|extruder|plant|main|drive|web|production|cycle|screw|belt)*(drive|motor)?$/;

function attachRunning(roled: RoledSeries, file: number, list: readonly DraftZone[]): Attached {
  const rest = looseName(roled.rest);
  const inFile = list.filter((draft) => draft.readings.some((reading) => reading.file === file));
  const byMachine = list.filter((draft) => draft.machine !== null && looseName(draft.machine) === rest);
  const byPrefix =
    rest === '' ? [] : list.filter((draft) => looseName(draft.name).startsWith(rest) && looseName(draft.name) !== rest);
  const isZone = list.some((draft) => looseName(draft.name) === rest);
  const served =
    byMachine.length > 0
      ? byMachine
      : byPrefix.length > 1
        ? byPrefix
        : wholeMachine.test(rest)
          ? inFile.length > 0
            ? inFile
            : list
          : [];
  const free = served.filter((draft) => takesShared(draft, 'running', roled));
  if (isZone || served.length === 0)
    return { ...roled, role: 'ignored', zones: [], why: 'it belongs to no machine that has zones here' };
  if (free.length === 0)
    return { ...roled, role: 'ignored', zones: [], why: 'another column already says when the machine runs' };
  if (byMachine.length === 0 && byPrefix.length > 1) for (const draft of byPrefix) draft.machine ??= roled.rest;
  for (const draft of free) share(draft, 'running', roled);
  return { ...roled, zones: free.map((draft) => list.indexOf(draft)) };
}

/**
 * Zones without a machine that come from several folders belong to several machines, and comparing them would mix these;
 * folders with a zone in common (one for each day) are one.
 */
function nameByFolder(list: readonly DraftZone[], files: readonly ZoneSource[], plant: PlantFile | null): void {
  const groups: { folders: Set<string>; zones: DraftZone[] }[] = [];
  for (const draft of list.filter(({ machine }) => machine === null)) {
    const folders = new Set(draft.readings.map(({ file }) => folderOf(files[file]!.name)));
    const met = groups.filter((group) => [...folders].some((folder) => group.folders.has(folder)));
    for (const group of met) {
      groups.splice(groups.indexOf(group), 1);
      for (const folder of group.folders) folders.add(folder);
    }
    groups.push({ folders, zones: [...met.flatMap(({ zones }) => zones), draft] });
  }
  const names = groups.map(({ folders }) => [...folders][0]!);
  if (groups.length < 2 || names.some((name) => !/\p{L}/u.test(name))) return;
  for (const [i, { zones }] of groups.entries()) for (const draft of zones) draft.machine = asInPlant(names[i]!, plant);
}

function folderOf(path: string): string {
  return path.split('!')[0]!.split(/[\\/]/).at(-2) ?? '';
}

function asInPlant(name: string, plant: PlantFile | null): string {
  const machines = (plant?.zones ?? []).flatMap(({ machine }) => machine ?? []);
  return machines.find((machine) => looseName(machine) === looseName(name)) ?? name;
}

function nameApart(list: readonly DraftZone[]): readonly DraftZone[] {
  const times = new Map<string, number>();
  for (const { name } of list) times.set(looseName(name), (times.get(looseName(name)) ?? 0) + 1);
  for (const draft of list)
    if (
      times.get(looseName(draft.name))! > 1 &&
      draft.machine &&
      !looseName(draft.name).startsWith(looseName(draft.machine))
    )
      draft.name = `${draft.machine} ${draft.name}`;
  return list;
}

function toZone(draft: DraftZone, index: number, files: readonly ZoneSource[]): Zone {
  const source = files[draft.file]!;
  const { plant } = draft;
  return {
    ...{ index, name: draft.name, machine: plant?.machine ?? draft.machine ?? 'Machine', has: draft.has },
    ...{ sensor: plant?.sensor ?? null, wires: plant?.wires ?? null, card: plant?.card ?? null },
    ...{
      heaterW: plant?.heaterW ?? null,
      heaterV: plant?.heaterV ?? null,
      toleranceClass: plant?.toleranceClass ?? null,
    },
    ...{ samplingMs: source.samplingMs, resolutionDegC: NaN, isChangeLogged: source.isChangeLogged },
    ...(draft.readings.every(({ roled }) => roled.isQuantityUnknown) ? { isQuantityUnknown: true } : {}),
  };
}

/** A file whose set points or outputs were told, but no reading, has readings under names that no table knows. */
function withoutReadings(files: readonly ZoneSource[]): ProblemNote[] {
  return files.flatMap(({ name, roled }) => {
    const unsaid = roled.filter(({ role, series }) => role === 'ignored' && series.numbers > 0);
    const isLacking = !roled.some(({ role }) => role === 'reading') && roled.some(({ role }) => role === 'setpoint');
    if (!isLacking || unsaid.length === 0) return [];
    const names = unsaid
      .slice(0, 6)
      .map(({ series }) => `"${series.name}"`)
      .join(', ');
    return [
      {
        code: 'unknown-layout' as const,
        file: name,
        what: `The file has set points, but no name says which columns are readings; not known are ${names}.`,
        todo: 'Name each zone in plant.yaml with the key "reading" and the name of its column.',
      },
    ];
  });
}

function unmatchedZones(list: readonly DraftZone[], plant: PlantFile | null): ProblemNote[] {
  const seen = new Set(list.map((draft) => draft.plant));
  return (plant?.zones ?? [])
    .filter((zone) => !seen.has(zone))
    .map((zone) => ({
      code: 'unmatched-zone',
      what: `plant.yaml names the zone "${zone.name}", but no log has readings for it.`,
      todo: `Correct the name, or add the key "reading" with the name of its column; the logs have: ${list
        .slice(0, 8)
        .map((draft) => draft.name)
        .join(', ')}.`,
    }));
}
