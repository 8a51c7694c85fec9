// The least that reading a log can cost: every byte is looked at once.
import { createReadStream } from 'node:fs';

let lines = 0;
for await (const chunk of createReadStream(process.argv[2], { highWaterMark: 1 << 20 }))
  for (let i = 0; i < chunk.length; i++) if (chunk[i] === 10) lines++;
process.stdout.write(`${lines}\n`);
