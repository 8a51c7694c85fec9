import { readFile, stat } from 'node:fs/promises';
import { LogProblem } from '../../model/problem.js';
import type { PlantFile } from '../../model/plant-file.js';

/** 400 bytes for each of the 5,000 zones that one run takes; 5 MB took more than a minute to read. */
const mostBytes = 2_000_000;

/**
 * Reads and checks a plant.yaml.
 *
 * @throws LogProblem 'not-found', 'unreadable-file', or 'bad-plant-file', with line and key where there are such.
 */
export async function readPlantFile(path: string): Promise<PlantFile> {
  await demandSmall(path);
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    const isMissing = (error as { code?: string }).code === 'ENOENT';
    throw new LogProblem(
      isMissing ? 'not-found' : 'unreadable-file',
      { file: path },
      isMissing ? 'There is no such plant file.' : 'The plant file cannot be read.',
      'Check the path given with --plant.',
      { cause: error },
    );
  }
  const { parsePlantFile } = await import('./plant-text.js');
  return parsePlantFile(text, path);
}

async function demandSmall(path: string): Promise<void> {
  const bytes = await stat(path).then(
    ({ size }) => size,
    () => 0, // reading it tells why
  );
  if (bytes <= mostBytes) return;
  throw new LogProblem(
    'bad-plant-file',
    { file: path },
    `It holds ${(bytes / 1e6).toFixed(1)} MB, and a plant file may hold ${mostBytes / 1e6} MB.`,
    'Keep the zones of these logs only.',
  );
}
