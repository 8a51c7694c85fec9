import { closeSync, openSync, writeSync } from 'node:fs';
import { Random } from '../make/random.js';

const startMs = Date.UTC(2026, 0, 5);

/** Rows and zones of a log, and where in time it lies. */
export interface LogSize {
  readonly rows: number;
  readonly zones?: number;
  readonly everyS?: number;
  /** Rows that came before, in other files. */
  readonly firstRow?: number;
}

/** A log of zones with reading, set point and output, wide, decimal point; 24 zones at 1 s unless told otherwise. */
export function writeWideLog(file: string, size: LogSize): void {
  const names = Array.from({ length: size.zones ?? 24 }, (_, zone) => `Zone ${zone + 1}`);
  const header = ['Date/Time', ...names.flatMap((name) => [`${name}_ACT`, `${name}_SET`, `${name}_PWR`])].join(',');
  writeRows(file, header, size, (time, cells) => `${time},${cells.flat().join(',')}`);
}

/** The same in long layout with decimal comma. */
export function writeLongLog(file: string, size: LogSize): void {
  const roles = ['PV', 'SP', 'OUT'];
  writeRows(file, 'time;tag;value', size, (time, cells) =>
    cells
      .flatMap((zone, i) => zone.map((cell, k) => `${time};Zone ${i + 1} ${roles[k]};${cell.replace('.', ',')}`))
      .join('\n'),
  );
}

/** An alarm list of so many rows: over and over an alarm of one zone comes, is seen, and goes. */
export function writeAlarmList(file: string, rows: number, zones: number, spanMs: number): void {
  const random = new Random(2);
  const states = ['ACTIVE', 'ACKNOWLEDGED', 'CLEARED'];
  const kinds = ['Low temperature', 'High temperature', 'Sensor break', 'Deviation'];
  let zone = 0;
  let kind = 0;
  writeLines(file, 'Time,Zone,Alarm,State', rows, (row) => {
    if (row % 3 === 0) {
      zone = 1 + Math.floor(zones * random.next());
      kind = Math.floor(kinds.length * random.next());
    }
    return `${timeText(startMs + (row * spanMs) / rows)},Zone ${zone},${kinds[kind]},${states[row % 3]}`;
  });
}

function writeRows(
  file: string,
  header: string,
  { rows, zones = 24, everyS = 1, firstRow = 0 }: LogSize,
  format: (time: string, cells: readonly string[][]) => string,
): void {
  const random = new Random(1 + firstRow);
  writeLines(file, header, rows, (row) => {
    const second = (firstRow + row) * everyS;
    const warm = Math.min(1, second / 1800);
    const cells = Array.from({ length: zones }, (_, zone) => [
      (22 + warm * (130 + zone) + random.next()).toFixed(1),
      `${150 + zone}.0`,
      (30 + 5 * random.next()).toFixed(1),
    ]);
    return format(timeText(startMs + second * 1000), cells);
  });
}

function writeLines(file: string, header: string, rows: number, line: (row: number) => string): void {
  const out = openSync(file, 'w');
  let text = `${header}\n`;
  for (let row = 0; row < rows; row++) {
    text += `${line(row)}\n`;
    if (text.length > 1 << 20) text = (writeSync(out, text), '');
  }
  writeSync(out, text);
  closeSync(out);
}

function timeText(ms: number): string {
  return new Date(ms).toISOString().slice(0, 19).replace('T', ' ');
}
