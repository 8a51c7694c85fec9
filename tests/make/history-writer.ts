// Keeps runs one after the other until it is killed; the history test kills it.
import { saveRun } from '../../src/history/history-folder.js';
import { madeFindings, madeZone } from './made-findings.js';

const [folder = ''] = process.argv.slice(2);
const note = { time: '2026-01-05T00:00:00Z', offsetDegC: 1, uncertaintyDegC: 0.1 };
const zones = Array.from({ length: 24 }, (_, i) =>
  madeZone(`Zone ${i}`, { soaks: Array.from({ length: 500 }, () => note) }),
);
for (let n = 0; ; n++) {
  const start = Date.UTC(2026, 0, 5) + (n % 40) * 86_400_000;
  const findings = madeFindings(new Date(start).toISOString(), new Date(start + 7 * 86_400_000).toISOString(), zones);
  await saveRun(folder, findings, null, () => new Uint8Array());
  process.stdout.write('.');
}
