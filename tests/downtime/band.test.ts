import { expect, test } from 'vitest';
import { deviationOn } from '../../src/downtime/band.js';
import { emptyZoneDigest } from '../../src/digest/zone-digest.js';
import { makeZone } from '../make/blocks.js';

const minutes = 2000;
/** One zone without set point; how far the tool takes it to be from where it belongs, by minute. */
function awayOf(
  readingDegC: (minute: number) => number,
  running: (minute: number) => number,
  outputPercent: (minute: number) => number = () => NaN,
) {
  const digest = emptyZoneDigest(minutes);
  for (let i = 0; i < minutes; i++) {
    digest.meanDegC[i] = readingDegC(i);
    digest.runningShare[i] = running(i);
    digest.setpointDegC[i] = NaN;
    digest.outputPercent[i] = outputPercent(i);
  }
  const zone = makeZone({ index: 0, name: 'Zone 1' });
  const plant = { startMs: 0, periodMs: 60_000, length: minutes, zones: [digest] };
  const deviation = deviationOn({ name: 'M1', zones: [zone] }, plant);
  return (minute: number) => deviation(0, minute);
}

test('heat stuck on for most of the log is not taken for the set point', () => {
  // held at 198 °C for 600 min, then anywhere between 203 and 263 °C
  const away = awayOf(
    (i) => (i < 600 ? 198 : 233 + 30 * Math.sin(i / 40)),
    () => 1,
  );
  expect(away(100)).toBeCloseTo(0, 3);
  expect(away(900)).toBeCloseTo(35 + 30 * Math.sin(900 / 40), 3);
});

test('a long time at standby, standing, is no level at which the machine runs', () => {
  const away = awayOf(
    (i) => (i < 1500 ? 140 : 180),
    (i) => (i < 1500 ? 0 : 1),
  );
  expect(away(1800)).toBeCloseTo(0, 3);
});

test('where no log says when it ran, the upper quarter of the hot time is the level', () => {
  const away = awayOf(
    (i) => (i < 1000 ? 140 : 180),
    () => NaN,
  );
  expect(away(1800)).toBeCloseTo(0, 3);
});

test('a reading that stands still while the output is at its stop is not where the zone belongs', () => {
  // held at 181 °C for 400 min, then stuck on at its highest, where the loop gives nothing
  const away = awayOf(
    (i) => (i < 400 ? 181 : 257),
    () => 1,
    (i) => (i < 400 ? 26 : 0),
  );
  expect(away(100)).toBeCloseTo(0, 3);
  expect(away(900)).toBeCloseTo(76, 3);
});
