import { strToU8, zipSync } from 'fflate';

/**
 * A workbook of one sheet (Office Open XML, ECMA-376) from a text with commas: numbers become number cells, all else
 * texts. Enough for a reader; a spreadsheet program would want styles, too.
 */
export function workbookOf(text: string): Uint8Array {
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
      `<Relationships xmlns="${packaged}/relationships"><Relationship Id="rId1" Type="${relation}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    ),
    'xl/worksheets/sheet1.xml': strToU8(
      `<worksheet xmlns="${main}"><sheetData>${text.trim().split('\n').map(rowXml).join('')}</sheetData></worksheet>`,
    ),
  });
}

function rowXml(line: string, row: number): string {
  const cells = line.split(',').map((text, column) => cellXml(column, row, text));
  return `<row r="${row + 1}">${cells.join('')}</row>`;
}

function cellXml(column: number, row: number, text: string): string {
  const place = `${String.fromCharCode(65 + column)}${row + 1}`;
  return /^-?[\d.]+$/.test(text)
    ? `<c r="${place}"><v>${text}</v></c>`
    : `<c r="${place}" t="inlineStr"><is><t>${text}</t></is></c>`;
}
