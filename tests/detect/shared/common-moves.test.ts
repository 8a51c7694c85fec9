import { expect, test } from 'vitest';
import { isCommonMove, runningEdgesOf } from '../../../src/detect/shared/moves/common-moves.js';
import type { Episode } from '../../../src/model/detector.js';
import { DAY_MS, evidenceOf, HOUR_MS, MINUTE_MS, MONDAY_MS, zoneLog, zoneOfLog } from '../../make/zone-log.js';

const stepMs = MONDAY_MS + DAY_MS + 10 * HOUR_MS;
const step: Episode = {
  kind: 'settled-step',
  zone: 0,
  startMs: stepMs - MINUTE_MS,
  endMs: stepMs,
  facts: { stepDegC: 5, fullPowerDegC: 20 },
};

/** Four zones that are read so often; `moving` of them show 5 °C more from the step on. */
function plantOf(everyS: number, moving: number) {
  const logs = [0, 1, 2, 3].map((index) =>
    zoneLog({ seed: index + 1, everyS, days: 2 }).map((sample) => ({
      ...sample,
      degC: sample.degC! + (index < moving && sample.timeMs >= stepMs ? 5 : 0),
      running: 1,
    })),
  );
  return evidenceOf(logs, { zones: logs.map((_, index) => zoneOfLog(index, { samplingMs: everyS * 1000 })) });
}

test.each([30, 60, 120])(
  'a step that the peers take along is the machine’s, one alone is not, read every %i s',
  (everyS) => {
    const shared = plantOf(everyS, 4);
    expect(isCommonMove(shared, shared.zones[0]!, step)).toBe(true);
    const alone = plantOf(everyS, 1);
    expect(isCommonMove(alone, alone.zones[0]!, step)).toBe(false);
  },
);

test.each([60, 120])('sees each start and stop of the machine, read every %i s', (everyS) => {
  const log = zoneLog({ everyS, days: 2 });
  const changes = log
    .filter((sample, i) => i > 0 && sample.running !== log[i - 1]!.running)
    .map(({ timeMs }) => timeMs);
  const evidence = evidenceOf([log], { zones: [zoneOfLog(0, { samplingMs: everyS * 1000 })] });
  expect(runningEdgesOf(evidence)[0]).toEqual(changes);
});
