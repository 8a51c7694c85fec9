import type { TopLevelSpec } from 'vega-lite';
import type { ZoneChartData } from '../embed/chart-data.js';
import { chartConfig, inUnit, tickCount, unitText, type Look } from './look.js';

/** Cold reading against the neighbours, soak by soak, with the sensor's own tolerance as a band. */
export function soaksChart({ soaks, toleranceDegC }: ZoneChartData, look: Look): TopLevelSpec {
  const values = soaks.map(({ timeMs, offsetDegC, plusMinusDegC }) => ({
    t: timeMs,
    offset: inUnit(offsetDegC, 'difference', look),
    low: inUnit(offsetDegC - plusMinusDegC, 'difference', look),
    high: inUnit(offsetDegC + plusMinusDegC, 'difference', look),
  }));
  const x = {
    field: 't',
    type: 'temporal',
    scale: { type: 'utc' },
    axis: { title: null, tickCount: tickCount(look), format: '%-d %b' },
  };
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
        mark: { type: 'rule', color: look.reading, strokeWidth: 2 },
        encoding: { x, y: { field: 'low', type: 'quantitative' }, y2: { field: 'high' } },
      },
      {
        mark: { type: 'point', shape: 'circle', filled: true, size: 70, color: look.reading },
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
  const values = [{ low: -tolerance, high: tolerance }];
  return [
    {
      data: { values },
      mark: { type: 'rect', color: look.running, opacity: 0.25, stroke: look.running, strokeDash: [3, 3] },
      encoding: { y: { field: 'low', type: 'quantitative' }, y2: { field: 'high' } },
    },
    zero,
  ];
}
