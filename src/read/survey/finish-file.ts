import type { LogColumn, LogFile, TemperatureUnit } from '../../model/log-file.js';
import type { ProblemNote } from '../../model/problem.js';
import type { DraftFile } from './drafted-file.js';
import { isBlankAtRest } from '../columns/alarm-flags.js';
import { findNoValue } from '../columns/no-value.js';
import type { FileShape } from '../layout/file-shape.js';
import { nearestRank } from '../columns/nearest-rank.js';
import { isSameColumn, pooledColumns } from '../columns/pooled-columns.js';
import {
  currentOutput,
  guessOutputScale,
  guessReadingScale,
  guessRunningAbove,
  guessScale,
  guessUnit,
  isPower,
  powerOutput,
  type UnitFinding,
} from '../columns/unit-guess.js';
import type { Attached } from '../columns/draft-zone.js';
import { takingTurns, unitProblem, unitWords, unknownQuantity } from './finish-problems.js';

export interface FinishedFiles {
  /** Smallest step of a zone's readings by its digits, in °C, by zone index. */
  readonly resolutionDegC: ReadonlyMap<number, number>;
  readonly files: readonly LogFile[];
  readonly problems: readonly ProblemNote[];
  readonly assumptions: readonly string[];
}

/** Gives every column of the temperature logs its unit and scale, now that zones are known. */
export function finishFiles(
  drafts: readonly DraftFile[],
  attached: readonly (readonly Attached[])[],
  unit: TemperatureUnit | undefined,
): FinishedFiles {
  const problems: ProblemNote[] = [];
  const assumptions: string[] = [];
  const resolutionDegC = new Map<number, number>();
  const pooled = pooledColumns(attached).map(oncePerLogger(judgeLogger));
  const neighbours = unitOfNeighbours(attached);
  const files = drafts.map((draft, i) => {
    const columns = attached[i]!;
    const finding = asNeighbours(unitOfFile(pooled[i]!, draft.preamble, unit), neighbours);
    if (finding.isAssumed && columns.some((it) => it.role === 'reading' && !it.unit)) {
      problems.push(unitProblem(draft, finding));
      assumptions.push(`${draft.name}: temperatures are taken as ${unitWords[finding.unit]}; ${finding.why}.`);
    }
    const unknown = columns.filter((it) => it.role === 'reading' && it.isQuantityUnknown);
    if (unknown.length > 0) {
      problems.push(unknownQuantity(draft, unknown));
      assumptions.push(`${draft.name}: nothing says which columns are temperatures, so no fault is claimed of any.`);
    }
    if (columns.some(({ isMixed }) => isMixed)) {
      problems.push(takingTurns(draft));
      assumptions.push(`${draft.name}: its rows seem to be of two machines or zones, so no fault is claimed of any.`);
    }
    const file = finishFile(draft, columns, pooled[i]!, finding);
    noteResolution(resolutionDegC, columns, [...file.columns, ...file.tags]);
    return file;
  });
  return { files, problems, assumptions, resolutionDegC };
}

/** What the columns of one logger show together; its hundreds of files ask for it again and again. */
interface LoggerFacts {
  readonly columns: readonly Attached[];
  /** By the first zone it serves. */
  readonly readings: ReadonlyMap<number | undefined, Attached>;
  readonly scales: Readonly<Record<LogColumn['role'] & Attached['role'], number>>;
  /** Told by the numbers alone, for loggers whose names say no unit. */
  readonly guessedUnit: () => UnitFinding;
}

function judgeLogger(columns: readonly Attached[]): LoggerFacts {
  const of = (role: Attached['role']): Attached[] => columns.filter((it) => it.role === role);
  const setpointScale = guessScale(of('setpoint'));
  const scales = {
    reading: guessReadingScale(of('reading'), setpointScale),
    setpoint: setpointScale,
    output: guessOutputScale(of('output').filter((it) => !isPower(it))),
    running: 1,
    alarm: 1,
    ignored: 1,
  };
  let unit: UnitFinding | null = null;
  const scaled = (role: 'reading' | 'setpoint'): Attached[] =>
    of(role).map((it) => ({ ...it, scale: it.scale * scales[role] }));
  const guessedUnit = (): UnitFinding => (unit ??= guessUnit(scaled('reading'), scaled('setpoint')));
  const lastFirst = of('reading').reverse(); // so that the first of several stays
  const readings = new Map(lastFirst.map((it) => [it.zones[0], it]));
  return { columns, readings, scales, guessedUnit };
}

/** Files of one logger share their array of columns. */
function oncePerLogger<T>(judge: (columns: readonly Attached[]) => T): (columns: readonly Attached[]) => T {
  const known = new Map<readonly Attached[], T>();
  return (columns) => {
    const found = known.get(columns) ?? judge(columns);
    known.set(columns, found);
    return found;
  };
}

function noteResolution(
  found: Map<number, number>,
  attached: readonly Attached[],
  columns: readonly LogColumn[],
): void {
  const readings = new Map(columns.filter(({ role }) => role === 'reading').map((it) => [it.index, it]));
  for (const { role, zones, series } of attached) {
    const column = readings.get(series.index);
    if (role !== 'reading' || !column) continue;
    const stepDegC = (10 ** -series.decimals * column.scale) / (column.unit === 'degF' ? 1.8 : 1);
    for (const zone of zones) found.set(zone, Math.min(stepDegC, found.get(zone) ?? Infinity));
  }
}

function unitOfFile(
  { columns, guessedUnit }: LoggerFacts,
  preamble: readonly string[],
  given: TemperatureUnit | undefined,
): UnitFinding {
  const readings = columns.filter((it) => it.role === 'reading');
  const named = readings.find((it) => it.unit)?.unit;
  if (named && readings.every((it) => it.unit))
    return { unit: named, why: 'the column names say so', isAssumed: false };
  if (given) return { unit: given, why: 'as the option or plant.yaml says', isAssumed: false };
  if (named) return { unit: named, why: 'other columns of the file say so', isAssumed: false };
  const said = preamble
    .map((line) => /(?:°|º|deg\.?) ?([CF])\b|\b(celsius|fahrenheit)\b/i.exec(line))
    .find((match) => match !== null);
  if (said)
    return {
      unit: /f/i.test(said[1] ?? said[2]!) ? 'degF' : 'degC',
      why: 'a line above the header says so',
      isAssumed: false,
    };
  return guessedUnit();
}

/** The unit that columns of the run are named with, where all such names agree; null = none are, or they do not. */
function unitOfNeighbours(attached: readonly (readonly Attached[])[]): TemperatureUnit | null {
  const units = new Set(attached.flat().flatMap((it) => (it.role === 'reading' && it.unit ? [it.unit] : [])));
  return units.size === 1 ? [...units][0]! : null;
}

/** A plant keeps to one unit as a rule, so its other logs are a better guess than none; it is told all the same. */
function asNeighbours(finding: UnitFinding, unit: TemperatureUnit | null): UnitFinding {
  if (!finding.isAssumed || unit === null) return finding;
  return { unit, why: `nothing in this log says °C or °F, and other logs are in ${unitWords[unit]}`, isAssumed: true };
}

/** @param logger What all files of the logger show: one shift alone may be all cold or all hot. */
function finishFile(draft: DraftFile, attached: readonly Attached[], logger: LoggerFacts, unit: UnitFinding): LogFile {
  const shape = draft.shape!;
  const { scales } = logger;
  const columns = attached.map((it) => finishColumn(it, logger, unit));
  const isCurrent = columns.some(({ zero }) => zero !== undefined);
  const noValue = shape.layout === 'wide' ? findNoValue(attached, Math.round(100 / scales.output)) : null;
  const notes = [
    `time: ${draft.file.time.why}`,
    `unit: ${unitWords[unit.unit]}, ${unit.why}`,
    ...scaleNotes(scales),
    ...(isCurrent ? ['outputs are currents: 4 to 20 mA are taken as 0 to 100 %'] : []),
    ...(attached.some((it) => it.role === 'output' && isPower(it))
      ? ['outputs are in watts: the largest of each column is taken as 100 %']
      : []),
    ...holdNote(draft),
    ...beginningNote(draft),
    ...(noValue ? [`${noValue.raw} in columns of all kinds at once stands for no value`] : []),
  ];
  const base = { ...draft.file, ...(noValue ? { noValue } : {}), notes, typicalDegC: typicalDegC(attached, columns) };
  if (shape.layout === 'long') return { ...base, columns: rowColumns(shape), tags: columns };
  return { ...base, columns: allColumns(shape, columns), tags: [] };
}

function typicalDegC(attached: readonly Attached[], columns: readonly LogColumn[]): number {
  const all = columns.flatMap(({ role, unit, scale }, i) => {
    if (role !== 'reading') return [];
    return attached[i]!.series.value.map((value) => toDegC(value * scale, unit ?? 'degC'));
  });
  return nearestRank(
    all.filter((degC) => degC > -60 && degC < 2000),
    0.5,
  );
}

function toDegC(value: number, unit: TemperatureUnit): number {
  if (unit === 'degF') return (value - 32) / 1.8;
  return unit === 'K' ? value - 273.15 : value;
}

function finishColumn(it: Attached, { columns, readings, scales }: LoggerFacts, finding: UnitFinding): LogColumn {
  const isTemperature = it.role === 'reading' || it.role === 'setpoint';
  const reading = readings.get(it.zones[0]);
  const pooled = columns.find((other) => isSameColumn(other, it)) ?? it;
  return {
    ...{ index: it.series.index, name: it.series.name, role: it.role, zones: it.zones, why: it.why },
    ...(it.series.text === undefined ? {} : { text: it.series.text }),
    unit: isTemperature ? (it.unit ?? reading?.unit ?? finding.unit) : null,
    scale: it.scale * scales[it.role],
    ...(it.role === 'output' ? (currentOutput(it) ?? powerOutput(pooled)) : null),
    ...(it.role === 'alarm' ? flagColumn(it) : null),
    above: it.role === 'running' ? guessRunningAbove(pooled) : 0,
  };
}

function flagColumn({ series, given }: Attached): Pick<LogColumn, 'isBlankAtRest' | 'alarmKind'> {
  return {
    ...(isBlankAtRest(series) ? { isBlankAtRest: true } : {}),
    ...(given?.kind === undefined ? {} : { alarmKind: given.kind }),
  };
}

function scaleNotes(scales: { reading: number; setpoint: number; output: number }): string[] {
  const notes = [];
  const parts = (scale: number): string => (scale === 0.01 ? 'hundredths' : 'tenths');
  if (scales.reading !== 1)
    notes.push(`readings are ${parts(scales.reading)} of a degree: whole numbers that no heater zone reaches`);
  if (scales.setpoint !== 1) notes.push(`set points are ${parts(scales.setpoint)} of a degree`);
  if (scales.output !== 1) {
    const end = Math.round(100 / scales.output);
    notes.push(`outputs run from 0 to ${end} and are taken as ${end === 1000 ? 'tenths of a percent' : '0 to 100 %'}`);
  }
  return notes;
}

function holdNote({ file: { isChangeLogged, layout, holdMs, silenceMs } }: DraftFile): string[] {
  if (!isChangeLogged) return [];
  const held = layout === 'wide' ? 'a blank cell holds the last value' : 'a value holds until the next';
  const limit =
    holdMs === silenceMs
      ? `at most ${timeText(holdMs)}; longer is a gap`
      : `at most ${timeText(holdMs)} while others are written; ${timeText(silenceMs)} without any is a gap`;
  return [`only changes are logged: ${held}, ${limit}`];
}

function timeText(ms: number): string {
  return ms < 2 * 3_600_000 ? `${Math.round(ms / 6000) / 10} min` : `${Math.round(ms / 360_000) / 10} h`;
}

/** Of a packed file or one in UTF-16 the end cannot be looked at before all of it is read. */
function beginningNote({ file }: DraftFile): string[] {
  const isLong = Number.isNaN(file.lastMs) && !Number.isNaN(file.firstMs);
  return isLong ? ['judged from its beginning and some places; rows that do not fit are counted as left out'] : [];
}

function plainColumn(shape: FileShape, index: number, role: LogColumn['role'], why: string): LogColumn {
  return { index, name: shape.header[index]!, role, zones: [], unit: null, scale: 1, above: 0, why };
}

function structureColumns(shape: FileShape): LogColumn[] {
  const { timeColumn, clockColumn, dayColumn, dateParts, clockParts } = shape;
  const isWhole = clockColumn < 0 && clockParts.length === 0;
  const dates = dateParts.length > 0 ? dateParts : [timeColumn];
  const clocks = clockParts.length > 0 ? clockParts : [clockColumn].filter((column) => column >= 0);
  const columns = [
    ...dates.map((column) => plainColumn(shape, column, isWhole ? 'time' : 'date', shape.time.why)),
    ...clocks.map((column) => plainColumn(shape, column, 'clock', 'clocks beside dates')),
  ];
  if (dayColumn !== undefined) columns.push(plainColumn(shape, dayColumn, 'day', 'dates where days begin'));
  if (shape.qualityColumn >= 0)
    columns.push(plainColumn(shape, shape.qualityColumn, 'quality', 'it says what the value is worth'));
  for (const { column, ofColumn } of shape.ownQualities) {
    const why = `it says what "${shape.header[ofColumn]!}" is worth`;
    columns.push({ ...plainColumn(shape, column, 'quality', why), ofColumn });
  }
  return columns;
}

/** Wide: every column in its place. */
function allColumns(shape: FileShape, columns: readonly LogColumn[]): LogColumn[] {
  const byIndex = new Map([...columns, ...structureColumns(shape)].map((column) => [column.index, column]));
  return shape.header.map((_, index) => byIndex.get(index)!);
}

/** Long: what stands in a row. */
function rowColumns(shape: FileShape): LogColumn[] {
  const columns = structureColumns(shape);
  columns.push(plainColumn(shape, shape.tagColumn, 'tag', 'names that repeat'));
  for (const index of shape.valueColumns) columns.push(plainColumn(shape, index, 'value', 'numbers beside the tags'));
  return columns;
}
