/** Cells that a spreadsheet would run as a formula begin with one of these. */
const formulaStart = /^[=+\-@\t\r]/;

/** A cell that no spreadsheet takes for a formula, quoted where it must be (RFC 4180). Numbers stay numbers. */
export function safeCsvCell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const text = formulaStart.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
