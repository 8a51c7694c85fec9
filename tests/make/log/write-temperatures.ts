import { join } from 'node:path';
import { cell, type Plant } from '../made-plant.js';
import { runningName, runningText, tagText, ZoneCells } from './cells.js';
import type { LogFormat } from './log-format.js';
import { TextFile } from './text-file.js';
import { isSplit, timeWriter } from './time-text.js';

const dayS = 86400;

/** One column of a log, or one tag of a long one. */
interface Column {
  readonly name: string;
  readonly unit: string;
  readonly text: (row: number) => string;
  readonly quality: ((row: number) => string) | null;
  /** True where the recorder lost this tag: a long log then has no line at all. */
  readonly isLost: (row: number) => boolean;
  /** A running word or flag has no dead band. */
  readonly isNumber: boolean;
}

/** Rows [from, to) with the file they go to. */
interface Part {
  readonly path: string;
  readonly columns: readonly Column[];
  readonly from: number;
  readonly to: number;
}

/** Writes the temperature logs of a plant into a folder, in the plant's own format. */
export function writeTemperatures(plant: Plant, folder: string): void {
  for (const part of partsOf(plant, folder)) {
    const file = new TextFile(part.path, plant.parameters.format);
    for (const line of plant.parameters.format.preamble) file.line(line);
    if (plant.parameters.format.layout.startsWith('long')) writeLong(plant, part, file);
    else writeWide(plant, part, file);
    file.close();
  }
}

function partsOf(plant: Plant, folder: string): Part[] {
  const { format, days } = plant.parameters;
  const rows = plant.timeS.length;
  const name = (suffix: string): string => join(folder, format.fileName.replace(/\.(\w+)$/, `${suffix}.$1`));
  const all = plant.machines.map((_, machine) => machine);
  if (format.layout === 'file-per-machine') {
    return all.map((machine) => ({
      path: name(`-${fileWord(plant.machines[machine]?.name ?? '')}`),
      columns: columnsOf(plant, [machine]),
      from: 0,
      to: rows,
    }));
  }
  if (format.layout === 'file-per-zone') {
    return plant.zones.map((zone) => ({
      path: format.isZoneInFileNameOnly
        ? name('').replace(/[^/\\]+(?=\.\w+$)/, zone.name.replace(/[/\\]/g, '-'))
        : name(`-${fileWord(zone.name)}`),
      columns: [...zoneColumns(plant, zone.index), ...runColumns(plant, [zone.machine])],
      from: 0,
      to: rows,
    }));
  }
  const columns = columnsOf(plant, all);
  if (!format.layout.endsWith('daily')) return [{ path: name(''), columns, from: 0, to: rows }];
  return Array.from({ length: Math.ceil(days) }, (_, day) => dailyPart(plant, day, columns, name));
}

function dailyPart(plant: Plant, day: number, columns: readonly Column[], name: (suffix: string) => string): Part {
  const { recorder, startMs, format } = plant.parameters;
  const perDay = dayS / recorder.everyS;
  const overlap = format.repeatsAtJoins && day > 0 ? 3 : 0;
  const date = new Date(startMs + (day * dayS + dayS / 2) * 1000).toISOString().slice(0, 10);
  const from = Math.max(0, Math.ceil(day * perDay) - overlap);
  return { path: name(`-${date}`), columns, from, to: Math.min(plant.timeS.length, Math.ceil((day + 1) * perDay)) };
}

function fileWord(text: string): string {
  return text.replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase();
}

function columnsOf(plant: Plant, machines: readonly number[]): Column[] {
  const zones = plant.zones.filter(({ machine }) => machines.includes(machine));
  return [...zones.flatMap(({ index }) => zoneColumns(plant, index)), ...runColumns(plant, machines)];
}

function zoneColumns(plant: Plant, index: number): Column[] {
  const { format } = plant.parameters;
  const zone = plant.zones[index]!;
  const cells = new ZoneCells(zone, format);
  const unit = `°${format.unit}`;
  const name = (which: 'reading' | 'setpoint' | 'output'): string =>
    tagText(
      format.layout === 'file-per-zone' && format.isZoneInFileNameOnly ? '' : zone.name,
      format.tags,
      which,
      format.unit,
    );
  const quality = (row: number): string => cells.quality(row);
  const isLost = (row: number): boolean => zone.state[row] === cell.missing;
  const columns: Column[] = [
    { name: name('reading'), unit, text: (row) => cells.reading(row), quality, isLost, isNumber: true },
  ];
  if (format.has === 'full')
    columns.push({
      name: name('setpoint'),
      unit,
      text: (row) => cells.setpoint(row),
      quality: null,
      isLost,
      isNumber: true,
    });
  if (format.has !== 'pvonly')
    columns.push({
      name: name('output'),
      unit: '%',
      text: (row) => cells.output(row),
      quality: null,
      isLost,
      isNumber: true,
    });
  return columns;
}

function runColumns(plant: Plant, machines: readonly number[]): Column[] {
  if (plant.parameters.format.runStyle === 'none') return [];
  return machines.map((machine) => ({
    name: runningName(plant, machine),
    unit: '',
    text: (row) => runningText(plant, machine, row),
    quality: null,
    isLost: () => false,
    isNumber: false,
  }));
}

/** Time of a row as the log's clock shows it. */
function rowMs(plant: Plant, row: number): number {
  const seconds = plant.timeS[row] ?? NaN;
  const jump = plant.parameters.format.clockJump;
  return plant.parameters.startMs + (seconds + (jump && seconds >= jump.atS ? jump.byS : 0)) * 1000;
}

function quoted(text: string, { isQuoted, separator }: LogFormat): string {
  return isQuoted || text.includes(separator) ? `"${text}"` : text;
}

function timeHeaders({ time, timeHeader }: LogFormat): string[] {
  return isSplit(time) ? ['Date', 'Time'] : [timeHeader];
}

function writeWide(plant: Plant, { columns, from, to }: Part, file: TextFile): void {
  const { format } = plant.parameters;
  const { separator, time, timezone, quality, hasUnitRow } = format;
  const times = timeHeaders(format);
  const withQuality = quality === 'column';
  const names = columns.flatMap((column) =>
    withQuality && column.quality ? [column.name, `${column.name} Quality`] : [column.name],
  );
  file.line([...times, ...names].map((name) => quoted(name, format)).join(separator));
  if (hasUnitRow)
    file.line(
      [
        ...times.map(() => ''),
        ...columns.flatMap((column) => (withQuality && column.quality ? [column.unit, ''] : [column.unit])),
      ].join(separator),
    );
  const write = timeWriter(time, timezone, separator);
  for (let row = from; row < to; row++) {
    if (plant.isRow[row] === 0) continue;
    let line = write(rowMs(plant, row));
    for (const column of columns) {
      line += separator + column.text(row);
      if (withQuality && column.quality) line += separator + column.quality(row);
    }
    file.line(line);
  }
}

function writeLong(plant: Plant, part: Part, file: TextFile): void {
  const { format } = plant.parameters;
  const { separator, time, timezone, quality } = format;
  file.line(
    [...timeHeaders(format), 'tag', 'value', ...(quality === 'column' ? ['quality'] : [])]
      .map((name) => quoted(name, format))
      .join(separator),
  );
  const write = timeWriter(time, timezone, separator);
  const names = part.columns.map(({ name }) => quoted(name, format));
  const changes = part.columns.map(({ isNumber }) => new ChangeOfValue(format, isNumber));
  for (let row = part.from; row < part.to; row++) {
    if (plant.isRow[row] === 0) continue;
    const stamp = write(rowMs(plant, row));
    const atS = plant.timeS[row] ?? 0;
    part.columns.forEach((column, i) => {
      if (column.isLost(row)) return;
      const text = column.text(row);
      const word = quality === 'column' ? (column.quality?.(row) ?? format.qualityWords.good) : '';
      if (format.isChangeOfValue && !changes[i]?.isNews(atS, text, word)) return;
      file.line(`${stamp}${separator}${names[i]}${separator}${text}${quality === 'column' ? separator + word : ''}`);
    });
  }
}

/** Decides which values a change-of-value log keeps. */
class ChangeOfValue {
  readonly #format: LogFormat;
  readonly #isNumber: boolean;
  #lastText = '\u0000';
  #lastWord = '';
  #lastValue = NaN;
  #lastS = -Infinity;

  constructor(format: LogFormat, isNumber: boolean) {
    this.#format = format;
    this.#isNumber = isNumber;
  }

  isNews(atS: number, text: string, word: string): boolean {
    const value = this.#isNumber ? Number(text.replace(',', '.')) : NaN;
    const isSame = text === this.#lastText || Math.abs(value - this.#lastValue) < this.#format.deadband;
    if (isSame && word === this.#lastWord && atS - this.#lastS < this.#format.heartbeatS) return false;
    this.#lastText = text;
    this.#lastWord = word;
    this.#lastValue = value;
    this.#lastS = atS;
    return true;
  }
}
