import type { ColumnFacts } from './column-facts.js';
import { splitName, splitNumbered } from '../names/column-name.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { plainWords, qualityNames, tagNames, valueNames } from '../names/role-words.js';
import { columnsOfTime, timeCell } from '../times/time-cell.js';
import { saysDuration } from '../events/recognise.js';
import type { FileShape } from './file-shape.js';
import { ownQualities, saysQuality } from './own-qualities.js';

type LongFinding = Pick<
  FileShape,
  'layout' | 'tagColumn' | 'machineColumn' | 'zoneColumn' | 'qualityColumn' | 'ownQualities' | 'valueColumns'
>;

type Base = Omit<FileShape, keyof LongFinding>;

/** Tells a long file (tag and value in a row) from a wide one, and where its tag, values and quality stand. */
export function findLong(shape: Base, rows: readonly SampledRow[]): LongFinding {
  const long = findValues(shape, rows);
  return long.layout === 'long' && haveMeasures(shape, long) ? withZones(shape, rows, long) : long;
}

/**
 * "zone, parameter, value" with PV and SP below parameter: one of the two alone would mix readings with set points, or the
 * zones with each other.
 */
function withZones(shape: Base, rows: readonly SampledRow[], long: LongFinding): LongFinding {
  const { tagColumn, machineColumn, qualityColumn, valueColumns } = long;
  const taken = [...columnsOfTime(shape), tagColumn, machineColumn, qualityColumn, ...valueColumns];
  const free = shape.header.flatMap((_, column) => (taken.includes(column) ? [] : [column]));
  const roles = free.find((column) => isFew(shape.columns[column]!) && sayRoles(rows, column));
  if (roles !== undefined) return { ...long, tagColumn: roles, zoneColumn: tagColumn };
  if (!areBareRoles(rows, tagColumn)) return long;
  const zones = free.find((column) => isZoneColumn(shape, rows, column));
  return zones === undefined ? long : { ...long, zoneColumn: zones };
}

/** A text of few words. */
function isFew({ filled, numbers, distinct, isQuality }: ColumnFacts): boolean {
  return filled > 0 && numbers === 0 && distinct > 1 && distinct < 12 && !isQuality;
}

/** PV, SP and OUT by themselves, of no zone. */
function areBareRoles(rows: readonly SampledRow[], column: number): boolean {
  const texts = [...new Set(rows.map((row) => row.cells[column]?.trim() ?? ''))].filter((text) => text !== '');
  const bare = texts.map(splitName).filter(({ meaning, rest }) => meaning !== null && rest === '');
  return texts.length > 1 && bare.length * 2 > texts.length;
}

/** Few names that come again and again; numbers only below a word for what is numbered. */
function isZoneColumn({ header, columns }: Base, rows: readonly SampledRow[], column: number): boolean {
  const { filled, numbers, distinct, isQuality, runningWords } = columns[column]!;
  const isAgain = filled >= 0.8 * rows.length && distinct > 1 && distinct < filled / 3;
  return isAgain && !isQuality && runningWords === 0 && (numbers === 0 || tagNames.test(plainWords(header[column]!)));
}

function findValues(shape: Base, rows: readonly SampledRow[]): LongFinding {
  const { header, columns } = shape;
  const times = columnsOfTime(shape);
  const others = header.map((_, i) => i).filter((i) => !times.has(i));
  const { tagColumn, machineColumn } = findTags(shape, rows, others);
  const qualityColumn =
    others.find(
      (i) => i !== tagColumn && i !== machineColumn && isQualityColumn(header[i]!, columns[i]!, tagColumn >= 0),
    ) ?? -1;
  const numeric = others.filter(
    (i) => i !== tagColumn && i !== machineColumn && i !== qualityColumn && isNumeric(columns[i]!),
  );
  if (tagColumn < 0) {
    const own = ownQualities(header, columns, others);
    const ofRow = own.length > 0 ? undefined : others.find((i) => saysQuality(header[i]!, columns[i]!));
    return { layout: 'wide', tagColumn, qualityColumn: ofRow ?? -1, ownQualities: own, valueColumns: [] };
  }
  const called = numeric.filter((i) => valueNames.test(plainWords(header[i]!)));
  const mixed = others.filter(
    (i) => i !== tagColumn && valueNames.test(plainWords(header[i]!)) && columns[i]!.numbers > 0,
  );
  const valueColumns = called.length > 0 ? [called[0]!] : mixed.length > 0 ? [mixed[0]!] : numeric;
  return {
    layout: valueColumns.length > 0 ? 'long' : 'none',
    tagColumn,
    qualityColumn,
    ownQualities: [],
    valueColumns,
    ...(machineColumn === undefined ? {} : { machineColumn }),
  };
}

function findTags(shape: Base, rows: readonly SampledRow[], others: readonly number[]) {
  const named = others.filter((i) => isTagColumn(shape, rows, i));
  const machines = others.filter((i) => isMachineColumn(shape, rows, i));
  const tag = named.find((i) => !machines.includes(i)) ?? -1;
  if (tag >= 0 || machines.length === 0)
    return { tagColumn: tag >= 0 ? tag : (named[0] ?? -1), machineColumn: machines[0] };
  // "time, machine, Zone 1 PV, Zone 2 PV": the machine alone tells rows apart; above one value stands a tag.
  const values = others.filter((i) => !machines.includes(i) && isNumeric(shape.columns[i]!));
  const isValue = values.some((i) => valueNames.test(plainWords(shape.header[i]!)));
  if (isValue || values.length < 2) return { tagColumn: named[0] ?? -1, machineColumn: undefined };
  return { tagColumn: machines[0]!, machineColumn: machines[0] };
}

/** Half numbers is enough: the rest may be words for open inputs. */
function isNumeric(facts: ColumnFacts): boolean {
  return facts.filled > 0 && facts.numbers + facts.openTexts >= 0.5 * facts.filled && facts.numbers > 0;
}

function isQualityColumn(name: string, facts: ColumnFacts, isLong: boolean): boolean {
  if (facts.isQuality) return true;
  if (isLong && facts.isStatusNumber && meaningIn(name) === '' && !valueNames.test(plainWords(name))) return true;
  return isLong && qualityNames.test(plainWords(name)) && facts.filled > 0;
}

/** Headers of columns that name machines (common practice, several languages). */
const machineNames =
  /^(?:machine|line|equipment|asset|press|sealer|extruder|unit|station|maschine|anlage|linie|ligne|macchina|linea|maquina|linha|lijn|maskin|linje|maszyna|linia|stroj|linka|makine|hat|kone|linja|gep|masina|машина|линия|станок|установка|лінія|μηχανη|γραμμη|设备|机器|机台|設備|機台|機器|機械|ライン|号機|설비|기계|라인)(?: ?(?:id|no|nr|num|number|name|code|kod|tag))?$/;

/** Few machines, which the rows of one time name in turn. */
function isMachineColumn(shape: Base, rows: readonly SampledRow[], column: number): boolean {
  const { filled, distinct, isQuality } = shape.columns[column]!;
  const isFew = filled >= 0.8 * rows.length && distinct > 1 && distinct < Math.max(3, filled / 6) && !isQuality;
  return isFew && machineNames.test(plainWords(shape.header[column]!));
}

function isTagColumn(shape: Base, rows: readonly SampledRow[], column: number): boolean {
  const facts = shape.columns[column]!;
  if (facts.filled < 0.8 * rows.length || facts.isQuality) return false;
  const name = plainWords(shape.header[column]!);
  const isText = facts.numbers < 0.2 * facts.filled && facts.openTexts < 0.2 * facts.filled;
  if (isText && (tagNames.test(name) || /(^| )(id|tag|name|zone|channel|kanal)$/.test(name)))
    return facts.distinct <= facts.filled;
  if (!isText)
    return tagNames.test(name) && facts.distinct > 1 && facts.distinct < facts.filled / 3 && repeatsTimes(shape, rows);
  const isState = facts.runningWords >= 0.5 * facts.filled;
  const isFew = facts.distinct > 1 && facts.distinct < facts.filled / 2;
  return !isState && isFew && (!shape.hasHeader || sayRoles(rows, column)) && repeatsTimes(shape, rows);
}

/**
 * Measured values differ from row to row; a message that names a temperature has the same few priorities beside it.
 * How long each alarm of "TC-11" stood differs, too, but is no reading of it.
 */
export function haveMeasures(
  { header, columns }: Pick<FileShape, 'header' | 'columns'>,
  { tagColumn, valueColumns }: Pick<FileShape, 'tagColumn' | 'valueColumns'>,
): boolean {
  return valueColumns.some(
    (column) => columns[column]!.distinct > columns[tagColumn]!.distinct && !saysDuration(header[column]!),
  );
}

/** Under a header that no table knows, texts that say reading, set point or output are tags. */
export function sayRoles(rows: readonly SampledRow[], column: number): boolean {
  const texts = [...new Set(rows.map((row) => row.cells[column]?.trim() ?? ''))];
  const roles = texts.filter((text) => ['reading', 'temperature', 'setpoint', 'output'].includes(meaningIn(text)));
  return roles.length * 2 >= texts.length;
}

function meaningIn(text: string): string {
  return splitName(text).meaning ?? splitNumbered(text)?.meaning ?? '';
}

/** In a long file several rows share a time. */
function repeatsTimes(shape: Base, rows: readonly SampledRow[]): boolean {
  let repeats = 0;
  const times = rows.map(({ cells }) => timeCell(cells, shape));
  for (let i = 1; i < rows.length; i++) if (times[i] === times[i - 1]) repeats++;
  return repeats > 0.3 * rows.length;
}
