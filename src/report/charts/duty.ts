import type { TopLevelSpec } from 'vega-lite';
import type { ZoneChartData } from '../embed/chart-data.js';
import { chartConfig, inUnit, tickCount, unitText, type Look } from './look.js';

/** What the output at rest says the reading is off by, one point per settled stretch. */
export function dutyChart({ duty }: ZoneChartData, look: Look): TopLevelSpec {
  const values = duty.map(({ timeMs, residualDegC, residualPercent }) => ({
    t: timeMs,
    residual: inUnit(residualDegC, 'difference', look),
    percent: residualPercent,
  }));
  const x = {
    field: 't',
    type: 'temporal',
    scale: { type: 'utc' },
    axis: { title: null, tickCount: tickCount(look), format: '%-d %b' },
  };
  return {
    width: look.widthPx,
    height: 150,
    data: { values },
    layer: [
      {
        data: { values: [{}] },
        mark: { type: 'rule', color: look.ink, strokeWidth: 1 },
        encoding: { y: { datum: 0 } },
      },
      {
        mark: { type: 'point', shape: 'square', filled: true, size: 45, color: look.output },
        encoding: {
          x,
          y: { field: 'residual', type: 'quantitative', title: `Off by, ${unitText(look)}` },
          tooltip: [
            { field: 't', type: 'temporal', title: 'Stretch', format: '%a %-d %b %H:%M' },
            { field: 'residual', type: 'quantitative', title: `As offset, ${unitText(look)}`, format: '+.2f' },
            { field: 'percent', type: 'quantitative', title: 'Output, % of full', format: '+.2f' },
          ],
        },
      },
    ],
    config: chartConfig(look),
  } as TopLevelSpec;
}
