import type { PlantZone } from '../../model/plant-file.js';
import type { Zone } from '../../model/zone.js';
import { list, wordsOf } from '../../words/fold.js';

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

/** Words for a heater zone before a number; common practice. */
const zoneWords = new Set(
  list(`
      zone, zones, z, hz, heater zone, heizzone, regelzone, heizkreis, zona, zon, sone, varmezone, strefa, heater,
      loop, channel, ch, kanal, tsoon, зона, vung, โซน, منطقة, المنطقة, אזור, 温区`).map((w) => wordsOf(w).join(' ')),
);
/** "Zone no. 3" is zone 3. */
const numberWords = new Set(['no', 'nr', 'number', 'num', 'n']);
/** Function letters of temperature loops (ANSI/ISA-5.1): TIC101, TT101, TAH101 and TE101 are one loop. */
const temperatureLoop = /^t(?:[ceirtyas]|ic|ir|irc|ica|irca|ah|al|ahh|all|sh|sl|shh|sll|dah|dal)$/u;

interface Name {
  readonly zone: number;
  readonly key: string;
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
  const exact = zones.flatMap((zone) => namesOf(zone, plantZones).map((text) => nameOf(zone, wordsOf(text))));
  const loose = zones.flatMap((zone) => namesOf(zone, plantZones).map((text) => nameOf(zone, looseWords(text))));
  return (clues) => {
    const machine = namedMachine(machines, clues) ?? (machines.length === 1 ? machines[0]! : null);
    let isAmbiguous = false;
    for (const text of [clues.zone, clues.source, clues.message]) {
      if (text === '') continue;
      const number = text === clues.zone ? numberAlone(text) : null;
      const found = number === null ? zonesNamed(exact, loose, text) : longest(loose, ['zone', number]);
      const fitting = [...new Set(found)].filter((zone) => !machine || zones[zone]!.machine === machine);
      if (fitting.length === 1) return { zone: fitting[0]!, machine: zones[fitting[0]!]!.machine, isAmbiguous: false };
      isAmbiguous ||= fitting.length > 1;
    }
    return { zone: null, machine, isAmbiguous };
  };
}

function zonesNamed(exact: readonly Name[], loose: readonly Name[], text: string): number[] {
  const found = longest(exact, wordsOf(text));
  return found.length > 0 ? found : longest(loose, looseWords(text));
}

function nameOf(zone: Zone, words: readonly string[]): Name {
  return { zone: zone.index, key: words.join('') };
}

/** The zone's name, the name without its machine in front, and the names plant.yaml gives. */
function namesOf(zone: Zone, plantZones: readonly PlantZone[]): string[] {
  const names = [zone.name];
  const words = wordsOf(zone.name);
  const machine = wordsOf(zone.machine);
  if (machine.length > 0 && words.length > machine.length && machine.every((word, i) => word === words[i])) {
    names.push(words.slice(machine.length).join(' '));
  }
  const given = plantZones.find(({ name }) => wordsOf(name).join('') === words.join(''));
  return [...names, ...[given?.reading, given?.setpoint, given?.output].filter((name) => name !== undefined)];
}

/** Zones whose name stands in the words, word ends on word ends; those with the longest such name. */
function longest(names: readonly Name[], words: readonly string[]): number[] {
  const runs = runsOf(words, Math.max(0, ...names.map(({ key }) => key.length)));
  const found = names.filter(({ key }) => key !== '' && runs.has(key));
  const length = Math.max(0, ...found.map(({ key }) => key.length));
  return found.filter(({ key }) => key.length === length).map(({ zone }) => zone);
}

/** Neighbouring words joined, no longer than the longest name that is sought: a damaged text may have a thousand words. */
function runsOf(words: readonly string[], longestName: number): ReadonlySet<string> {
  const runs = new Set<string>();
  for (let from = 0; from < words.length; from++) {
    let run = words[from]!;
    for (let next = from + 1; run.length <= longestName; next++) {
      runs.add(run);
      if (next === words.length) break;
      run += words[next]!;
    }
  }
  return runs;
}

/** Words with every zone word before a number as "zone" and every temperature loop as "loop". */
function looseWords(text: string): string[] {
  const words = wordsOf(text).filter((word, i, all) => !(numberWords.has(word) && /^\p{N}/u.test(all[i + 1] ?? '')));
  return words.map((word, i) => {
    if (!/^\p{N}/u.test(words[i + 1] ?? '')) return word;
    if (zoneWords.has(word)) return 'zone';
    return temperatureLoop.test(word) ? 'tloop' : word;
  });
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
