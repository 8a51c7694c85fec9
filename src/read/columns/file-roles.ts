import { looseName, splitName, type NameParts } from '../names/column-name.js';
import { stemOf } from '../names/machine-name.js';
import { plainWords } from '../names/role-words.js';
import type { ZoneSource } from './draft-zone.js';
import type { RoledSeries } from './roled-series.js';

/** Words in a file's name that name what it is about as often as a role: "data set", "heater log", "power station". */
const vagueWord = /^(set|in|input|heat|heater|heating|power|current|op|y|real|demand|reading|measurement)$/;

/**
 * Gives the columns of a file the role that its name says ("SP.csv", "Zone 1 OUT.csv"), where their own names say none:
 * only where files called otherwise hold the readings of the same zones, and then these are named without the word, too.
 */
export function withRolesOfFiles(files: readonly ZoneSource[]): ZoneSource[] {
  const said = files.map(({ name }) => roleOfStem(name));
  const named = files.map((file, i) =>
    said[i] ? { ...file, roled: file.roled.map((it) => asSaid(it, said[i]!)) } : file,
  );
  const zonesOf = (file: ZoneSource, isReading: boolean): string[] =>
    file.roled.flatMap(({ role, rest }) =>
      role !== 'ignored' && role !== 'running' && (role === 'reading') === isReading && rest !== ''
        ? [looseName(rest)]
        : [],
    );
  const read = new Set(named.flatMap((file) => zonesOf(file, true)));
  const controlled = new Set(named.flatMap((file, i) => (said[i] ? zonesOf(file, false) : [])));
  return files.map((file, i) => {
    if (!said[i]) return file;
    const isKnown =
      zonesOf(named[i]!, false).some((zone) => read.has(zone)) ||
      zonesOf(named[i]!, true).some((zone) => controlled.has(zone));
    return isKnown ? named[i]! : file;
  });
}

/** Names of files stand in the plural, too: "setpoints", "Sollwerte". */
function roleOfStem(path: string): NameParts | null {
  const stem = stemOf(path);
  return [stem, stem.replace(/[se]$/, '')].map(splitName).find(isRole) ?? null;
}

function isRole({ meaning, word }: NameParts): boolean {
  const isMeant = meaning === 'reading' || meaning === 'setpoint' || meaning === 'output';
  return isMeant && !vagueWord.test(plainWords(word));
}

/** A column that says no role by itself; "Value" takes its zone from the file's name as well. */
function asSaid(it: RoledSeries, said: NameParts): RoledSeries {
  const { meaning, rest: own } = splitName(it.series.name);
  if (meaning !== null && meaning !== 'temperature' && meaning !== 'filler') return it;
  const rest = own === '' ? said.rest : own;
  if (rest === '' || it.series.numbers + it.series.openTexts === 0) return it;
  return {
    ...it,
    role: said.meaning as 'reading' | 'setpoint' | 'output',
    rest,
    why: `the word "${said.word}" in the file's name`,
  };
}
