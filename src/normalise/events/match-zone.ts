import type { PlantZone } from '../../model/plant-file.js';
import type { Zone } from '../../model/zone.js';
import { wordsOf } from '../../words/fold.js';
import { longest, namesOf, runsOf, thingsNamed } from '../../words/named-things.js';

/** The texts of one row in which a zone may be named, the most telling first. */
export interface ZoneClues {
  readonly zone: string;
  readonly machine: string;
  readonly source: string;
  readonly message: string;
}

export interface ZoneMatch {
  /** Zone index, or null. */
  readonly zone: number | null;
  /** Name of a machine of the plant that the texts name or the zone belongs to, or null. */
  readonly machine: string | null;
  /** True when several zones fit equally well and no machine tells them apart. */
  readonly isAmbiguous: boolean;
}

/**
 * Finds zones named in texts, whatever signs, case, leading zeros or zone word the log uses.
 *
 * @param zones All zones of the plant.
 * @param plantZones Their other names from plant.yaml.
 * @returns A function of the texts of one row. It never throws.
 */
export function zoneMatcher(zones: readonly Zone[], plantZones: readonly PlantZone[]): (clues: ZoneClues) => ZoneMatch {
  const machines = [...new Set(zones.map(({ machine }) => machine))];
  const names = namesOf(zones.flatMap((zone) => textsOf(zone, plantZones).map((text) => [zone.index, text] as const)));
  return (clues) => {
    const machine = namedMachine(machines, clues) ?? (machines.length === 1 ? machines[0]! : null);
    let isAmbiguous = false;
    for (const text of [clues.zone, clues.source, clues.message]) {
      if (text === '') continue;
      const number = text === clues.zone ? numberAlone(text) : null;
      const found = number === null ? thingsNamed(names, text) : longest(names.loose, ['zone', number]);
      const fitting = [...new Set(found)].filter((zone) => !machine || zones[zone]!.machine === machine);
      if (fitting.length === 1) return { zone: fitting[0]!, machine: zones[fitting[0]!]!.machine, isAmbiguous: false };
      isAmbiguous ||= fitting.length > 1;
    }
    return { zone: null, machine, isAmbiguous };
  };
}

/** The zone's name, the name without its machine in front, and the names plant.yaml gives. */
function textsOf(zone: Zone, plantZones: readonly PlantZone[]): string[] {
  const names = [zone.name];
  const words = wordsOf(zone.name);
  const machine = wordsOf(zone.machine);
  if (machine.length > 0 && words.length > machine.length && machine.every((word, i) => word === words[i])) {
    names.push(words.slice(machine.length).join(' '));
  }
  const given = plantZones.find(({ name }) => wordsOf(name).join('') === words.join(''));
  return [...names, ...[given?.reading, given?.setpoint, given?.output].filter((name) => name !== undefined)];
}

function numberAlone(text: string): string | null {
  const words = wordsOf(text);
  return words.length === 1 && /^\p{N}+$/u.test(words[0]!) ? words[0]! : null;
}

function namedMachine(machines: readonly string[], clues: ZoneClues): string | null {
  const keys = machines.map((machine) => wordsOf(machine).join(''));
  for (const text of [clues.machine, clues.source, clues.zone, clues.message]) {
    const runs = runsOf(wordsOf(text), Math.max(0, ...keys.map((key) => key.length)));
    const named = machines.filter((_, m) => {
      const key = keys[m]!;
      const isBareNumber = /^\p{N}+$/u.test(key); // a 1 in a message is rarely machine 1
      return runs.has(key) && (!isBareNumber || text === clues.machine);
    });
    if (named.length === 1) return named[0]!;
  }
  return null;
}
