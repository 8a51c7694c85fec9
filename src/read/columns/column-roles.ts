import type { TemperatureUnit } from '../../model/log-file.js';
import type { PlantFile } from '../../model/plant-file.js';
import { looseName, splitName, unitOf, type NamedUnit, type NameParts } from '../names/column-name.js';
import { asAlarmFlag } from './alarm-flags.js';
import { settleCompeting } from './competing-columns.js';
import { joinNumbered } from './numbered-names.js';
import { areOneQuantity } from './one-quantity.js';
import { plainWords } from '../names/role-words.js';
import type { RoledSeries } from './roled-series.js';
import type { Series } from './series.js';

export type { RoledSeries };

/** Tags that begin with T for temperature by ISA-5.1 (TIC101, TT-3, TE12), thermocouples (TC4) and plain T10. */
const temperatureTag = /^(?:.*[\s_.-])?T(?:I|IC|T|E|C|IR|R|IA|ICA)?[-_ ]?\d+[A-Z]?$/i;

/** Readings of heated zones and of the air lie between these, in °C, °F and tenths (codes aside). */
const leastPlausible = -460;
const mostPlausible = 20_000;

/**
 * Gives every series of a file a role: from plant.yaml, from the words and the unit of its name, from its neighbours,
 * and where no name says anything from the numbers alone.
 */
export function roleSeries(all: readonly Series[], plant: PlantFile | null): RoledSeries[] {
  const machines = [...new Set(all.map(({ machine }) => machine))];
  if (machines.length < 2) return roleOfMachine(all, plant);
  // Machines that stand in one file call their zones alike.
  const roled = machines.flatMap((machine) =>
    roleOfMachine(
      all.filter((it) => it.machine === machine),
      plant,
    ),
  );
  return all.map((series) => roled.find((it) => it.series === series)!);
}

function roleOfMachine(all: readonly Series[], plant: PlantFile | null): RoledSeries[] {
  const parts = settleNouns(all.map((series) => splitName(series.name)));
  const hasBareSetpoint = parts.some(({ meaning, rest }) => meaning === 'setpoint' && rest === '');
  const named = all.map(
    (series, i) =>
      byPlant(series.name, plant)?.(series) ?? asAlarmFlag(series) ?? byName(series, parts[i]!, hasBareSetpoint),
  );
  const first = namedByZone(joinNumbered(named, unsaid));
  const zones = new Set(
    first.filter((it) => it.role === 'setpoint' || it.role === 'output').map((it) => looseName(it.rest)),
  );
  const hasReadings = first.some((it) => it.role === 'reading');
  const hasDecimals = all.some((series) => series.decimals > 0);
  const roled = settleCompeting(
    first.map((it) => (it.why === unsaid ? byNeighbours(it, zones, hasReadings, hasDecimals) : it)).map(dropTexts),
  );
  const byNumbers = roled.filter(({ why }) => why === numbersAlone);
  if (byNumbers.length === 0 || areOneQuantity(byNumbers)) return roled;
  return roled.map((it) => (it.why === numbersAlone ? { ...it, isQuantityUnknown: true } : it));
}

/**
 * "Rear heater PV" is the reading of the rear heater, unless "Rear SP" shows that the zone is called "Rear", or "Rear PV"
 * that the other is what its heater does. "OUT Zone 1" beside "PV Zone 1" is what comes out for that zone.
 */
function settleNouns(all: readonly NameParts[]): NameParts[] {
  const shown = all.filter(({ bare, meaning }) => !bare && meaning !== null);
  const isReading = ({ meaning }: NameParts): boolean => meaning === 'reading' || meaning === 'temperature';
  return all.map((parts) => {
    const { bare, rest } = parts;
    if (!bare) return parts;
    const named = looseName(bare.rest);
    const others = shown.filter((other) => looseName(other.rest) === named);
    const isZone = all.some((other) => other.meaning === 'setpoint' && looseName(other.rest) === looseName(rest));
    if (isZone) return parts;
    // A word for the output beside the zone's own reading, or beside its bare name.
    const hasReading = others.some(isReading) || all.some((other) => isBare(other) && looseName(other.rest) === named);
    const mayBeOutput = parts.meaning === null ? bare.meaning === 'output' : isReading(parts);
    if (mayBeOutput && hasReading) return { ...parts, ...bare };
    return parts.meaning === null || others.length === 0 ? parts : { ...parts, rest: bare.rest };
  });
}

function isBare({ meaning, bare }: NameParts): boolean {
  return meaning === null && !bare;
}

const unsaid = 'its name does not say what it is';
const numbersAlone = 'no name says more, and its numbers can be temperatures';

function byPlant(name: string, plant: PlantFile | null): ((series: Series) => RoledSeries) | null {
  const loose = looseName(name);
  for (const zone of plant?.zones ?? [])
    for (const role of ['reading', 'setpoint', 'output'] as const)
      if (zone[role] !== undefined && looseName(zone[role]) === loose)
        return (series) => mapped(series, role, zone.name);
  if (plant?.leaveOut?.some((column) => looseName(column) === loose))
    return (series) => ({ ...mapped(series, 'ignored', ''), why: 'plant.yaml leaves it out' });
  const flag = plant?.alarmColumns?.find((entry) => looseName(entry.column) === loose);
  if (flag) return (series) => ({ ...mapped(series, 'alarm', series.name), given: flag });
  const running = plant?.running?.find((entry) => looseName(entry.column) === loose);
  return running ? (series) => mapped(series, 'running', running.machine) : null;
}

function mapped(series: Series, role: RoledSeries['role'], rest: string): RoledSeries {
  const { unit, scale } = splitName(series.name);
  return { series, role, rest, unit: asTemperature(unit), scale, why: 'plant.yaml says so' };
}

function asTemperature(unit: NamedUnit): TemperatureUnit | null {
  return unit === 'degC' || unit === 'degF' || unit === 'K' ? unit : null;
}

/** @param hasBareSetpoint Whether the file is of one zone, with its set point under no other name than that. */
function byName(series: Series, parts: NameParts, hasBareSetpoint: boolean): RoledSeries {
  const named = parts.unit ?? unitOf(series.unitText);
  const base = { series, rest: parts.rest, unit: asTemperature(named), scale: parts.scale };
  const word = `the word "${parts.word}"`;
  const left = (why: string): RoledSeries => ({ ...base, role: 'ignored', why });
  switch (parts.meaning) {
    case 'other':
      return left(`${word} says that it is not a heater zone's temperature, set point or output`);
    case 'quality':
      return left('a quality that belongs to no one column');
    case 'running':
      return { ...base, role: 'running', why: word };
    case 'setpoint':
      return named === 'percent' || named === 'other'
        ? left('a set point that is not of a temperature')
        : { ...base, role: 'setpoint', why: word };
    case 'output':
      // Short for control output beside a zone's name or its set point; alone, or in ppm, it is carbon monoxide.
      if (parts.word.toLowerCase() === 'co' && ((parts.rest === '' && !hasBareSetpoint) || named === 'other'))
        return left('it may be carbon monoxide');
      if (asTemperature(named)) return { ...base, role: 'reading', why: 'its unit is one of temperature' };
      return parts.rest === '' && ratePerTime.test(series.name)
        ? { ...base, role: 'running', why: 'a rate, of the machine' }
        : { ...base, role: 'output', why: word };
    case 'reading':
    case 'temperature':
      if (named === 'percent') return { ...base, role: 'output', why: 'its unit is percent' };
      return named === 'other' ? left('its unit is not one of temperature') : { ...base, role: 'reading', why: word };
    default:
      return byUnit(base, named);
  }
}

/** "Packs/min", "Output pcs/min", "Takte/h": what comes out, of the machine. */
const ratePerTime = /^[\p{L} ]+\/ ?(?:min|h|hr|std|hour|stunde|uur|godz|мин|час|分|时|時)\.?$/iu;
/** "Screw rpm", "Line m/min", "Schnecke 1/min": how fast the machine goes. */
const speedOfMachine =
  /^(?:main |extruder |machine |line |maschinen?|anlagen?|linien?)?(?:screw|line|web|machine|drive|belt|chain|schnecken?|bahn|maschine|linie|antrieb|vis|vite|husillo|tornillo|linea|ligne)[ _]*[([]?(?:rpm|u\/min|1\/min|min-1|m\/min|ft\/min|mpm|fpm)[)\]]?$/i;
/** Bits of a word, each an alarm or a state (common practice). */
const bitWord =
  /(?:alarm|fault|error|status|warn(?:ing)?|fehler|stor|meld)\w*?[ _-]?(?:words?|bits?|mask|flags?|wort|reg(?:ister)?)[ _-]?\d*$/i;

function byUnit(base: Omit<RoledSeries, 'role' | 'why'>, named: NamedUnit): RoledSeries {
  if (asTemperature(named)) return { ...base, role: 'reading', why: 'its unit is one of temperature' };
  if (named === 'percent') return { ...base, role: 'output', why: 'its unit is percent' };
  if (bitWord.test(base.series.name)) return { ...base, role: 'ignored', why: 'bits of a word, and no temperature' };
  if (ratePerTime.test(base.series.name)) return { ...base, rest: '', role: 'running', why: 'a rate, of the machine' };
  if (speedOfMachine.test(base.series.name))
    return { ...base, rest: '', role: 'running', why: 'a speed, of the machine' };
  if (named === 'other') return { ...base, role: 'ignored', why: 'its unit is not one of temperature' };
  if (temperatureTag.test(base.rest))
    return { ...base, role: 'reading', why: 'a tag that begins with T for temperature' };
  return { ...base, role: 'ignored', why: unsaid };
}

/** Where a zone has set point or output but no reading, the only other column that carries its name is the reading. */
function namedByZone(all: readonly RoledSeries[]): RoledSeries[] {
  const zones = new Set(all.flatMap(({ role, rest }) => (role === 'setpoint' || role === 'output' ? [rest] : [])));
  const known = new Set(all.flatMap(({ role, rest }) => (role === 'reading' ? [looseName(rest)] : [])));
  const result = [...all];
  for (const zone of zones) {
    if (zone === '' || known.has(looseName(zone))) continue;
    const mine = all.filter((it) => it.why === unsaid && carriesName(it.rest, zone) && canBeReading(it.series));
    if (mine.length !== 1) continue;
    const why = 'the only other column of the zone that its set point or output names';
    result[all.indexOf(mine[0]!)] = { ...mine[0]!, role: 'reading', rest: zone, why };
  }
  return result;
}

function carriesName(name: string, zone: string): boolean {
  const [words, wanted] = [plainWords(name), plainWords(zone)];
  return words.startsWith(`${wanted} `) || words.endsWith(` ${wanted}`);
}

/** A bare name beside "name SP" and "name OUT" is the reading; where no name says anything, numbers that move are. */
function byNeighbours(
  roled: RoledSeries,
  zones: ReadonlySet<string>,
  hasReadings: boolean,
  hasDecimals: boolean,
): RoledSeries {
  if (roled.rest !== '' && zones.has(looseName(roled.rest)))
    return { ...roled, role: 'reading', why: 'the bare name beside its set point or output' };
  if (hasReadings || zones.size > 0) return roled;
  // Beside columns with decimals, whole numbers are counters, states or parts of a date.
  if (hasDecimals && roled.series.decimals === 0) return roled;
  return canBeReading(roled.series) ? { ...roled, role: 'reading', why: numbersAlone } : roled;
}

function canBeReading({ value, numbers, filled }: Series): boolean {
  const good = value.filter((number) => !Number.isNaN(number));
  const plausible = good.filter((number) => number > leastPlausible && number < mostPlausible);
  return (
    numbers >= 0.3 * filled && good.length > 0 && plausible.length >= 0.5 * good.length && new Set(plausible).size > 1
  );
}

function dropTexts(roled: RoledSeries): RoledSeries {
  const { filled, numbers, openTexts, runningWords } = roled.series;
  if (roled.role === 'ignored' || roled.role === 'alarm' || filled === 0) return roled;
  if (roled.role === 'running') {
    return numbers + runningWords >= 0.5 * filled
      ? roled
      : { ...roled, role: 'ignored', why: 'its words say neither run nor stop' };
  }
  return numbers > 0 || openTexts > 0 ? roled : { ...roled, role: 'ignored', why: 'it holds texts, not numbers' };
}
