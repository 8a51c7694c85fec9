import type { Dialect } from '../../model/log-file.js';
import type { PlantFile } from '../../model/plant-file.js';
import { LogProblem, type ProblemNote } from '../../model/problem.js';
import { statOf } from '../sources/byte-source.js';
import { roleSeries } from '../columns/column-roles.js';
import { detectDialect } from '../layout/dialect.js';
import {
  binaryProblem,
  longFirstLine,
  noHeader,
  oneLine,
  otherCount,
  undecidedDates,
  withoutStart,
} from './draft-problems.js';
import { findForm } from './find-form.js';
import { findSections, labelsIn, mayHaveSections } from './find-sections.js';
import { findSideBySide } from '../layout/side-by-side.js';
import { calledBy, kindOf } from '../layout/file-kind.js';
import { handListOf, isOtherHeader } from '../layout/hand-list.js';
import { partsOf } from '../sources/file-parts.js';
import { cellsOfLines, sampleLines, sampleRows } from '../layout/file-sample.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { rowsOfMoreTags } from './more-tags.js';
import { rowsInOrder } from './rows-in-order.js';
import { markTurns } from '../columns/taking-turns.js';
import { longSeries, sampledClock, wideSeries, type Series } from '../columns/series.js';
import type { FileShape } from '../layout/file-shape.js';
import { findShape } from '../layout/shape.js';
import { timesAcross } from '../layout/times-across.js';
import { findDays } from './find-days.js';
import { withoutDate } from '../layout/time-columns.js';
import { draftedFile, plainDraft, type Base, type DraftFile } from './drafted-file.js';
import type { SurveyOptions } from './survey-options.js';
import { sampleTable } from '../sources/read-table.js';
import { readHead, type TextRef } from '../sources/text-source.js';
import { timeCell } from '../times/time-cell.js';
import { withGridOfDates, type TimeOptions } from '../times/time-format.js';
import { findSpan, findStep, type TimedRows } from './timing.js';

export interface OpenedDrafts {
  readonly drafts: readonly DraftFile[];
  readonly problems: readonly ProblemNote[];
}

interface OpenedDraft {
  readonly draft: DraftFile;
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

const plainDialect: Dialect = { separator: ',', decimal: '.', thousands: '', quote: '"' };

async function openTextDraft(ref: TextRef, options: SurveyOptions, plant: PlantFile | null): Promise<OpenedDraft> {
  const head = await readHead(ref);
  const base: Base = { ...ref, sizeBytes: head.sizeBytes, encoding: head.encoding, dialect: plainDialect };
  if (head.beginning.length === 0)
    throw new LogProblem('empty-file', { file: ref.name }, 'The file is empty.', 'Check the export; the rest is read.');
  if (head.isBinary) throw binaryProblem(ref);
  const { beginning } = head;
  const isReturnEnded = !beginning.includes('\n') && /\r[^\r]+\r/.test(beginning.toString('latin1'));
  if (isReturnEnded) return openTextDraft({ ...ref, isReturnEnded }, options, plant);
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
  const source = { ...base, dialect };
  const labels = labelsIn(cellsOfLines(samples, dialect));
  const sections = (await mayHaveSections(source, labels)) ? await findSections(source) : null;
  if (sections) return openTableDraft({ ...source, form: sections }, options, plant);
  const { draft, problems } = await draftFrom(source, rows, isEndSampled, options, plant);
  return { draft, problems: head.longLineBytes > 0 ? [longFirstLine(ref, head), ...problems] : problems };
}

async function openTableDraft(base: Base, options: SurveyOptions, plant: PlantFile | null): Promise<OpenedDraft> {
  const rows = await sampleTable(base);
  const isSheet = base.container === 'workbook' && !base.form;
  const form = isSheet ? (findSideBySide(rows, base.dialect) ?? (await sectionsOfSheet(base, rows))) : null;
  if (form) return openTableDraft({ ...base, form }, options, plant);
  return draftFrom(base, rows, true, options, plant);
}

async function sectionsOfSheet(base: Base, rows: readonly SampledRow[]) {
  return labelsIn(rows.map(({ cells }) => cells)).areSeveral ? findSections(base) : null;
}

async function draftFrom(
  base: Base,
  rows: readonly SampledRow[],
  isEndSampled: boolean,
  options: SurveyOptions,
  plant: PlantFile | null,
): Promise<OpenedDraft> {
  const problems: ProblemNote[] = [];
  const writtenMs = (await statOf(base.path)).mtimeMs;
  const found = findShape(rows, base.dialect, {
    ...{ dates: options.dates, names: options.names, fileName: base.name, writtenMs },
  });
  const shape = typeof found === 'string' ? found : await settleTimes(base, found, { dates: options.dates, writtenMs });
  const byHand = isKnownList(shape, rows, base.name) ? null : handListOf(rows, calledBy(base.name));
  if (byHand) return { draft: plainDraft(base, byHand.kind, byHand.why, null), problems };
  const across = typeof shape === 'string' && !base.form ? timesAcross(rows) : null;
  if (across) return openTableDraft({ ...base, form: across }, options, plant);
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

/** Whether the rows were taken for a list below its own names; a list whose names say so is none of temperatures. */
function isKnownList(shape: FileShape | string, rows: readonly SampledRow[], name: string): boolean {
  if (typeof shape === 'string' || isOtherHeader(rows, shape.header)) return false;
  const { kind } = kindOf(shape, name);
  return kind !== 'temperature' && kind !== 'other';
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
  const series = seriesOf(all, base.dialect, moreRows.length === 0 ? clock : sampledClock(all));
  const roled = markTurns(roleSeries(series, plant));
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

function unreadDraft(ref: TextRef, why: string): DraftFile {
  return plainDraft({ ...ref, sizeBytes: 0, encoding: 'utf-8', dialect: plainDialect }, 'other', why, null);
}
