import type { Dialect, GoodStatus, LogFile, TimePlace } from '../../model/log-file.js';
import type { PlantFile } from '../../model/plant-file.js';
import { LogProblem, type ProblemNote } from '../../model/problem.js';
import { statOf } from '../sources/byte-source.js';
import { roleSeries, type RoledSeries } from '../columns/column-roles.js';
import { detectDialect } from '../layout/dialect.js';
import {
  binaryProblem,
  longFirstLine,
  noHeader,
  oneLine,
  otherCount,
  returnsOnly,
  undecidedDates,
  withoutStart,
} from './draft-problems.js';
import { findForm } from './find-form.js';
import { layoutText } from './layout-text.js';
import { findSideBySide } from '../layout/side-by-side.js';
import { kindOf } from '../layout/file-kind.js';
import { partsOf } from '../sources/file-parts.js';
import { sampleLines, sampleRows } from '../layout/file-sample.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { rowsOfMoreTags } from './more-tags.js';
import { rowsInOrder } from './rows-in-order.js';
import { longSeries, sampledClock, wideSeries, type Series } from '../columns/series.js';
import type { FileShape } from '../layout/file-shape.js';
import { findShape } from '../layout/shape.js';
import { findDays } from './find-days.js';
import { withoutDate } from '../layout/time-columns.js';
import type { SurveyOptions } from './survey-options.js';
import { sampleTable } from '../sources/read-table.js';
import type { RowSource } from '../sources/table-part.js';
import { readHead, type TextRef } from '../sources/text-source.js';
import { timeCell } from '../times/time-cell.js';
import { withGridOfDates, type TimeOptions } from '../times/time-format.js';
import { findSpan, findStep, type TimedRows, type Timing } from './timing.js';

/** A file half understood: its rows and columns are known, but not yet which zones they make. */
export interface DraftFile {
  readonly name: string;
  readonly kind: LogFile['kind'];
  /** For files that are not temperature logs this is final. */
  readonly file: LogFile;
  readonly preamble: readonly string[];
  readonly roled: readonly RoledSeries[];
  /** Without its sampled rows once they have been looked at: hundreds of files are held side by side. */
  readonly shape: FileShape | null;
  readonly firstMs: number;
  readonly lastMs: number;
  readonly samplingMs: number;
  readonly isChangeLogged: boolean;
}

export interface OpenedDrafts {
  readonly drafts: readonly DraftFile[];
  readonly problems: readonly ProblemNote[];
}

/** Looks into one file, or into every entry of an archive and every sheet of a workbook. Never throws for bad input. */
export async function openDrafts(path: string, options: SurveyOptions, plant: PlantFile | null): Promise<OpenedDrafts> {
  const drafts: DraftFile[] = [];
  const problems: ProblemNote[] = [];
  for await (const ref of partsOf(path, problems)) {
    try {
      const result = await openDraft(ref, options, plant);
      drafts.push(result.draft);
      problems.push(...result.problems);
    } catch (error) {
      if (!(error instanceof LogProblem)) throw error;
      problems.push(error.toNote());
      drafts.push(unreadDraft(ref, error.what));
    }
  }
  return { drafts, problems };
}

async function openDraft(ref: TextRef, options: SurveyOptions, plant: PlantFile | null) {
  if (ref.container !== 'workbook' && ref.container !== 'parquet') return openTextDraft(ref, options, plant);
  const sizeBytes = (await statOf(ref.path)).size;
  return openTableDraft({ ...ref, sizeBytes, encoding: 'utf-8', dialect: plainDialect }, options, plant);
}

type Base = RowSource & Pick<LogFile, 'sizeBytes'>;

const plainDialect: Dialect = { separator: ',', decimal: '.', thousands: '', quote: '"' };

async function openTextDraft(ref: TextRef, options: SurveyOptions, plant: PlantFile | null) {
  const head = await readHead(ref);
  const base: Base = { ...ref, sizeBytes: head.sizeBytes, encoding: head.encoding, dialect: plainDialect };
  if (head.beginning.length === 0)
    throw new LogProblem('empty-file', { file: ref.name }, 'The file is empty.', 'Check the export; the rest is read.');
  if (head.isBinary) throw binaryProblem(ref);
  if (!head.bytes.includes('\n') && /\r[^\r]+\r/.test(head.bytes.toString('latin1'))) throw returnsOnly(ref);
  const form = await findForm(base, head);
  if (form) return openTableDraft({ ...base, form }, options, plant);
  if (head.longLineBytes > 0 && head.bytes.length === 0) throw oneLine(ref, head);
  const samples = await sampleLines(ref, head);
  const { dialect, ambiguous } = detectDialect(
    samples.flatMap((it, i) => it.lines.slice(i === 0 ? 0 : -20)).slice(0, 300),
  );
  if (ambiguous)
    throw new LogProblem(
      'ambiguous-layout',
      { file: ref.name },
      ambiguous,
      'Export it again with semicolons between the cells, or with decimal points.',
    );
  const isEndSampled = head.isWhole || (ref.container === 'text' && samples.length > 1);
  const rows = sampleRows(samples, dialect);
  const sideBySide = findSideBySide(rows, dialect);
  if (sideBySide) return openTableDraft({ ...base, dialect, form: sideBySide }, options, plant);
  const { draft, problems } = await draftFrom({ ...base, dialect }, rows, isEndSampled, options, plant);
  return { draft, problems: head.longLineBytes > 0 ? [longFirstLine(ref, head), ...problems] : problems };
}

async function openTableDraft(base: Base, options: SurveyOptions, plant: PlantFile | null) {
  const rows = await sampleTable(base);
  const form = base.container === 'workbook' && !base.form ? findSideBySide(rows, base.dialect) : null;
  if (form) return openTableDraft({ ...base, form }, options, plant);
  return draftFrom(base, rows, true, options, plant);
}

async function draftFrom(
  base: Base,
  rows: readonly SampledRow[],
  isEndSampled: boolean,
  options: SurveyOptions,
  plant: PlantFile | null,
) {
  const problems: ProblemNote[] = [];
  const writtenMs = (await statOf(base.path)).mtimeMs;
  const found = findShape(rows, base.dialect, {
    ...{ dates: options.dates, names: options.names, fileName: base.name, writtenMs },
  });
  const shape = typeof found === 'string' ? found : await settleTimes(base, found, { dates: options.dates, writtenMs });
  if (typeof shape === 'string') {
    // Licences and notes that lie beside logs are no problem.
    if (logExtension.test(base.name))
      problems.push({
        code: 'unknown-layout',
        file: base.name,
        what: `Not read as a log: ${shape}.`,
        todo: 'If it is one, export it with a column of times and one row per time or value.',
      });
    return { draft: plainDraft(base, 'other', shape, null), problems };
  }
  const { kind, why } = kindOf(shape, base.name);
  if (kind !== 'temperature') return { draft: plainDraft(base, kind, why, shape), problems };
  if (shape.time.kind === 'elapsed' && shape.time.startMs === undefined) problems.push(withoutStart(base.name, shape));
  if (shape.time.isUndecided) problems.push(undecidedDates(base.name, shape));
  if (!shape.hasHeader && options.names?.length !== shape.header.length)
    problems.push(options.names ? otherCount(base.name, options.names, shape.header.length) : noHeader(base.name));
  const more = isEndSampled ? await rowsOfMoreTags(base, shape) : [];
  return { draft: await temperatureDraft(base, why, shape, more, isEndSampled, options, plant), problems };
}

async function settleTimes(base: Base, shape: FileShape, options: TimeOptions): Promise<FileShape | string> {
  if (shape.time.kind === 'clock') return (await findDays(base, shape, options)) ?? withoutDate(shape);
  return base.container === 'workbook' ? onGridOfDates(shape) : shape;
}

function onGridOfDates(shape: FileShape): FileShape {
  const cells = shape.rows.map((row) => timeCell(row.cells, shape));
  return { ...shape, time: withGridOfDates(shape.time, cells) };
}

const logExtension = /\.(csv|tsv|dat|log|prn|asc|xls|xlsx|xlsm|jsonl|ndjson|parquet|gz)(!.*)?$/i;

async function temperatureDraft(
  base: Base,
  why: string,
  shape: FileShape,
  moreRows: readonly SampledRow[],
  isEndSampled: boolean,
  options: SurveyOptions,
  plant: PlantFile | null,
): Promise<DraftFile> {
  const clock = sampledClock(shape);
  const all = moreRows.length === 0 ? shape : { ...shape, rows: [...shape.rows, ...moreRows] };
  const roled = roleSeries(seriesOf(all, base.dialect, moreRows.length === 0 ? clock : sampledClock(all)), plant);
  const seen = moreRows.length > 0 ? inFileOrder(all) : null;
  const inOrderOfFile = seen ? { shape: seen, clock: sampledClock(seen), roled } : { shape, clock, roled };
  const { isJumbled, ...span } = findSpan(inOrderOfFile, isEndSampled);
  const timed = isJumbled ? await inOrder(base, { shape, clock, roled }) : { shape, clock, roled };
  const timing = { ...span, ...findStep(timed, options.holdMinutes) };
  const file = draftedFile(base, 'temperature', why, shape, timing);
  return {
    name: base.name,
    kind: 'temperature',
    file,
    preamble: shape.preamble,
    roled,
    shape: { ...shape, rows: [] },
    ...timing,
  };
}

/** All sampled rows as they stand in the file; null where the place of some is not known. */
function inFileOrder(shape: FileShape): FileShape | null {
  if (shape.rows.some(({ line }) => Number.isNaN(line))) return null;
  return { ...shape, rows: shape.rows.toSorted((a, b) => a.line - b.line) };
}

function seriesOf(shape: FileShape, dialect: Dialect, clock: readonly number[]): Series[] {
  return shape.layout === 'long' ? longSeries(shape, dialect, clock).series : wideSeries(shape, dialect, clock);
}

/** Rows of a jumbled file that follow each other in time, with the roles that are known. */
async function inOrder(base: Base, { shape, clock, roled }: TimedRows): Promise<TimedRows> {
  const ordered = { ...shape, rows: await rowsInOrder(base, shape, clock) };
  const orderedClock = sampledClock(ordered);
  const idOf = ({ machine = '', name }: Series): string => `${machine} ${name}`;
  const known = new Map(roled.map((it) => [idOf(it.series), it]));
  const series = seriesOf(ordered, base.dialect, orderedClock).flatMap((own) => {
    const it = known.get(idOf(own));
    return it ? [{ ...it, series: own }] : [];
  });
  return { shape: ordered, clock: orderedClock, roled: series };
}

function plainDraft(base: Base, kind: LogFile['kind'], why: string, shape: FileShape | null): DraftFile {
  const known = shape ? sampledClock(shape).filter((ms) => !Number.isNaN(ms)) : [];
  const firstMs = known.reduce((a, b) => Math.min(a, b), Infinity);
  const timing = { ...noTiming, firstMs: Number.isFinite(firstMs) ? firstMs : NaN };
  const file = draftedFile(base, kind, why, shape, timing);
  return { name: base.name, kind, file, preamble: shape?.preamble ?? [], roled: [], shape: null, ...timing };
}

function unreadDraft(ref: TextRef, why: string): DraftFile {
  return plainDraft({ ...ref, sizeBytes: 0, encoding: 'utf-8', dialect: plainDialect }, 'other', why, null);
}

const noTiming: Timing = {
  firstMs: NaN,
  lastMs: NaN,
  homeMs: [],
  samplingMs: NaN,
  order: 'rising',
  isChangeLogged: false,
  holdMs: NaN,
  silenceMs: NaN,
};

const noTime: LogFile['time'] = {
  kind: 'date',
  order: 'ymd',
  unitMs: 1,
  isAbsolute: false,
  isUndecided: false,
  why: 'no times',
};

function draftedFile(base: Base, kind: LogFile['kind'], why: string, shape: FileShape | null, timing: Timing): LogFile {
  return {
    ...base,
    ...timing,
    ...{ rowWidth: shape?.rowWidth ?? 0, goodStatus: shape ? goodStatus(shape) : 'opc' },
    ...{ kind, why, columns: [], tags: [], notes: [], typicalDegC: NaN, layoutText: layoutText(base, shape, timing) },
    ...{
      layout: shape?.layout ?? 'none',
      header: shape?.header ?? [],
      firstDataLine: shape?.firstDataLine ?? 1,
      time: shape?.time ?? noTime,
      ...(shape && hasParts(shape) ? { timePlace: placeOf(shape) } : {}),
      ...(shape?.days ? { days: shape.days } : {}),
      ...(shape?.machineColumn === undefined ? {} : { machineColumn: shape.machineColumn }),
      ...(shape?.zoneColumn === undefined ? {} : { zoneColumn: shape.zoneColumn }),
    },
  };
}

function hasParts({ dateParts, clockParts }: FileShape): boolean {
  return dateParts.length + clockParts.length > 0;
}

function placeOf({ timeColumn, clockColumn, dateParts, clockParts }: FileShape): TimePlace {
  return { timeColumn, clockColumn, dateParts, clockParts };
}

/** No log is mostly bad: 0 is good where most cells are 0, and 1 where most are 1 and the others 0. */
function goodStatus({ rows, qualityColumn, ownQualities }: FileShape): GoodStatus {
  const columns = [qualityColumn, ...ownQualities.map(({ column }) => column)];
  const cells = rows
    .flatMap((row) => columns.map((column) => row.cells[column]?.trim() ?? ''))
    .filter((cell) => cell !== '');
  const zeros = cells.filter((cell) => /^(0x0+|0+)(\.0+)?$/i.test(cell)).length;
  if (zeros * 2 > cells.length) return 'zero';
  const ones = cells.filter((cell) => /^1(\.0+)?$/.test(cell)).length;
  return ones > 0 && zeros + ones === cells.length ? 'one' : 'opc';
}
