import { createHash } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import type { Findings } from '../../src/model/findings.js';
import { buildPageIfOld } from '../make/report/built-page.js';
import { renderReport } from '../../src/report/render-report.js';
import { cautions } from '../../src/report/sentences/cautions.js';
import { escapeHtml } from '../../src/report/text/html.js';
import {
  emptyFindings,
  hostileFindings,
  hostileNames,
  manyFindings,
  plantFindings,
  sizedFindings,
} from '../make/report/findings.js';

beforeAll(buildPageIfOld);

test('24 zones over two weeks stay within 2.5 MB, libraries included', async () => {
  const page = await renderReport(sizedFindings());
  expect(Buffer.byteLength(page)).toBeLessThanOrEqual(2.5e6);
});

test('the same findings give the same page, from memory or from a saved file', async () => {
  const page = await renderReport(plantFindings());
  const saved = JSON.parse(JSON.stringify(plantFindings())) as Findings;
  expect(await renderReport(saved)).toBe(page);
});

test('the page refers to nothing outside itself', async () => {
  const page = await renderReport(plantFindings());
  const markup = page.replace(/<script[\s\S]*?<\/script>/g, '').replace(/<style[\s\S]*?<\/style>/g, '');
  expect(markup).not.toMatch(/(src|href|action)="(?!#)/);
  expect(page.match(/<style[\s\S]*?<\/style>/g)!.join('')).not.toMatch(/url\(|@import/);
});

test('the policy names the script and the style by their hash and allows nothing else', async () => {
  const page = await renderReport(plantFindings());
  const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]*)"/.exec(page)![1]!;
  expect(policy).toMatch(
    /^default-src 'none'; script-src 'sha256-[^']+'; style-src 'sha256-[^']+'; img-src data:; base-uri 'none'; form-action 'none'$/,
  );
  const script = /<script>([\s\S]*?)<\/script>/.exec(page)![1]!;
  expect(policy).toContain(createHash('sha256').update(script).digest('base64'));
});

test('a hostile name appears as text only, whole, and never as markup', async () => {
  const page = await renderReport(hostileFindings());
  expect(page).not.toContain('</script><b>');
  expect(page).not.toContain('<img');
  for (const name of hostileNames) expect(page).toContain(escapeHtml(name));
  expect(page.match(/<script/g)!.length).toBe(page.match(/<\/script>/g)!.length);
});

test('a machine whose alarm clock is off stands among the clocks', async () => {
  const page = await renderReport(plantFindings());
  const clocks = /<h3>Clocks<\/h3>([\s\S]*?)<h3>/.exec(page)![1]!.replace(/<[^>]*>/g, '');
  expect(clocks).toContain('Blister former: 4\u00A0min were taken off its alarm times to match the temperature log.');
});

test.each([
  [3607, true],
  [-3540, true],
  [3000, false],
])(
  'an alarm clock that is off by %i s: is summer time named as the likely reason? %s',
  async (clockShiftSeconds, isNamed) => {
    const findings = plantFindings();
    const page = await renderReport({ ...findings, alarms: { ...findings.alarms, clockShiftSeconds } });
    expect(/one of the two clocks does not follow it/.test(page)).toBe(isNamed);
  },
);

test('cautions stand on the first screen, on every zone page and on the screen of trust', async () => {
  const findings = plantFindings();
  const page = await renderReport(findings);
  const screens = page.split('class="view').slice(1);
  const withCaution = screens.filter((screen) => screen.includes(cautions.danger) && screen.includes(cautions.doubt));
  expect(withCaution.length).toBe(1 + findings.zones.length + 1);
});

test('zero and 200 zones are rendered', async () => {
  expect(await renderReport(emptyFindings())).toContain('No zone was found in these logs');
  const many = await renderReport(manyFindings(200));
  expect(many.match(/class="view zone"/g)!.length).toBe(200);
  expect(Buffer.byteLength(many), 'bytes of a page that is sent by mail').toBeLessThan(4_000_000);
});

test('rows left out, problems and assumptions are told', async () => {
  const page = await renderReport(plantFindings());
  expect(page).toContain('2 not a number');
  expect(page).toContain('24O.5');
  expect(page).toContain('from plant.yaml');
  expect(page).toMatch(/74.s were taken off the alarm times/);
});

test('files read alike, and problems that are alike, stand in one line; gaps and missing columns are told', async () => {
  const findings = plantFindings();
  const day = (n: number) => ({
    file: `former-0${n}.csv`,
    kind: 'temperature' as const,
    layout: 'wide, comma',
    rowsRead: 100 * n,
    rowsRejected: n,
    rejectedByReason: { repeated: n, 'bad-time': 1 },
    rejectedExamples: [{ reason: 'bad-time', line: 40 + n, text: '<b>99:99</b>,151.2' }],
    notes: ['unit: °C'],
  });
  const problem = (n: number) => ({
    code: 'repeated-rows' as const,
    file: `former-0${n}.csv`,
    what: `${n} rows were read before.`,
    todo: 'Nothing needs to be done.',
  });
  const gap = {
    detector: 'frozen-record',
    start: findings.window.start,
    end: findings.window.end,
    count: 1,
    facts: { gapMinutes: 92 },
  };
  const page = await renderReport({
    ...findings,
    sources: [day(1), day(2), day(3)],
    problems: [problem(1), problem(2), problem(3)],
    zones: findings.zones.map((zone) => ({ ...zone, symptoms: [...zone.symptoms, gap], card: null })),
  });
  const trust = page.slice(page.indexOf('id="trust"'));
  expect(trust).toMatch(/2\u00A0more files like it/);
  expect(trust).toContain('6 repeated');
  expect(trust).toMatch(/bad time, line 41 of .*former-01\.csv.*: <code>&lt;b&gt;99:99&lt;\/b&gt;,151\.2<\/code>/);
  expect(trust).toMatch(/The same in 2\u00A0other places/);
  expect(trust).toMatch(/All zones: rows are missing for 1\u00A0h 32\u00A0min/);
  expect(trust).toContain('No input card for any zone');
  expect(trust).toContain('No output for 1\u00A0zone');
});

test('a fault that was put right needs no fitter, and says so', async () => {
  const findings = plantFindings();
  const zones = findings.zones.map((zone) =>
    zone.status === 'faulty' ? { ...zone, fixed: findings.window.end } : zone,
  );
  const page = await renderReport({ ...findings, zones });
  expect(page).toContain('None of 16\u00A0zones needs a fitter: 1 to keep an eye on, 2 put right since');
  expect(page).toContain('Put right: confirm it');
});
