import type { TopLevelSpec } from 'vega-lite';
import type { ZoneChartData } from '../embed/chart-data.js';
import { unpackPoints } from '../embed/pack-lists.js';
import { chartConfig, dayAxis, inUnit, unitText, type Look } from './look.js';

/** More points than this are drawn smaller, so that they can be told apart. */
const manySoaks = 25;

/** The axis reaches this far beyond the tolerance, so that the band has an edge to be seen. */
const beyondTolerance = 1.35;

/** Cold reading against the neighbours, soak by soak, with the sensor's own tolerance as a band. */
export function soaksChart({ soaks, toleranceDegC }: ZoneChartData, look: Look): TopLevelSpec {
  const values = unpackPoints(soaks).map(({ timeMs, offsetDegC, plusMinusDegC }) => ({
    t: timeMs,
    offset: inUnit(offsetDegC, 'difference', look),
    low: inUnit(offsetDegC - plusMinusDegC, 'difference', look),
    high: inUnit(offsetDegC + plusMinusDegC, 'difference', look),
  }));
  const x = { field: 't', type: 'temporal', scale: { type: 'utc' }, axis: dayAxis(look) };
  const y = { field: 'offset', type: 'quantitative', title: `Reading less neighbours, ${unitText(look)}` };
  const tooltip = [
    { field: 't', type: 'temporal', title: 'Soak', format: '%a %-d %b %H:%M' },
    { field: 'offset', type: 'quantitative', title: `Offset, ${unitText(look)}`, format: '+.2f' },
    { field: 'low', type: 'quantitative', title: 'from', format: '+.2f' },
    { field: 'high', type: 'quantitative', title: 'to', format: '+.2f' },
  ];
  return {
    width: look.widthPx,
    height: 190,
    data: { values },
    layer: [
      ...toleranceLayers(toleranceDegC, look),
      { mark: { type: 'line', color: look.reading, strokeWidth: 1.5 }, encoding: { x, y } },
      {
        mark: { type: 'rule', color: look.reading, strokeWidth: 1.5 },
        encoding: { x, y: { field: 'low', type: 'quantitative' }, y2: { field: 'high' } },
      },
      {
        mark: {
          type: 'point',
          shape: 'circle',
          filled: true,
          size: values.length > manySoaks ? 24 : 70,
          opacity: 1,
          color: look.reading,
        },
        encoding: { x, y, tooltip },
      },
    ],
    config: chartConfig(look),
  } as TopLevelSpec;
}

function toleranceLayers(toleranceDegC: number | null, look: Look) {
  const zero = {
    data: { values: [{}] },
    mark: { type: 'rule', color: look.ink, strokeWidth: 1 },
    encoding: { y: { datum: 0 } },
  };
  if (toleranceDegC === null) return [zero];
  const tolerance = inUnit(toleranceDegC, 'difference', look)!;
  const edges = [tolerance, -tolerance].map((value) => ({ value }));
  const reach = [beyondTolerance * tolerance, -beyondTolerance * tolerance].map((value) => ({ value }));
  const y = { field: 'value', type: 'quantitative' };
  return [
    {
      data: { values: [{ low: -tolerance, high: tolerance }] },
      mark: { type: 'rect', color: look.running, opacity: 0.25 },
      encoding: { y: { field: 'low', type: 'quantitative' }, y2: { field: 'high' } },
    },
    { data: { values: edges }, mark: { type: 'rule', color: look.running, strokeDash: [4, 3] }, encoding: { y } },
    { data: { values: reach }, mark: { type: 'rule', opacity: 0 }, encoding: { y } },
    zero,
  ];
}
