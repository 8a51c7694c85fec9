import type { TopLevelSpec } from 'vega-lite';
import type { ZoneChartData } from '../embed/chart-data.js';
import { unpackMarks, unpackPoints } from '../embed/pack-lists.js';
import { chartConfig, dayAxis, inUnit, unitText, type Look } from './look.js';
import { repairMarks } from './repair-marks.js';

const heightPx = 190;

/** More points than this are drawn smaller, so that they can be told apart. */
const manySoaks = 25;

/** The axis reaches this far beyond the tolerance, so that the band has an edge to be seen. */
const beyondTolerance = 1.35;

/** Cold reading against the neighbours, soak by soak, with the sensor's own tolerance as a band. */
export function soaksChart(data: ZoneChartData, look: Look): TopLevelSpec {
  const { soaks, toleranceDegC } = data;
  const repairsMs = unpackMarks(data.repairs).map(({ fromMs }) => fromMs);
  const values = unpackPoints(soaks).map(({ timeMs, offsetDegC, plusMinusDegC }) => ({
    t: timeMs,
    life: repairsMs.filter((repairMs) => repairMs <= timeMs).length,
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
    height: heightPx,
    data: { values },
    layer: [
      ...toleranceLayers(toleranceDegC, look),
      {
        mark: { type: 'line', color: look.reading, strokeWidth: 1.5 },
        encoding: { x, y, detail: { field: 'life', type: 'nominal' } }, // no line from one sensor to the next
      },
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
      ...repairMarks(data, look, heightPx),
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
