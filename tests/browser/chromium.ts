import { accessSync, constants, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type Browser } from 'playwright-core';
import type { Findings } from '../../src/model/findings.js';
import { renderReport } from '../../src/report/render-report.js';

/** Where Debian, CHROMIUM_PATH or PATH has a Chromium; undefined where there is none. */
export function chromiumPath(): string | undefined {
  const onPath = (process.env['PATH'] ?? '')
    .split(delimiter)
    .flatMap((folder) => ['chromium', 'chromium-browser', 'google-chrome'].map((name) => join(folder, name)));
  return [process.env['CHROMIUM_PATH'] ?? '', '/usr/bin/chromium', ...onPath].find(
    (path) => path !== '' && isRunnable(path),
  );
}

function isRunnable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

export const noBrowserText =
  'No Chromium was found, so the report is not tested in a browser. Install chromium or set CHROMIUM_PATH.';

/** Playwright starts it with an empty profile of its own. */
export function launch(): Promise<Browser> {
  const executablePath = chromiumPath();
  if (!executablePath) throw new Error(noBrowserText);
  return chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
}

const folders: string[] = [];

/** Removes what `reportAddress` has written. */
export function removeReports(): void {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
}

/** Writes the report to a temporary folder and gives its file address. */
export async function reportAddress(findings: Findings): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'looselead-report-'));
  folders.push(folder);
  const file = join(folder, 'report.html');
  writeFileSync(file, await renderReport(findings));
  return pathToFileURL(file).href;
}
