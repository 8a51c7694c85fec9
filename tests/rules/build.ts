// Makes dist: the program and the parts of its page.
import { rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { buildPage, buildProgram } from '../make/build-program.js';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));
await rm(dist, { recursive: true, force: true });
await Promise.all([buildProgram(dist), buildPage(dist)]);
