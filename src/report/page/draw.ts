/// <reference lib="dom" />
import { parse, View, Warn } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import { showTip } from './tip.js';

/**
 * Draws one chart as SVG, which prints sharp. Expressions are interpreted from their syntax tree, so that the page can
 * forbid eval; the loader refuses everything, so that no spec can reach the network.
 */
export async function draw(place: HTMLElement, spec: TopLevelSpec): Promise<View> {
  const { spec: vegaSpec } = compile(spec);
  const runtime = parse(vegaSpec, {}, { ast: true });
  const view = new View(runtime, {
    renderer: 'svg',
    container: place,
    hover: true,
    expr: expressionInterpreter,
    logLevel: Warn,
    tooltip: showTip,
    loader: closedLoader as never,
  });
  await view.runAsync();
  // The place itself is the image and has its words; the parts inside are not for a screen reader.
  place.querySelector('svg')?.setAttribute('aria-hidden', 'true');
  return view;
}

const refuse = (): Promise<never> => Promise.reject(new Error('This page loads nothing.'));
const closedLoader = { load: refuse, sanitize: refuse, http: refuse, file: refuse, options: {} };
