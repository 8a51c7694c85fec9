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

beforeAll(() => {
  buildPageIfOld();
});

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
});

test('rows left out, problems and assumptions are told', async () => {
  const page = await renderReport(plantFindings());
  expect(page).toContain('2 not a number');
  expect(page).toContain('24O.5');
  expect(page).toContain('from plant.yaml');
  expect(page).toMatch(/74.s were taken off the alarm times/);
});
