import type { RowForm } from '../../model/log-file.js';
import type { FileShape } from '../layout/file-shape.js';
import { isTable } from '../sources/read-table.js';
import type { RowSource } from '../sources/table-part.js';
import type { Timing } from './timing.js';

const separatorWords = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'pipe', ' ': 'blanks' } as const;

const formWords = {
  json: 'JSON',
  assignments: 'names beside values',
  messages: 'lines of text',
  'side-by-side': 'times side by side',
  transposed: 'times across',
  sections: 'zones or machines named above their rows',
} as const;

/** Forms of texts that are cut into cells all the same. */
function isCut(kind: RowForm['kind'] | undefined): boolean {
  return kind === 'side-by-side' || kind === 'sections' || kind === 'transposed';
}

/** A few words for how a file is laid out. */
export function layoutText(
  base: Pick<RowSource, 'container' | 'form' | 'dialect'>,
  shape: FileShape | null,
  timing: Timing,
): string {
  if (!shape) return 'not known';
  const parts = [shape.layout === 'none' ? 'list' : shape.layout];
  if (timing.isChangeLogged) parts.push('changes only');
  if (!shape.hasHeader) parts.push('no header');
  if (base.form) parts.push(formWords[base.form.kind]);
  if (base.container === 'workbook') parts.push('workbook');
  else if (base.container === 'parquet') parts.push('Parquet');
  else if (!isTable(base) || isCut(base.form?.kind))
    parts.push(separatorWords[base.dialect.separator], `decimal ${base.dialect.decimal === ',' ? 'comma' : 'point'}`);
  if (timing.order !== 'rising')
    parts.push({ falling: 'newest first', mixed: 'rows out of order', 'by-tag': 'tag after tag' }[timing.order]);
  return parts.join(', ');
}
