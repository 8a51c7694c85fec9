// The same question as SQL: least, most and jumps for every reading column.
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const [file, folder] = process.argv.slice(2);
const entry = createRequire(join(folder, 'package.json')).resolve('@duckdb/node-api');
const { DuckDBInstance } = await import(pathToFileURL(entry).href);
const instance = await DuckDBInstance.create(':memory:', { threads: '1' });
const connection = await instance.connect();
const names = Array.from({ length: 24 }, (_, i) => `"Zone ${i + 1}_ACT"`);
const columns = names.map((name) => `min(${name}), max(${name})`);
const jumps = names.map((name, i) => `sum(CASE WHEN abs(j${i}) > 8 THEN 1 ELSE 0 END)`);
const lags = names.map((name, i) => `${name}, ${name} - lag(${name}) OVER (ORDER BY "Date/Time") AS j${i}`);
const result = await connection.runAndReadAll(
  `SELECT ${[...columns, ...jumps].join(', ')} FROM (SELECT ${lags.join(', ')} FROM read_csv('${file}', header = true))`,
);
process.stdout.write(`${result.getRows().length}\n`);
