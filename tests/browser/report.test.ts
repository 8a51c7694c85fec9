import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import {
  emptyFindings,
  hostileFindings,
  hostileNames,
  manyFindings,
  plantFindings,
  sizedFindings,
} from '../make/report/findings.js';
import { buildPageIfOld } from '../make/report/built-page.js';
import { chromiumPath, launch, noBrowserText, removeReports, reportAddress } from './chromium.js';

const hasBrowser = chromiumPath() !== undefined;
if (!hasBrowser) console.warn(noBrowserText);

test('a browser is there where the tests must run in one', () => {
  if (process.env['CI']) expect(hasBrowser, noBrowserText).toBe(true);
});

const axeFile = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const screens = ['act', 'zones', 'zone-1', 'zone-2', 'lost', 'trust'] as const;
const busiest = ['act', 'zone-1'] as const;

/** What axe finds in the open screen and the page's head; the screens that are folded away are not asked about. */
async function axeFaults(page: Page, screen: string): Promise<readonly string[]> {
  return page.evaluate(async (id) => {
    interface Outcome {
      readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[];
    }
    const { axe } = window as unknown as { axe: { run: (context: object, options: object) => Promise<Outcome> } };
    const { violations } = await axe.run(
      { include: [['.page-head'], [`#${id}`]], exclude: [['.chart svg']] },
      { resultTypes: ['violations'] },
    );
    return violations.map(({ id: rule, nodes }) => `${rule}: ${nodes[0]?.html ?? ''}`);
  }, screen);
}

describe.skipIf(!hasBrowser)('the report in Chromium', () => {
  let browser: Browser;
  let plant: string;
  const complaints: string[] = [];

  beforeAll(async () => {
    await buildPageIfOld();
    browser = await launch();
    plant = await reportAddress(plantFindings());
  });
  afterAll(async () => {
    await browser?.close();
    removeReports();
  });
  // Whatever a page complains of in any test is a failure: errors, refused loads, breaches of its policy.
  afterEach(() => expect(complaints.splice(0)).toEqual([]));

  async function open(address: string, options: BrowserContextOptions = {}): Promise<Page> {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, ...options });
    page.on('console', (message) => {
      if (message.type() !== 'log') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('request', (request) => {
      if (!/^(file|data|about):/.test(request.url())) complaints.push(`network: ${request.url()}`);
    });
    await page.addInitScript(() => {
      window.print = () => undefined;
    });
    await page.goto(address);
    return page;
  }

  const charts = (page: Page): Promise<number> => page.locator('.view.open .chart svg').count();
  const drawn = (page: Page, count: number): Promise<unknown> =>
    page.waitForFunction((wanted) => document.querySelectorAll('.view.open .chart svg').length >= wanted, count);

  test('opens on what to act on, and draws a zone only when it is opened', async () => {
    const page = await open(plant);
    expect(await page.locator('.view.open h2').textContent()).toBe('Act on this');
    expect(await page.locator('.lead').first().textContent()).toContain('2 of 16');
    expect(await page.locator('.chart svg').count()).toBe(0);
    await page.locator('.zone-link').first().click();
    await drawn(page, 4);
    expect(await page.locator('.view.open h2').textContent()).toContain('Front jaw');
    expect(await page.locator('.view.open .caution').isVisible()).toBe(true);
    await page.close();
  });

  // One page per colour scheme, both widths on it: axe once for each state that can differ. Narrow and wide differ in
  // layout, light and dark in colours, so the busiest screens are looked at in all four and the others once.
  for (const colorScheme of ['light', 'dark'] as const) {
    test(`has no accessibility fault that axe knows, and no sideways scroll, in ${colorScheme}`, async () => {
      // The page's policy would refuse axe, as it should.
      const checked = await browser.newPage({ colorScheme, viewport: { width: 1440, height: 900 }, bypassCSP: true });
      await checked.goto(plant);
      await checked.addScriptTag({ path: axeFile });
      for (const width of [1440, 390]) {
        await checked.setViewportSize({ width, height: 900 });
        const looked = (width === 390) === (colorScheme === 'dark') ? screens : busiest;
        for (const screen of looked) {
          await checked.evaluate((hash) => (location.hash = hash), screen);
          await checked.waitForSelector(`#${screen}.open`);
          expect(await axeFaults(checked, screen), `${screen} at ${width} px`).toEqual([]);
          const overflow = await checked.evaluate(() => document.documentElement.scrollWidth - innerWidth);
          expect(overflow, `${screen} is wider than ${width} px`).toBeLessThanOrEqual(0);
        }
      }
      await checked.close();
    }, 240_000);
  }

  test('its policy refuses eval, foreign scripts and the network', async () => {
    const page = await open(plant);
    const outcome = await page.evaluate(async () => {
      const refused: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => refused.push(event.effectiveDirective));
      const script = document.createElement('script');
      script.textContent = 'window.intruder = 1';
      document.body.append(script);
      // A file:// address, so that the test itself asks nothing of any network.
      await fetch('file:///nowhere').catch(() => undefined);
      await new Promise((resolve) => setTimeout(resolve, 100));
      return { refused, intruder: 'intruder' in window };
    });
    expect(outcome.intruder).toBe(false);
    expect(outcome.refused).toEqual(expect.arrayContaining(['script-src-elem', 'connect-src']));
    complaints.splice(0);
    const policy = await page.locator('meta[http-equiv]').first().getAttribute('content');
    expect(policy).toMatch(/default-src 'none'/);
    expect(policy).not.toMatch(/unsafe/);
    await page.close();
  });

  test('switches between °C and °F everywhere, charts included', async () => {
    const page = await open(`${plant}#zone-1`);
    await drawn(page, 4);
    expect(await page.locator('.view.open').innerText()).toContain('182.0\u00A0°C');
    await page.locator('input[value="degF"]').check();
    await page.waitForFunction(() => document.querySelector('.view.open .chart')?.textContent?.includes('°F'));
    const text = await page.locator('.view.open').innerText();
    expect(text).toContain('359.6\u00A0°F'); // 182 × 1.8 + 32
    expect(text).not.toMatch(/\d\u00A0°C/);
    await page.close();
  });

  test('works by keyboard alone', async () => {
    const page = await open(plant);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the report');
    const reach = async (text: string): Promise<void> => {
      for (let i = 0; i < 60; i++) {
        if ((await page.evaluate(() => document.activeElement?.textContent?.trim())) === text) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`"${text}" cannot be reached with the Tab key.`);
    };
    await reach('Front jaw');
    await page.keyboard.press('Enter');
    await drawn(page, 1);
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H2');
    await reach('Closer');
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => document.querySelector('.view.open .shown')?.textContent?.includes(' to '));
    await page.close();
  });

  test('makes the numbers of a chart when they are asked for', async () => {
    const page = await open(`${plant}#zone-1`);
    await drawn(page, 4);
    const numbers = page.locator('.view.open [data-numbers="soaks"]');
    expect(await numbers.locator('tr').count()).toBe(0);
    await page.locator('.view.open .figure-soaks summary').click();
    await numbers.locator('tbody tr').first().waitFor();
    expect(await numbers.locator('tbody tr').count()).toBe(4);
    expect(await numbers.innerText()).toMatch(/2\sFeb 05:00.*[+−]?0\.\d\d\u00A0°C/s); // 04:00 UTC in Oslo
    await page.close();
  });

  test('zooms by dragging and shows numbers on hover, offline', async () => {
    const page = await open(`${plant}#zone-1`);
    await drawn(page, 4);
    await page.context().setOffline(true);
    const chart = page.locator('.view.open [data-chart="trace"]');
    await chart.scrollIntoViewIfNeeded();
    const box = (await chart.boundingBox())!;
    const y = box.y + 150;
    await page.mouse.move(box.x + 400, y);
    await page.mouse.move(box.x + 404, y);
    await page.waitForSelector('.tip:not([hidden])');
    expect(await page.locator('.tip').innerText()).toContain('Highest');
    await page.mouse.down();
    await page.mouse.move(box.x + 700, y, { steps: 8 });
    await page.mouse.up();
    await page.waitForFunction(() => document.querySelector('.view.open .shown')?.textContent?.includes(' to '));
    await page.close();
  });

  test('finds a zone by words of its name and machine', async () => {
    const page = await open(`${plant}#zones`);
    await page.fill('#find-zone', 'former plate 3');
    expect(await page.locator('#zone-rows tr:visible').count()).toBe(2);
    expect(await page.locator('#found').textContent()).toBe('2 of 16');
    await page.close();
  });

  test('prints each zone as one page to take along, on A4 and Letter, and cuts nothing', async () => {
    for (const [zone, colorScheme] of [
      ['zone-1', 'light'],
      ['zone-3', 'dark'],
    ] as const) {
      const page = await open(`${plant}#${zone}`, { colorScheme });
      await drawn(page, 1);
      for (const format of ['A4', 'Letter'] as const) {
        await page.locator('.view.open [data-do="sheet"]').click();
        await page.waitForSelector('html[data-print-ready="sheet"]');
        const sheet = page.locator('.view.open');
        expect(await sheet.locator('.caution').isVisible()).toBe(true);
        expect(await sheet.locator('td.measured').first().isVisible()).toBe(true);
        const pdf = await page.pdf({ format, preferCSSPageSize: true });
        expect(pageCount(pdf), `${zone} on ${format}`).toBe(1);
        await page.waitForSelector('html:not([data-print])');
      }
      await page.close();
    }
  });

  test('a screen on paper keeps its charts inside the page', async () => {
    const page = await open(`${plant}#zone-1`);
    await drawn(page, 4);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 718, height: 1000 }); // A4 less margins, CSS pixels
    const wide = await page.evaluate(() =>
      [...document.querySelectorAll('.view.open .chart svg')].map((svg) => svg.getBoundingClientRect().right),
    );
    expect(wide.length).toBe(4);
    for (const right of wide) expect(right).toBeLessThanOrEqual(718);
    await page.close();
  });

  test('hostile names stay text', async () => {
    const page = await open(await reportAddress(hostileFindings()));
    for (const name of hostileNames) {
      const wanted = name.replace(/\s/g, '');
      const names = await page.locator('.name').allTextContents();
      expect(names.map((text) => text.replace(/\s/g, ''))).toContain(wanted);
    }
    expect(await page.locator('main b:text("bold")').count()).toBe(0);
    expect(await page.locator('img').count()).toBe(0);
    for (const width of [390, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    }
    await page.evaluate(() => (location.hash = 'zone-1'));
    await drawn(page, 4);
    await page.setViewportSize({ width: 390, height: 900 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    await page.close();
  });

  test('zero zones and 200 zones are answered', async () => {
    const empty = await open(await reportAddress(emptyFindings()));
    expect(await empty.locator('.lead').first().textContent()).toContain('No zone was found');
    await empty.close();
    const many = await open(await reportAddress(manyFindings(200)));
    expect(await many.locator('#act .act-table tbody tr').count()).toBe(4);
    await many.evaluate(() => (location.hash = 'zone-200'));
    await drawn(many, 1);
    expect(await charts(many)).toBeGreaterThan(0);
    await many.close();
  });

  test('24 zones over two weeks open in under a second, the work of the first screen being small', async () => {
    const page = await open(await reportAddress(sizedFindings()));
    const openedMs = await page.evaluate(() => {
      const [entry] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
      return entry!.domContentLoadedEventEnd;
    });
    // Told, not held: a busy machine is no fault of the page. What is held is work that does not depend on the machine.
    console.log(
      `24 zones over two weeks: ready after ${Math.round(openedMs)} ms (wanted: under 1000 ms on a machine at rest)`,
    );
    expect(openedMs).toBeGreaterThan(0);
    expect(await page.locator('.chart svg').count(), 'charts drawn before anyone asked').toBe(0);
    const laidOut = await page.evaluate(() => document.querySelectorAll('.view.open *').length);
    const all = await page.evaluate(() => document.querySelectorAll('main *').length);
    expect(laidOut, 'elements that are laid out at the start').toBeLessThan(all / 5);
    expect(all, 'elements of the whole page').toBeLessThan(20_000);
    await page.close();
  });

  test('without its script every screen is there to read', async () => {
    const page = await open(plant, { javaScriptEnabled: false });
    expect(await page.locator('#trust').isVisible()).toBe(true);
    expect(await page.locator('#zone-2').isVisible()).toBe(true);
    complaints.splice(0);
    await page.close();
  });
});

/** Pages of a PDF, by its page objects (ISO 32000-1, 7.7.3.3). */
function pageCount(pdf: Buffer): number {
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;
}
