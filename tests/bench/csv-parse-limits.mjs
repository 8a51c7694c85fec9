// What a plain script does: csv-parse, numbers, two limits.
import { createReadStream } from 'node:fs';
import { parse } from 'csv-parse';

const [file, separator] = process.argv.slice(2);
let outside = 0;
const rows = createReadStream(file, { highWaterMark: 1 << 20 }).pipe(parse({ delimiter: separator, from_line: 2 }));
for await (const cells of rows)
  for (let i = 1; i < cells.length; i++) {
    const value = Number(separator === ';' ? cells[i].replace(',', '.') : cells[i]);
    if (value < 0 || value > 400) outside++;
  }
process.stdout.write(`${outside}\n`);
