import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { demandModestZip } from '../../src/read/sources/zip-source.js';
import { builtProgram } from '../make/built-program.js';

vi.setConfig({ testTimeout: 300_000 });

let program: Awaited<ReturnType<typeof builtProgram>>;
let folder = '';
beforeAll(async () => {
  program = await builtProgram();
  folder = mkdtempSync(join(tmpdir(), 'looselead-bombs-'));
});
afterAll(() => {
  program.remove();
  rmSync(folder, { recursive: true });
});

const unpackedBytes = 120 * 1024 * 1024;
const head = 'Time,Z1 PV\n2026-01-05T00:00:00Z,22.0\n2026-01-05T00:00:10Z,23.0\n';
const blown = (): Buffer => Buffer.concat([Buffer.from(head), Buffer.alloc(unpackedBytes, ' ')]);

/** A workbook of one sheet by ECMA-376 part 1, with whatever stands in that sheet. */
function workbook(sheet: Uint8Array): Uint8Array {
  const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const relations = (type: string, target: string): string =>
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${office}/${type}" Target="${target}"/></Relationships>`;
  const text = (xml: string): Uint8Array => Buffer.from(`<?xml version="1.0"?>${xml}`);
  const spreadsheet = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
  return zipSync(
    {
      '_rels/.rels': text(relations('officeDocument', 'xl/workbook.xml')),
      'xl/workbook.xml': text(
        `<workbook ${spreadsheet} xmlns:r="${office}"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`,
      ),
      'xl/_rels/workbook.xml.rels': text(relations('worksheet', 'worksheets/sheet1.xml')),
      'xl/worksheets/sheet1.xml': sheet,
    },
    { level: 9 },
  );
}

/** Looks at one file with little memory and says what was told of it. */
function previewOf(name: string, bytes: Uint8Array): { status: number | null; said: string } {
  const file = join(folder, name);
  writeFileSync(file, bytes);
  const args = ['--max-old-space-size=200', program.cli, 'preview', file];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  rmSync(file);
  return { status, said: `${stdout}${stderr}`.replace(/\s+/g, ' ') };
}

describe('a small file that unpacks to more than a hundred megabytes is told, not unpacked', () => {
  test.each<[string, string, () => Uint8Array]>([
    ['gzip', 'bomb.csv.gz', () => gzipSync(blown(), { level: 9 })],
    ['zip', 'bomb.zip', () => zipSync({ 'log.csv': blown() }, { level: 9 })],
    ['workbook', 'bomb.xlsx', () => workbook(blown())],
  ])('%s', (_kind, name, make) => {
    const bytes = make();
    expect(bytes.length).toBeLessThan(unpackedBytes / 500);
    const { status, said } = previewOf(name, bytes);
    expect([0, 2]).toContain(status);
    expect(said).toMatch(/bomb\S*: .*unpacks to more than 500 times its size, which no log does/);
  });

  test('a workbook that grows as others do is refused by its size, since it must be held', async () => {
    const file = join(folder, 'large.xlsx');
    writeFileSync(file, workbook(randomBytes(2_000_000)));
    await expect(demandModestZip(file, 1_000_000)).rejects.toMatchObject({ code: 'too-large', place: { file } });
    await demandModestZip(file, 3_000_000);
  });
});

test.each(['../../evil.csv', '/etc/evil.csv', '..\\..\\evil.csv', 'C:\\evil.csv'])(
  'the name %s inside an archive is shown, never gone to',
  (name) => {
    const { status, said } = previewOf('logs.zip', zipSync({ [name]: Buffer.from(head) }));
    expect(status).toBe(0);
    expect(said).toContain('evil.csv');
  },
);
