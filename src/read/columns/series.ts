import { cellMark, flagState, type Dialect } from '../../model/log-file.js';
import { readCell, readRunningWord, unitTail, type CellValue } from '../rows/cell-value.js';
import { readFlagWord } from '../rows/flag-cell.js';
import type { FileShape } from '../layout/file-shape.js';
import { splitName } from '../names/column-name.js';
import { ClockDays } from '../times/clock-days.js';
import { partsOfTag, rowTag } from '../rows/row-tag.js';
import { columnsOfTime, timeCell } from '../times/time-cell.js';
import { compileTime } from '../times/time-format.js';

/** The sampled values of one column of a wide file or one tag of a long file. */
export interface Series {
  /** Column, or number of the tag. */
  readonly index: number;
  readonly name: string;
  /** Long: what stands in the tag column. */
  readonly text?: string;
  /** Long: the machine that the row names beside the tag; absent = none. */
  readonly machine?: string;
  /** Unit as the unit row has it, or the cells behind their numbers; empty where there is none. */
  unitText: string;
  /** Equal lengths; value NaN where the cell held no number. */
  readonly clockMs: number[];
  readonly value: number[];
  readonly stretch: number[];
  /** Cells that were not blank. */
  filled: number;
  numbers: number;
  openTexts: number;
  runningWords: number;
  /** Words that alarm flags hold; of these, the ones for no alarm. */
  flagWords: number;
  restWords: number;
  /** Digits behind the decimal mark, the most seen. */
  decimals: number;
}

/** Clock of each sampled row, NaN where it cannot be read. */
export function sampledClock(shape: FileShape): number[] {
  const read = compileTime(shape.time);
  const days = shape.days && new ClockDays(shape.days);
  return shape.rows.map(({ cells, line }) => read(timeCell(cells, shape)) + (days?.dayMs(line) ?? 0));
}

/** Series of a wide file: every column but those of the time and the quality. */
export function wideSeries(shape: FileShape, dialect: Dialect, clock: readonly number[]): Series[] {
  const skipped = new Set([
    ...columnsOfTime(shape),
    shape.qualityColumn,
    ...shape.ownQualities.map(({ column }) => column),
  ]);
  const clockMs = [...clock];
  const stretch = shape.rows.map((row) => row.stretch);
  return shape.header.flatMap((name, index) => {
    if (skipped.has(index)) return [];
    // One array of times for all columns, because hundreds of files are held side by side.
    const series = { ...emptySeries(index, name, shape.units[index] ?? ''), clockMs, stretch };
    const read = cellReader(dialect);
    for (const row of shape.rows) addCell(series, row.cells[index] ?? '', dialect, read);
    return [series];
  });
}

/**
 * Name of a tag: the text in the row, and the name of the value column where there are several.
 * Tag n of value column k has the number n × (count of value columns) + k.
 */
export function tagName(
  { zone, tag }: Pick<ReturnType<typeof partsOfTag>, 'zone' | 'tag'>,
  shape: Pick<FileShape, 'header' | 'valueColumns' | 'tagColumn' | 'machineColumn' | 'zoneColumn'>,
  k: number,
): string {
  const { header, valueColumns, tagColumn, machineColumn, zoneColumn } = shape;
  if (machineColumn === tagColumn) return header[valueColumns[k]!]!;
  const ofZone = zoneColumn === undefined ? '' : `${numbered(zone, header[zoneColumn]!)} `;
  const name = `${ofZone}${numbered(tag.trim(), header[tagColumn]!)}`;
  const value = header[valueColumns[k]!]!;
  // "time, zone, set point" says the role above the value.
  const isSaidAbove = splitName(name).meaning === null && isControl(splitName(value).meaning);
  return valueColumns.length === 1 && !isSaidAbove ? name : `${name} ${value}`;
}

function isControl(meaning: ReturnType<typeof splitName>['meaning']): boolean {
  return meaning === 'setpoint' || meaning === 'output';
}

/** A bare number is a zone's, or a machine's, only together with the word above it. */
function numbered(text: string, above: string): string {
  return /^\d+$/.test(text) ? `${identityAlone.test(above) ? 'Zone' : withoutIdentity(above)} ${text}` : text;
}

/** What a row of a long file is about; empty where it says nothing. */
export function tagOfRow(cells: readonly string[], shape: FileShape): string {
  return rowTag(cells, shape);
}

/** Series of a long file: one per tag (and value column) seen in the sample. */
export function longSeries(
  shape: FileShape,
  dialect: Dialect,
  clock: readonly number[],
): { tags: string[]; series: Series[] } {
  const tags: string[] = [];
  const numberOfTag = new Map<string, number>();
  const series: Series[] = [];
  const read = cellReader(dialect);
  shape.rows.forEach((row, i) => {
    const tag = tagOfRow(row.cells, shape);
    if (tag === '') return;
    let number = numberOfTag.get(tag);
    if (number === undefined) {
      numberOfTag.set(tag, (number = tags.push(tag) - 1));
      const parts = partsOfTag(tag);
      const machine = machineName(parts.machine, shape);
      shape.valueColumns.forEach((_, k) =>
        series.push({ ...emptySeries(series.length, tagName(parts, shape, k), ''), text: tag, ...machine }),
      );
    }
    shape.valueColumns.forEach((column, k) => {
      const own = series[number * shape.valueColumns.length + k]!;
      own.clockMs.push(clock[i]!);
      own.stretch.push(row.stretch);
      addCell(own, row.cells[column] ?? '', dialect, read);
    });
  });
  return { tags, series };
}

function machineName(text: string, { header, machineColumn }: FileShape): { machine?: string } {
  return text === '' || machineColumn === undefined ? {} : { machine: numbered(text, header[machineColumn]!) };
}

/** Of what the numbers are, "id" does not say; in a log of temperatures, of zones. */
const identityAlone = /^(?:id|no|nr|num|number|index|idx)\.?$/i;

/** "zone_id" stands above zones. */
function withoutIdentity(name: string): string {
  return name.replace(/(?<=\p{L}{3})[\s_.-]*(?:id|no|nr|num|number|index|idx|code)\.?$/iu, '');
}

function emptySeries(index: number, name: string, unitText: string): Series {
  return {
    ...{ index, name, unitText, clockMs: [], value: [], stretch: [] },
    ...{ filled: 0, numbers: 0, openTexts: 0, runningWords: 0, flagWords: 0, restWords: 0, decimals: 0 },
  };
}

/** Reads cells of one column: readings repeat themselves, set points hardly change, so each text is read once. */
function cellReader(dialect: Dialect): (text: string) => CellValue {
  const known = new Map<string, CellValue>();
  return (text) => {
    const found = known.get(text) ?? readCell(text, dialect);
    known.set(text, found);
    return found;
  };
}

function addCell(series: Series, cell: string, dialect: Dialect, read: (text: string) => CellValue): void {
  const text = cell.trim();
  const { value, mark } = read(text);
  series.value.push(value);
  if (text !== '') series.filled++;
  if (mark === cellMark.openText) series.openTexts++;
  if (mark !== cellMark.number) {
    if (text !== '') countWord(series, text);
    return;
  }
  series.numbers++;
  if (series.unitText === '') series.unitText = unitTail.exec(text)?.[1] ?? '';
  const point = text.indexOf(dialect.decimal);
  if (point >= 0) series.decimals = Math.max(series.decimals, /^\d*/.exec(text.slice(point + 1))![0].length);
}

function countWord(series: Series, text: string): void {
  if (!Number.isNaN(readRunningWord(text))) series.runningWords++;
  const flag = readFlagWord(text);
  if (!Number.isNaN(flag)) series.flagWords++;
  if (flag === flagState.rest) series.restWords++;
}
