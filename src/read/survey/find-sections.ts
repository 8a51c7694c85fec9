import type { RowForm, Section } from '../../model/log-file.js';
import { LogProblem } from '../../model/problem.js';
import { sectionLabel, type SectionLabel } from '../layout/section-labels.js';
import type { RowSource } from '../sources/table-part.js';
import { headBytes, openText } from '../sources/text-source.js';
import { isTimeName } from '../times/time-format.js';
import { allRows } from './all-rows.js';

type Sections = Extract<RowForm, { kind: 'sections' }>;

/** More are no zones and machines, but a list that looks like them (own choice). */
const mostSections = 100_000;

/** What sampled rows show of labels. */
export interface SampledLabels {
  /** Whether two with rows between them name different things. */
  readonly areSeveral: boolean;
  /** How a line begins that holds one; null = none was seen. */
  readonly beginning: string | null;
}

/** Looks for labels in sampled rows. */
export function labelsIn(rows: Iterable<readonly string[]>): SampledLabels {
  const before = new Map<SectionLabel['of'], string>();
  const latest = new Map<SectionLabel['of'], string>();
  let beginning: string | null = null;
  for (const cells of rows) {
    const label = sectionLabel(cells);
    if (label) beginning = beginningOf(cells);
    if (label && (before.get(label.of) ?? label.value) !== label.value) return { areSeveral: true, beginning };
    if (label) latest.set(label.of, label.value);
    else if (cells.length > 1 && /\d/.test(cells[0]!)) for (const [of, value] of latest) before.set(of, value);
  }
  return { areSeveral: false, beginning };
}

/** "Zone:" of "Zone: 3", "Tag" of "Tag;Front jaw", "[" of "[Front jaw]". */
function beginningOf(cells: readonly string[]): string {
  const first = cells.find((cell) => cell.trim() !== '')!.trim();
  return /^[^:=]*[:=]/.exec(first)?.[0] ?? /^[\p{L} ._]+|^\W+/u.exec(first)?.[0] ?? first;
}

/** Whether a text may have parts, as far as its sample and how often its labels stand in it can tell. */
export async function mayHaveSections(source: RowSource, labels: SampledLabels): Promise<boolean> {
  if (labels.areSeveral || labels.beginning === null) return labels.areSeveral;
  return isRepeated(source, labels.beginning);
}

/** Whether lines of a text begin so more than once; it is not cut into lines for that. */
async function isRepeated(source: RowSource, beginning: string): Promise<boolean> {
  const wanted = Buffer.from(beginning, source.encoding === 'windows-1252' ? 'latin1' : 'utf8');
  const text = await openText(source, source.encoding);
  const buffer = Buffer.alloc(headBytes);
  let [count, kept] = [0, 0];
  try {
    for (let length = 1; length > 0 && count < 2;) {
      length = await text.fill(buffer, kept);
      const end = kept + length;
      const found = buffer.subarray(0, end);
      let at = found.indexOf(wanted);
      for (; at >= 0 && count < 2; at = found.indexOf(wanted, at + wanted.length)) count++;
      // What may begin at the end of this part; too short to hold one that was counted.
      kept = Math.min(end, wanted.length - 1);
      buffer.copy(buffer, 0, end - kept, end);
    }
  } catch (error) {
    if (!(error instanceof LogProblem)) throw error; // the reading tells it
  } finally {
    await text.close();
  }
  return count > 1;
}

/**
 * Finds the parts of a file that each begin with a line that names their zone or machine. Reads the whole file once.
 *
 * @returns null unless two parts with rows name different things, and a header with a name for the time stands above the first.
 */
export async function findSections(source: RowSource): Promise<Sections | null> {
  const finding = new Finding();
  for await (const { line, cells } of allRows(source, 1)) {
    finding.take(line, cells);
    if (finding.sections.length > mostSections) return null;
  }
  return finding.result();
}

type Draft = Omit<Section, 'labels'> & { readonly machine: string; readonly zone: string; rowCount: number };

class Finding {
  readonly sections: Draft[] = [];
  private readonly names: string[] = [];
  private columns: readonly number[] = [];
  private headerLine = 0;
  private said = { machine: '', zone: '' };
  /** Line of the first label or header since the last row; NaN = none. */
  private fromLine = NaN;
  /** A label that waits for names of columns below it. */
  private weak: { readonly line: number; readonly value: string } | null = null;

  take(line: number, cells: readonly string[]): void {
    const label = sectionLabel(cells);
    const filled = cells.filter((cell) => cell.trim() !== '');
    if (label?.isWeak) this.weak = { line, value: label.value };
    else if (label) {
      if (Number.isNaN(this.fromLine)) this.fromLine = line;
      this.said = label.of === 'machine' ? { machine: label.value, zone: '' } : { ...this.said, zone: label.value };
    } else if (filled.length > 1 && !filled.some(isNumber) && filled.some(isTimeName)) this.takeHeader(line, cells);
    else if (filled.length > 1 && filled.some((cell) => /\d/.test(cell))) this.takeRow(line);
  }

  private takeHeader(line: number, cells: readonly string[]): void {
    if (Number.isNaN(this.fromLine)) this.fromLine = this.weak?.line ?? line;
    if (this.weak) this.said = { ...this.said, zone: this.weak.value };
    this.weak = null;
    if (this.headerLine === 0) this.headerLine = line;
    this.columns = cells.map((cell, i) => {
      const name = cell.trim();
      // A name that stands twice in one header is two columns.
      const turn = cells.slice(0, i).filter((other) => other.trim() === name).length;
      const known = this.names.flatMap((other, place) => (other === name ? [place] : []));
      return known[turn] ?? this.names.push(name) - 1;
    });
  }

  private takeRow(line: number): void {
    this.weak = null;
    if (this.headerLine === 0) return;
    if (!Number.isNaN(this.fromLine))
      this.sections.push({ fromLine: this.fromLine, firstRow: line, columns: this.columns, ...this.said, rowCount: 0 });
    this.fromLine = NaN;
    const section = this.sections.at(-1);
    if (section) section.rowCount++;
  }

  result(): Sections | null {
    const { sections, names, headerLine } = this;
    const values = (of: 'machine' | 'zone'): Set<string> => new Set(sections.map((it) => it[of]));
    const isApart = (['machine', 'zone'] as const).filter((of) => values(of).size > 1);
    if (isApart.length === 0 || sections.some((it) => isApart.every((of) => it[of] === ''))) return null;
    const [machine = ''] = values('machine').size === 1 ? values('machine') : [];
    return {
      kind: 'sections',
      headerLine,
      above: machine === '' ? [] : [`Machine: ${machine}`],
      names: [...isApart, ...names],
      sections: sections.map(({ fromLine, firstRow, columns, ...it }) => ({
        ...{ fromLine, firstRow, columns },
        labels: isApart.map((of) => it[of]),
      })),
    };
  }
}

function isNumber(cell: string): boolean {
  return /^[-+]?[\d.,]*\d[\d.,]*$/.test(cell.trim());
}
