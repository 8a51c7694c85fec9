// The same with rows as events: a script of somebody who saves the wait for each row.
import { createReadStream } from 'node:fs';
import { parse } from 'csv-parse';

const [file, separator] = process.argv.slice(2);
let outside = 0;
createReadStream(file, { highWaterMark: 1 << 20 })
  .pipe(parse({ delimiter: separator, from_line: 2 }))
  .on('data', (cells) => {
    for (let i = 1; i < cells.length; i++) {
      const value = Number(separator === ';' ? cells[i].replace(',', '.') : cells[i]);
      if (value < 0 || value > 400) outside++;
    }
  })
  .on('end', () => process.stdout.write(`${outside}\n`));
