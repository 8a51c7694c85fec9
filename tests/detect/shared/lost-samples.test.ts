import { describe, expect, test } from 'vitest';
import { soaksOf } from '../../../src/detect/shared/cold/soaks.js';
import { maskOf } from '../../../src/detect/shared/readings/mask.js';
import { zoneState, zoneStatesOf } from '../../../src/detect/shared/readings/zone-state.js';
import type { Evidence } from '../../../src/model/detector.js';
import type { ZoneDigest } from '../../../src/model/digest.js';
import { heatedPlant } from '../../make/digests.js';
import { Random } from '../../make/random.js';

const plan = { days: 6, shift: { fromHour: 6, toHour: 22 }, seed: 3 };
const offsetDegC = (hours: number) => 0.03 * hours;
const whole = () => heatedPlant([{ offsetDegC }, {}, {}, {}], plan);

/** The same plant, in which single minutes lost their sample, or one of several. */
function with5PercentLost(isOnlyPart: boolean): Evidence {
  const evidence = whole();
  const random = new Random(7);
  for (const zone of evidence.digest.zones)
    for (let i = 0; i < evidence.digest.length; i++) if (random.chance(0.05)) lose(zone, i, isOnlyPart);
  return evidence;
}

function lose(zone: ZoneDigest, i: number, isOnlyPart: boolean): void {
  zone.badCount[i] = 1;
  if (isOnlyPart) return;
  zone.readingCount[i] = 0;
  for (const column of [zone.meanDegC, zone.minDegC, zone.maxDegC, zone.firstDegC, zone.lastDegC]) column[i] = NaN;
}

describe('one sample in twenty is lost', () => {
  test.each([
    ['the only one of its minute', false],
    ['one of several in its minute', true],
  ])('%s: as many cold looks, and the drift in them', (_, isOnlyPart) => {
    const [sound, lossy] = [soaksOf(whole(), 0), soaksOf(with5PercentLost(isOnlyPart), 0)];
    expect(lossy.unable).toBeNull();
    expect(lossy.points.length).toBe(sound.points.length);
    expect(lossy.points.at(-1)!.offsetDegC).toBeCloseTo(sound.points.at(-1)!.offsetDegC, 1);
  });

  test('what a zone does is told for nine minutes in ten of those told before', () => {
    const told = (evidence: Evidence) =>
      zoneStatesOf(evidence)[1]!.filter((state) => state !== zoneState.unknown).length;
    expect(told(with5PercentLost(false))).toBeGreaterThan(0.9 * told(whole()));
  });
});

test('a reading on its way to the end of its scale beside a lost sample is none of the zone', () => {
  const evidence = whole();
  const zone = evidence.digest.zones[1]!;
  const noon = 12 * 60;
  zone.badCount[noon] = 1;
  expect(maskOf(evidence)[1]![noon]).toBe(0);
  const leaving = whole();
  const moved = leaving.digest.zones[1]!;
  moved.badCount[noon] = 1;
  moved.maxDegC[noon] = moved.maxDegC[noon]! + 40;
  moved.meanDegC[noon] = moved.meanDegC[noon]! + 12;
  expect(maskOf(leaving)[1]![noon]).toBe(1);
});

test('after ten minutes without readings nobody knows what a zone does, until it has settled again', () => {
  const evidence = whole();
  const zone = evidence.digest.zones[1]!;
  const noon = 12 * 60;
  for (let i = noon; i < noon + 10; i++) lose(zone, i, false);
  const states = zoneStatesOf(evidence)[1]!;
  expect(states[noon + 2]).toBe(zoneState.settled);
  expect(states[noon + 8]).toBe(zoneState.unknown);
  expect(states[noon + 12]).toBe(zoneState.moving);
});
