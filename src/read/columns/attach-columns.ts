import { namesOf, thingsNamed } from '../../words/named-things.js';
import { looseName } from '../names/column-name.js';
import { flagWordsOf } from '../names/flag-names.js';
import type { RoledSeries } from './column-roles.js';
import type { Attached, DraftZone } from './draft-zone.js';
import type { Keyed } from './zone-of-series.js';

/** The file a series stands in. */
interface FileOfSeries {
  readonly index: number;
  /** Whether it has one column of a running state and no more. */
  readonly isRunningAlone: boolean;
}

/** Gives a series to the zones it serves, and marks these as having it; says why where it serves none. */
export function attach(
  it: Keyed,
  { index: file, isRunningAlone }: FileOfSeries,
  list: readonly DraftZone[],
  drafts: ReadonlyMap<string, DraftZone>,
): Attached {
  const { roled } = it;
  const left = (why: string): Attached => ({ ...roled, role: 'ignored', zones: [], why });
  if (it.left) return left(it.left);
  if (roled.role === 'ignored') return { ...roled, zones: [] };
  if (roled.role === 'running') return attachRunning(roled, file, list, isRunningAlone);
  if (roled.role === 'alarm') return attachFlag(roled, file, list);
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
  /^(the|db|gvl|gv|plc|sps|hmi|prg|global)*(mach|masch|machine|macchina|maquina|maszyna|stroj|makine|line|maschine|linie|anlage|anlagen|ligne|linea|linje|press|extruder|plant|main|drive|web|production|cycle|screw|belt)*(drive|motor)?$/;

function attachRunning(roled: RoledSeries, file: number, list: readonly DraftZone[], isAlone: boolean): Attached {
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
        : wholeMachine.test(rest) || (isAlone && mayBeMachine(roled) && areOfOneMachine(inFile))
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

/** Things of a machine that run by themselves (common practice). */
const partOfMachine =
  /pump|fan|blower|conveyor|mixer|agitator|hopper|feeder|chiller|compressor|cool|vacuum|valve|heat|pumpe|lufter|geblase|forder|ventil|kuhl|pompe|pompa|bomba|convoy|nastro|transport/;

/** "DB_Cell4.xRun": a word that says run and no more, and the name of no part. */
function mayBeMachine({ series, rest, why }: RoledSeries): boolean {
  const isRun =
    /^the word "(?:run|running|is ?running|betrieb|in betrieb|l(?:ä|ae)uft|en marche|in marcia|en marcha)"$/i.test(why);
  return isRun && !partOfMachine.test(looseName(`${rest} ${series.name}`));
}

function areOfOneMachine(drafts: readonly DraftZone[]): boolean {
  return new Set(drafts.map(({ machine }) => machine)).size === 1;
}

/** A flag goes to the zone that its name names, of those whose readings stand beside it; in a file of one zone to that. */
function attachFlag(roled: RoledSeries, file: number, list: readonly DraftZone[]): Attached {
  const { given, series } = roled;
  const isBeside = (draft: DraftZone): boolean => draft.readings.some((reading) => reading.file === file);
  const beside = [...list.keys()].filter((i) => isBeside(list[i]!));
  const zones = beside.length > 0 ? beside : [...list.keys()];
  const names = namesOf(zones.flatMap((i) => namesOfDraft(list[i]!).map((name) => [i, name] as const)));
  const machine = series.machine ?? '';
  const found = [...new Set(thingsNamed(names, given?.zone ?? flagWordsOf(`${machine} ${series.name}`)))];
  if (found.length === 1) return { ...roled, zones: found };
  if (beside.length === 1 && found.length === 0) return { ...roled, zones: beside };
  const why = found.length === 0 ? 'an alarm flag whose name names no zone' : 'an alarm flag that fits several zones';
  return { ...roled, role: 'ignored', zones: [], why: `${why}; "alarmColumns" in plant.yaml can say which` };
}

function namesOfDraft({ name, machine, plant }: DraftZone): string[] {
  return [name, ...(machine === null ? [] : [`${machine} ${name}`]), ...(plant?.reading ? [plant.reading] : [])];
}
