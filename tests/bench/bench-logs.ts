import { closeSync, openSync, writeSync } from 'node:fs';
import { Random } from '../make/random.js';

const zones = 24;
const startMs = Date.UTC(2026, 0, 5);

/** A log of 24 zones with reading, set point and output at 1 s, wide, decimal point. */
export function writeWideLog(file: string, rows: number): void {
  const names = Array.from({ length: zones }, (_, zone) => `Zone ${zone + 1}`);
  const header = ['Date/Time', ...names.flatMap((name) => [`${name}_ACT`, `${name}_SET`, `${name}_PWR`])].join(',');
  writeRows(file, header, rows, (time, cells) => `${time},${cells.flat().join(',')}`);
}

/** The same in long layout with decimal comma. */
export function writeLongLog(file: string, rows: number): void {
  const roles = ['PV', 'SP', 'OUT'];
  writeRows(file, 'time;tag;value', rows, (time, cells) =>
    cells
      .flatMap((zone, i) => zone.map((cell, k) => `${time};Zone ${i + 1} ${roles[k]};${cell.replace('.', ',')}`))
      .join('\n'),
  );
}

function writeRows(
  file: string,
  header: string,
  rows: number,
  format: (time: string, cells: readonly string[][]) => string,
): void {
  const random = new Random(1);
  const out = openSync(file, 'w');
  let text = `${header}\n`;
  for (let row = 0; row < rows; row++) {
    const time = new Date(startMs + row * 1000).toISOString().slice(0, 19).replace('T', ' ');
    const warm = Math.min(1, row / 1800);
    const cells = Array.from({ length: zones }, (_, zone) => [
      (22 + warm * (130 + zone) + random.next()).toFixed(1),
      `${150 + zone}.0`,
      (30 + 5 * random.next()).toFixed(1),
    ]);
    text += `${format(time, cells)}\n`;
    if (text.length > 1 << 20) text = (writeSync(out, text), '');
  }
  writeSync(out, text);
  closeSync(out);
}
