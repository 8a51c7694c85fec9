import { readFile } from 'node:fs/promises';
import { LogProblem } from '../../model/problem.js';
import type { PlantFile } from '../../model/plant-file.js';

/**
 * Reads and checks a plant.yaml.
 *
 * @throws LogProblem 'not-found', 'unreadable-file', or 'bad-plant-file' with line and key.
 */
export async function readPlantFile(path: string): Promise<PlantFile> {
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
