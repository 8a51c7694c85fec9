// Rewrites the reviewed findings on sample-logs: npm run golden. Read the diff and say in the commit why it moved.
import { writeFileSync } from 'node:fs';
import { format, resolveConfig } from 'prettier';
import { currentGolden, goldenFile } from './golden-findings.js';

const text = JSON.stringify(await currentGolden());
writeFileSync(goldenFile, await format(text, { ...(await resolveConfig(goldenFile)), filepath: goldenFile }));
