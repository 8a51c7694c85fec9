import { readFile } from 'node:fs/promises';
import { LogProblem } from '../model/problem.js';

/** The page's own parts: frame, style, and the script that the build makes. */
export interface PageAssets {
  readonly frame: string;
  readonly style: string;
  readonly script: string;
}

/** The script is made by the build, so it lies beside this file in dist only; a run from src finds it there too. */
const scriptPlaces = ['./page-script.js', '../../dist/page-script.js'];

/** @throws LogProblem 'not-found' when the build has not been run. */
export async function readPageAssets(): Promise<PageAssets> {
  const [frame, style, script] = await Promise.all([read('./page.html'), read('./page.css'), readScript()]);
  return { frame, style, script };
}

function read(place: string): Promise<string> {
  return readFile(new URL(place, import.meta.url), 'utf8');
}

async function readScript(): Promise<string> {
  for (const place of scriptPlaces) {
    try {
      return await read(place);
    } catch (cause) {
      if ((cause as NodeJS.ErrnoException).code !== 'ENOENT') throw cause;
    }
  }
  throw new LogProblem('not-found', undefined, 'The report’s page script is missing.', 'Run "npm run build" first.');
}
