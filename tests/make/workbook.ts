import { strToU8, zipSync } from 'fflate';

/**
 * A workbook of one sheet (Office Open XML, ECMA-376) from a text with commas: numbers become number cells, all else
 * texts. Enough for a reader; a spreadsheet program would want more.
 *
 * @param timeColumns So many columns, from the first, hold numbers that are shown as dates and clocks.
 */
export function workbookOf(text: string, timeColumns = 0): Uint8Array {
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  const relation = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const packaged = 'http://schemas.openxmlformats.org/package/2006';
  const types = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
  return zipSync({
    '[Content_Types].xml': strToU8(
      `<Types xmlns="${packaged}/content-types"><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${types}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${types}.worksheet+xml"/></Types>`,
    ),
    'xl/workbook.xml': strToU8(
      `<workbook xmlns="${main}" xmlns:r="${relation}"><sheets><sheet name="Log" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      `<Relationships xmlns="${packaged}/relationships"><Relationship Id="rId1" Type="${relation}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${relation}/styles" Target="styles.xml"/></Relationships>`,
    ),
    // Number format 22 shows a date with its clock (ECMA-376 part 1, 18.8.30).
    'xl/styles.xml': strToU8(
      `<styleSheet xmlns="${main}"><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="22" applyNumberFormat="1"/></cellXfs></styleSheet>`,
    ),
    'xl/worksheets/sheet1.xml': strToU8(
      `<worksheet xmlns="${main}"><sheetData>${text
        .trim()
        .split('\n')
        .map((line, row) => rowXml(line, row, timeColumns))
        .join('')}</sheetData></worksheet>`,
    ),
  });
}

function rowXml(line: string, row: number, timeColumns: number): string {
  const cells = line.split(',').map((text, column) => cellXml(column, row, text, column < timeColumns ? ' s="1"' : ''));
  return `<row r="${row + 1}">${cells.join('')}</row>`;
}

function cellXml(column: number, row: number, text: string, style: string): string {
  const place = `${String.fromCharCode(65 + column)}${row + 1}`;
  return /^-?[\d.]+$/.test(text)
    ? `<c r="${place}"${style}><v>${text}</v></c>`
    : `<c r="${place}" t="inlineStr"><is><t>${text}</t></is></c>`;
}
