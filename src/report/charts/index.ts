import type { TopLevelSpec } from 'vega-lite';
import type { PlantChartData, ZoneChartData } from '../embed/chart-data.js';
import { dutyChart } from './duty.js';
import { alarmsChart, paretoChart, weeksChart } from './losses.js';
import type { Look } from './look.js';
import { opensChart } from './opens.js';
import { soaksChart } from './soaks.js';
import { traceChart } from './trace.js';

/** Charts of a zone's page by the name that stands in the page. */
export const zoneCharts: Readonly<Record<string, (data: ZoneChartData, look: Look) => TopLevelSpec>> = {
  trace: traceChart,
  soaks: soaksChart,
  duty: dutyChart,
  opens: opensChart,
};

/** Charts of the whole plant by the name that stands in the page. */
export const plantCharts: Readonly<Record<string, (data: PlantChartData, look: Look) => TopLevelSpec>> = {
  pareto: paretoChart,
  alarms: alarmsChart,
  weeks: weeksChart,
};
