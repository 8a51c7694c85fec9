/// <reference lib="dom" />
import type { ZoneChartData } from '../embed/chart-data.js';
import { unpackPoints } from '../embed/pack-lists.js';
import { dataTable } from '../screens/figure.js';
import { clockOf } from '../text/clock.js';
import type { Html } from '../text/html.js';
import { withUnit } from '../text/numbers.js';
import { difference, signed, temperatureHtml } from '../text/phrase.js';

/** The charts' times are the plant's wall clock written as UTC. */
const clock = clockOf('UTC');

/** Tables of a zone's charts by the chart's name. Hundreds of rows a zone: made when asked for, to keep the page small. */
const tables: Readonly<Record<string, (data: ZoneChartData) => Html>> = {
  soaks: ({ soaks }) =>
    dataTable(
      ['Soak', 'Offset', 'Plus or minus'],
      unpackPoints(soaks).map(({ timeMs, offsetDegC, plusMinusDegC }) => [
        clock.dateTime(timeMs),
        temperatureHtml(signed(offsetDegC, 2)),
        temperatureHtml(difference(plusMinusDegC, 2)),
      ]),
    ),
  duty: ({ duty }) =>
    dataTable(
      ['Settled stretch', 'Output beyond, of full', 'If the sensor explains it'],
      unpackPoints(duty).map(({ timeMs, residualDegC, residualPercent }) => [
        clock.dateTime(timeMs),
        withUnit(residualPercent, '%', 2),
        temperatureHtml(signed(residualDegC, 2)),
      ]),
    ),
};

/** Fills a table of numbers when it is opened for the first time. */
export function listenForNumbers(): void {
  document.addEventListener(
    'toggle',
    (event) => {
      const details = event.target as HTMLDetailsElement;
      const place = details.querySelector<HTMLElement>('[data-numbers]');
      if (!details.open || !place || place.childElementCount > 0) return;
      const block = document.getElementById(`data-${details.closest('.view')?.id ?? ''}`);
      const make = tables[place.dataset['numbers'] ?? ''];
      if (block && make) place.innerHTML = make(JSON.parse(block.textContent) as ZoneChartData).markup;
    },
    true, // "toggle" does not rise by itself
  );
}
