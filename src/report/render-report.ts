import { createHash } from 'node:crypto';
import type { Findings } from '../model/findings.js';
import { plantChartData, zoneChartData } from './embed/chart-data.js';
import { thinZones } from './embed/thin-zones.js';
import { readPageAssets, type PageAssets } from './page-assets.js';
import { actScreen } from './screens/act.js';
import type { Context } from './screens/context.js';
import { pageHead } from './screens/head.js';
import { lostScreen } from './screens/lost.js';
import { shapes } from './screens/marks.js';
import { trustScreen } from './screens/trust.js';
import { zoneListScreen } from './screens/zone-list.js';
import { zonePage } from './screens/zone-page.js';
import { lossTables } from './tables.js';
import { clockOf } from './text/clock.js';
import { escapeHtml, html, scriptJson, type Html } from './text/html.js';

/**
 * The whole report as one page that needs nothing from outside: findings in, text out. The same findings give the
 * same page.
 *
 * @param findings As `looselead report` writes them; a saved findings.json serves as well.
 * @throws LogProblem 'not-found' when the page script has not been built.
 */
export async function renderReport(findings: Findings): Promise<string> {
  const context = contextOf(findings);
  const [assets, tables] = await Promise.all([readPageAssets(), lossTables(findings)]);
  const body = html`${shapes} ${pageHead(context)}
    <main id="main" tabindex="-1">
      ${actScreen(context)} ${zoneListScreen(context)}
      ${context.zones.map((zone, index) => zonePage(zone, index, context))} ${lostScreen(context, tables)}
      ${trustScreen(context)}
    </main>
    ${dataBlocks(context)}`;
  return fill(assets, title(context), body);
}

function contextOf(findings: Findings): Context {
  return {
    findings,
    clock: clockOf(findings.timezone),
    zones: [...thinZones(findings.zones)].sort((a, b) => a.rank - b.rank),
  };
}

function title({ findings, clock }: Context): string {
  return `Heater zones, ${clock.days(findings.window.start, findings.window.end)}`;
}

/** Data for the charts, one block per zone, so that the page reads a block only when its zone is opened. */
function dataBlocks({ zones, findings, clock }: Context): Html {
  const block = (id: string, value: unknown): Html =>
    html`<script type="application/json" id="${id}">
      ${scriptJson(value)}
    </script>`;
  return html`${zones.map((zone, index) => block(`data-zone-${index + 1}`, zoneChartData(zone, findings, clock)))}
  ${block('data-plant', plantChartData(findings))}`;
}

/** Puts the parts into the frame. Values are put in by a function, so that a "$&" in them stays as it is. */
function fill({ frame, style, script }: PageAssets, pageTitle: string, body: Html): string {
  const parts: Readonly<Record<string, string>> = {
    TITLE: escapeHtml(pageTitle),
    STYLE: style,
    SCRIPT: script,
    BODY: body.markup,
    POLICY: policy(frame, style, script),
  };
  return frame.replace(/__([A-Z]+)__/g, (place, name: string) => parts[name] ?? place);
}

/**
 * Content-Security-Policy: no network, no eval, and only the style and the script that were put in here, known by
 * their hash. The hash covers the element's whole text, blanks around the place included.
 */
function policy(frame: string, style: string, script: string): string {
  const scriptText = elementText(frame, 'script', '__SCRIPT__', script);
  const styleText = elementText(frame, 'style', '__STYLE__', style);
  return [
    "default-src 'none'",
    `script-src '${hash(scriptText)}'`,
    `style-src '${hash(styleText)}'`,
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

function elementText(frame: string, element: string, place: string, content: string): string {
  const from = frame.lastIndexOf(`<${element}>`, frame.indexOf(place)) + element.length + 2;
  const to = frame.indexOf(`</${element}>`, from);
  return frame.slice(from, to).replace(place, () => content);
}

function hash(text: string): string {
  return `sha256-${createHash('sha256').update(text).digest('base64')}`;
}
