/**
 * What makes a spreadsheet take a cell for a formula, by OWASP's page "CSV Injection": these signs at its beginning,
 * full-width ones too. A program set up for another separator begins a cell behind a semicolon, a tab or a line end.
 */
const formulaStart = /^(?=[=+\-@\t\r\n＝＋－＠])|(?<=[;\t\r\n])(?=[=+\-@＝＋－＠])/g;

/** A cell that no spreadsheet takes for a formula, quoted where it must be (RFC 4180). Numbers stay numbers. */
export function safeCsvCell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const text = value.replace(formulaStart, "'");
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
