import { mkdtempSync, writeFileSync, mkdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pourSamples, type PourOptions, type PourResult } from '../../src/intake/pour-samples.js';
import { survey, type Survey, type SurveyOptions } from '../../src/read/survey/survey.js';

export interface PouredZone {
  readonly name: string;
  readonly machine: string;
  readonly timeMs: number[];
  readonly readingDegC: number[];
  readonly state: number[];
  readonly setpointDegC: number[];
  readonly outputPercent: number[];
  readonly running: number[];
}

export interface Poured {
  readonly found: Survey;
  readonly result: PourResult;
  readonly zones: readonly PouredZone[];
}

/** Puts files into a folder of their own, calls `use` with its path, and removes it again. */
export async function inFolder<T>(
  files: Readonly<Record<string, string | Uint8Array>>,
  use: (folder: string) => Promise<T>,
): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'looselead-read-'));
  try {
    for (const [name, content] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), content);
    }
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Surveys and pours paths and keeps every sample. */
export async function pourPaths(
  paths: readonly string[],
  options: SurveyOptions = {},
  pour: PourOptions = {},
): Promise<Poured> {
  const found = await survey(paths, options);
  const zones = found.zones.map(({ name, machine }) => ({
    ...{ name, machine, timeMs: [] as number[], readingDegC: [] as number[], state: [] as number[] },
    ...{ setpointDegC: [] as number[], outputPercent: [] as number[], running: [] as number[] },
  }));
  const result = await pourSamples(
    found,
    {
      block(block) {
        const zone = zones[block.zone]!;
        for (let i = 0; i < block.length; i++) {
          if (!(block.timeMs[i]! > (zone.timeMs.at(-1) ?? -Infinity)))
            throw new Error(`time does not rise in ${zone.name}`);
          zone.timeMs.push(block.timeMs[i]!);
          zone.readingDegC.push(block.readingDegC[i]!);
          zone.state.push(block.state[i]!);
          zone.setpointDegC.push(block.setpointDegC[i]!);
          zone.outputPercent.push(block.outputPercent[i]!);
          zone.running.push(block.running[i]!);
        }
      },
    },
    pour,
  );
  return { found, result, zones };
}

/** Surveys and pours files given as text. */
export function pourFiles(
  files: Readonly<Record<string, string | Uint8Array>>,
  options: SurveyOptions = {},
  pour: PourOptions = {},
): Promise<Poured> {
  return inFolder(files, (folder) => pourPaths([folder], options, pour));
}
