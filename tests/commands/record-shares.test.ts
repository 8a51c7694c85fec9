import { appendFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Cause } from '../../src/model/cause.js';
import type { Findings } from '../../src/model/findings.js';
import { FITTED_WORTH_FINDINGS } from '../../src/weigh/record-shares.js';
import { useProgram } from './program.js';

const logs = ['tray-sealer-1.csv.gz', 'tray-sealer-1-alarms.csv', 'maintenance.csv'].map(
  (file) => `sample-logs/${file}`,
);
let folder = '';
let history = '';

const { run: looselead } = useProgram({ COLUMNS: '100' });

function report(out: string): Findings {
  const { status, stderr } = looselead(
    ...['report', ...logs, '--plant', 'sample-logs/plant.yaml', '--history', history, '--out', join(folder, out)],
  );
  expect([status, stderr]).toEqual([0, '']);
  return JSON.parse(readFileSync(join(folder, out, 'findings.json'), 'utf8')) as Findings;
}

function note(zone: string, found: Cause, date: string): void {
  expect(looselead('record', zone, '--found', found, '--date', date, '--history', history, '--quiet')).toMatchObject({
    status: 0,
    stderr: '',
  });
}

let without: Findings;
let noted: Findings;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'looselead-shares-'));
  history = join(folder, 'history');
  without = report('without');
  // The logs run from 7 to 20 September 2026.
  note('top seal right', 'wiring', '2026-08-03');
  note('cut bar', 'wiring', '2026-08-10');
  const line = (more: object): string =>
    `${JSON.stringify({ zone: 'TS1 Cut bar', machine: 'TS1', time: '2026-08-10T12:00:00Z', found: 'wiring', ...more })}\n`;
  const lines = [
    { zone: 'TS1 Preheat', found: 'none', machine: null },
    { zone: 'TS1 Top seal right', time: '2026-09-15T09:00:00Z' },
    {},
    { found: 'gremlins' },
    { zone: 'TS1 Cutbar' },
    { zone: 'TS1 Bottom seal left', found: 'heater' },
    { zone: 'TS1 Bottom seal left', found: 'sensor' },
  ];
  appendFileSync(join(history, 'record.jsonl'), lines.map(line).join(''));
  noted = report('noted');
}, 240_000);
afterAll(() => rmSync(folder, { recursive: true }));

const zone = (findings: Findings, name: string) => findings.zones.find((one) => one.zone === name)!;
const share = (cause: Cause) => noted.recordShares!.byCause.find((row) => row.cause === cause)!;

describe('what was found moves the next report', () => {
  test('there is nothing of it where nobody keeps a record', () => {
    expect(without.recordShares).toBeUndefined();
  });

  test('each repair counts once; only lines that can be used do', () => {
    expect(noted.recordShares).toMatchObject({ priorFindings: FITTED_WORTH_FINDINGS, nothingFoundCount: 1 });
    const counts = noted.recordShares!.byCause.map(({ cause, foundCount }) => [cause, foundCount]);
    expect(counts).toEqual([
      ['sensor', 1],
      ['wiring', 3],
      ['input', 0],
      ['heater', 0],
      ['recording', 0],
    ]);
    const found = 4;
    for (const { fittedShare, foundCount, usedShare } of noted.recordShares!.byCause)
      expect(usedShare).toBeCloseTo(
        (FITTED_WORTH_FINDINGS * fittedShare + foundCount) / (FITTED_WORTH_FINDINGS + found),
        9,
      );
  });

  test('a verdict shifts by as much as the shares do, and the share of healthy zones stays', () => {
    const odds = (findings: Findings, name: string): number =>
      zone(findings, name).probabilities.wiring / zone(findings, name).probabilities.sensor;
    const other = 'TS1 Preheat';
    const shift =
      share('wiring').usedShare /
      share('sensor').usedShare /
      (share('wiring').fittedShare / share('sensor').fittedShare);
    expect(shift).toBeGreaterThan(1);
    expect(odds(noted, other) / odds(without, other)).toBeCloseTo(shift, 6);
    expect(zone(noted, other).prior.none).toBe(zone(without, other).prior.none);
    const healthy = (findings: Findings) => findings.causes!.find(({ cause }) => cause === 'none')!.priorShare;
    expect(healthy(noted)).toBeCloseTo(healthy(without), 9);
  });

  test('what was found there since the log begins does not prove a verdict right', () => {
    // of the three times wiring, the one of 15 September at this zone is left out: 2 of 3 findings are left
    const fitted = share('wiring').fittedShare / share('sensor').fittedShare;
    const used =
      (FITTED_WORTH_FINDINGS * share('wiring').fittedShare + 2) /
      (FITTED_WORTH_FINDINGS * share('sensor').fittedShare + 1);
    const { prior } = zone(noted, 'TS1 Top seal right');
    expect(Math.exp(prior.wiring! - prior.sensor!) / fitted).toBeCloseTo(used / fitted, 6);
  });

  test('lines that do not count as they stand are told with file and line', () => {
    const told = noted.problems.filter(({ code }) => code === 'bad-history');
    expect(told.every(({ file, todo }) => file === join(history, 'record.jsonl') && todo !== '')).toBe(true);
    const sentences = Object.fromEntries(told.map(({ line, what }) => [line, what]));
    expect(sentences).toEqual({
      5: expect.stringMatching(/^This says the same as .*record\.jsonl:2 and counts once\.$/) as string,
      6: expect.stringMatching(/which of the known causes was found, but "gremlins", so it was left out/) as string,
      7: 'No report has a zone "TS1 Cutbar" on "TS1", so the line was left out.',
      9: expect.stringMatching(/found to be sensor here, but heater in .*record\.jsonl:8 on the same day/) as string,
    });
  });

  test('the page and the zone’s sum show the shares', () => {
    const page = readFileSync(join(folder, 'noted', 'report.html'), 'utf8').replaceAll('\u00A0', ' ');
    expect(page).toContain('What was found at this plant');
    expect(page).toMatch(/4 faults found at this plant moved the shares of the causes among faults/);
    const { stdout } = looselead('zone', 'preheat', join(folder, 'noted', 'findings.json'), '--why');
    const percent = (value: number): string => `${Math.round(value * 100)} %`;
    const { fittedShare, usedShare } = share('wiring');
    expect(stdout).toMatch(/Cause +Fitted share +Found here +Share used/);
    expect(stdout).toMatch(new RegExp(`wiring +${percent(fittedShare)} +3 +${percent(usedShare)}`));
    const half = join(folder, 'half', 'findings.json');
    mkdirSync(join(folder, 'half'));
    writeFileSync(half, JSON.stringify({ ...noted, recordShares: { byCause: null } }));
    expect(looselead('zone', 'preheat', half, '--why').stderr).toMatch(/It holds no findings of schema 1/);
    const plain = looselead('zone', 'preheat', join(folder, 'without', 'findings.json'), '--why').stdout;
    expect(plain).not.toContain('Found here');
  });
});
