import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { attributeDowntime } from '../../src/downtime/attribute-downtime.js';
import { attributeStop } from '../../src/downtime/attribute-stop.js';
import { downtimeDefaults } from '../../src/downtime/settings.js';
import { meanTimeBetween } from '../../src/maths/mean-time-between.js';
import { AlarmList } from '../../src/model/alarm-list.js';
import type { AlarmSpan, StopEntry } from '../../src/model/alarm.js';
import type { PlantDigest, ZoneDigest } from '../../src/model/digest.js';
import type { PlantFile } from '../../src/model/plant-file.js';
import type { Zone } from '../../src/model/zone.js';

const minute = 60_000;
const makeZone = (index: number, machine = 'M1'): Zone => ({
  index,
  name: `Zone ${index + 1}`,
  machine,
  sensor: null,
  wires: null,
  card: null,
  heaterW: null,
  toleranceClass: null,
  has: { reading: true, setpoint: true, output: true, running: true },
  samplingMs: 10_000,
  resolutionDegC: 0.1,
});
const zones = [makeZone(0), makeZone(1), makeZone(2)];

/** Heats on all the time; `running` per minute, or NaN where the log does not say. */
function makeDigest(
  length: number,
  running: (i: number) => number,
  count = 2,
  setpoint: (i: number) => number = () => 180,
): PlantDigest {
  const column = (value: (i: number) => number) => Float32Array.from({ length }, (_, i) => value(i));
  const zone = (): ZoneDigest => ({
    readingCount: new Uint16Array(length).fill(6),
    badCount: new Uint16Array(length),
    firstDegC: column(() => 180),
    lastDegC: column(() => 180),
    minDegC: column(() => 180),
    maxDegC: column(() => 180),
    meanDegC: column(() => 180),
    spreadDegC: column(() => 0),
    outputPercent: column(() => 30),
    setpointDegC: column(setpoint),
    runningShare: column(running),
  });
  return { startMs: 0, periodMs: minute, length, zones: Array.from({ length: count }, zone) };
}
const alarm = (fromMin: number, toMin: number, more: Partial<AlarmSpan> = {}): AlarmSpan => ({
  startMs: fromMin * minute,
  endMs: toMin * minute,
  acknowledgedMs: NaN,
  source: 'x',
  message: 'Guard open',
  kind: 'machine-stop',
  zone: null,
  machine: 'M1',
  priority: null,
  ...more,
});
const open = (fromMin: number, toMin: number, zone = 0) =>
  alarm(fromMin, toMin, { zone, kind: 'sensor-open', message: 'open circuit' });
const run = (digest: PlantDigest, alarms: AlarmSpan[], more: { stops?: StopEntry[]; plant?: PlantFile } = {}) =>
  attributeDowntime({
    zones: zones.slice(0, digest.zones.length),
    digest,
    alarms: AlarmList.of(alarms),
    stops: more.stops ?? [],
    faults: digest.zones.map(() => []),
    plant: more.plant ?? { zones: [] },
  });

describe('with a running column', () => {
  test('a stop is the zone fault’s until the alarm is gone, then restart', () => {
    const digest = makeDigest(300, (i) => (i >= 100 && i < 140 ? 0 : 1));
    const { findings, minutesByZone } = run(digest, [open(100, 130)]);
    expect(minutesByZone).toEqual([30, 0]);
    expect(findings).toMatchObject({ stoppedMinutes: 40, zoneFaultMinutes: 30, restartMinutes: 10, unknownMinutes: 0 });
  });
  test('first out, first counted: a jam before the open keeps its own time', () => {
    const digest = makeDigest(300, (i) => (i >= 100 && i < 140 ? 0 : 1));
    const { minutesByZone, findings } = run(digest, [alarm(100, 112), open(105, 140)]);
    expect(minutesByZone).toEqual([28, 0]);
    expect(findings.otherMinutes).toBe(12);
  });
  test('two zones at once: counted once', () => {
    const digest = makeDigest(300, (i) => (i >= 100 && i < 120 ? 0 : 1));
    expect(run(digest, [open(100, 120, 1), open(100, 120, 0)]).minutesByZone).toEqual([20, 0]);
  });
  test('a stop without any cause is unknown; an alarm that stood while it ran is no cause of a stop with one', () => {
    const digest = makeDigest(300, (i) => ((i >= 50 && i < 60) || (i >= 200 && i < 210) ? 0 : 1));
    const { findings, minutesByZone } = run(digest, [open(150, 260), alarm(200, 210)]);
    expect(minutesByZone).toEqual([0, 0]);
    expect(findings.unknownMinutes).toBe(10);
    expect(findings.otherMinutes).toBe(10);
  });
  test('people run on with a standing fault: micro-stops beside it are not its, the stop in which it ends is', () => {
    const stops = [
      [100, 130],
      [200, 204],
      [250, 255],
      [400, 430],
    ] as const; // the fault stands from 100 to 420
    const digest = makeDigest(600, (i) => (stops.some(([from, to]) => i >= from && i < to) ? 0 : 1));
    const { findings, minutesByZone } = run(digest, [open(100, 420)]);
    expect(minutesByZone).toEqual([30 + 20, 0]);
    expect(findings).toMatchObject({ unknownMinutes: 4 + 5, restartMinutes: 10 });
  });
  test('too hot is a cause where the running column proves the stop', () => {
    const digest = makeDigest(300, (i) => (i >= 100 && i < 130 ? 0 : 1));
    const hot = { ...open(99, 130), kind: 'temperature-high' as const };
    expect(run(digest, [hot]).minutesByZone).toEqual([30, 0]);
    expect(
      run(
        makeDigest(300, () => NaN),
        [hot],
      ).minutesByZone,
    ).toEqual([0, 0]);
  });
  test('an alarm with words unknown names a stop that nothing else explains, and proves none', () => {
    const digest = makeDigest(300, (i) => (i >= 100 && i < 130 ? 0 : 1));
    const unplaced = { ...alarm(100, 125), kind: 'other' as const, message: 'Lidding end' };
    const { findings } = run(digest, [unplaced]);
    expect(findings.pareto.map(({ name, minutes }) => [name, minutes])).toEqual([['Lidding end', 30]]);
    expect(run(digest, [unplaced, open(100, 130)]).minutesByZone).toEqual([30, 0]);
    const early = { ...unplaced, startMs: 90 * minute, endMs: 130 * minute }; // the machine ran with it
    expect(run(digest, [early]).findings.unknownMinutes).toBe(30);
    const blind = makeDigest(300, () => NaN);
    expect(run(blind, [unplaced]).findings.stoppedMinutes).toBe(0);
  });
  test('a row every two minutes holds its state: a stop is one stop, not half of its minutes', () => {
    const digest = makeDigest(300, (i) => (i % 2 > 0 ? NaN : i >= 100 && i < 140 ? 0 : 1));
    const slow = attributeDowntime({
      zones: zones.slice(0, 2).map((zone) => ({ ...zone, samplingMs: 120_000 })),
      digest,
      alarms: AlarmList.of([open(100, 140)]),
      stops: [],
      faults: [[], []],
      plant: { zones: [] },
    });
    expect(slow.findings).toMatchObject({ stoppedMinutes: 40, zoneFaultMinutes: 40 });
    expect(slow.findings.byZone[0]!.stops).toBe(1);
  });
  describe('no alarm log: the zone that is out of its band alone', () => {
    /** Three zones; `awayDegC` is added to a zone's reading, and no alarm tells of it. */
    const away = (running: (i: number) => number, awayDegC: (zone: number, i: number) => number) => {
      const digest = makeDigest(400, running, 3);
      const moved = digest.zones.map((zone, z) => ({
        ...zone,
        meanDegC: zone.meanDegC.map((degC, i) => degC + awayDegC(z, i)),
      }));
      return { ...digest, zones: moved };
    };
    const stands = (from: number, to: number) => (i: number) => (i >= from && i < to ? 0 : 1);
    test.each([30, -30])('has the stop that follows, until it is back (%i °C)', (degC) => {
      const digest = away(stands(100, 160), (z, i) => (z === 1 && i >= 95 && i < 155 ? degC : 0));
      const { minutesByZone, findings } = run(digest, []);
      expect(minutesByZone).toEqual([0, 55, 0]);
      expect(findings.restartMinutes).toBe(5);
    });
    test('has none where all are out together, where an alarm explains the stop, or where the machine ran with it', () => {
      expect(
        run(
          away(stands(100, 160), (_, i) => (i >= 95 && i < 155 ? -30 : 0)),
          [],
        ).minutesByZone,
      ).toEqual([0, 0, 0]);
      const alone = (z: number, i: number) => (z === 1 && i >= 95 && i < 155 ? 30 : 0);
      expect(run(away(stands(100, 160), alone), [alarm(100, 160)]).minutesByZone).toEqual([0, 0, 0]);
      const forLong = (z: number, i: number) => (z === 1 && i >= 20 ? 30 : 0);
      expect(run(away(stands(100, 160), forLong), []).minutesByZone).toEqual([0, 0, 0]);
    });
    test('has the stop of a start in which it alone stays cold, also when the machine cools down as a whole later', () => {
      const cold = (z: number, i: number) => (i < 60 || i >= 350 || z === 1 ? -150 : 0);
      const { minutesByZone } = run(away(stands(0, 180), cold), []);
      expect(minutesByZone).toEqual([0, 120, 0]); // from the others' heat at 60 until people run on without it
    });
    test('is not the zone that falls first when all of them fall', () => {
      const falls = (z: number, i: number) => (i >= 97 + 3 * z && i < 155 ? -30 : 0);
      expect(run(away(stands(100, 160), falls), []).minutesByZone).toEqual([0, 0, 0]);
    });
  });
  test('heats off is planned', () => {
    const off = (i: number) => i >= 200;
    const digest = makeDigest(
      400,
      (i) => (off(i) ? 0 : 1),
      2,
      (i) => (off(i) ? 0 : 180),
    );
    const { findings } = run(digest, [open(250, 300)]);
    expect(findings).toMatchObject({ plannedMinutes: 200, zoneFaultMinutes: 0 });
  });
  describe('too cold', () => {
    const cold = (fromMin: number, toMin: number, zone = 0) => ({
      ...open(fromMin, toMin, zone),
      kind: 'deviation-low' as const,
    });
    /** Three zones; each is `fallDegC` below its set point in the minutes given for it. */
    const cooled = (running: (i: number) => number, fallDegC: (zone: number, i: number) => number): PlantDigest => {
      const digest = makeDigest(300, running, 3);
      const zonesOf = digest.zones.map((zone, z) => ({
        ...zone,
        meanDegC: zone.meanDegC.map((degC, i) => degC - fallDegC(z, i)),
      }));
      return { ...digest, zones: zonesOf };
    };
    const stands = (from: number, to: number) => (i: number) => (i >= from && i < to ? 0 : 1);
    test('alone it is the zone’s own stop', () => {
      const digest = cooled(stands(100, 110), (z, i) => (z === 0 && i >= 98 && i < 112 ? 12 : 0));
      expect(run(digest, [cold(100, 110)]).minutesByZone).toEqual([10, 0, 0]);
    });
    test('with the whole machine it is nobody’s fault, whoever alarms first', () => {
      const digest = cooled(stands(100, 130), (z, i) => (i >= 100 + 2 * z && i < 132 ? 20 : 0));
      const { findings, minutesByZone } = run(digest, [cold(100, 130), cold(103, 130, 1), cold(105, 131, 2)]);
      expect(minutesByZone).toEqual([0, 0, 0]);
      expect(findings.otherMinutes).toBe(30);
      expect(findings.pareto[0]!.name).toBe('several zones too cold');
    });
    test('the slowest zone of a machine is no fault, until it takes much longer than it usually does', () => {
      const falls = [0, 60, 120, 180, 240].map((from) => ({ from, own: 40 }));
      const slow = (last: number) => falls.map((fall, i) => (i === 4 ? { ...fall, own: last } : fall));
      const log = (all: typeof falls) =>
        cooled(
          (i) => (all.some(({ from, own }) => i >= from + 5 && i < from + own) ? 0 : 1),
          (z, i) => (all.some(({ from, own }) => i >= from + 4 && i < from + (z === 0 ? own : 20)) ? 20 : 0),
        );
      const alarms = (all: typeof falls) => all.map(({ from, own }) => cold(from + 5, from + own));
      const lostMin = (last: number) => run(log(slow(last)), alarms(slow(last))).minutesByZone[0]!;
      expect(lostMin(40)).toBe(0); // 20 min behind the others each time
      expect(lostMin(55)).toBe(35);
    });
    test('a zone that leaves its band for some minutes while the machine stands is on its way, and no cause', () => {
      const digest = (ownMin: number) =>
        cooled(stands(100, 140), (z, i) => (z === 0 && i >= 120 && i < 120 + ownMin ? 12 : 0));
      const lost = (ownMin: number) => run(digest(ownMin), [cold(120, 120 + ownMin)]).findings;
      const limitMin = downtimeDefaults.slowestHeatUpMs / minute;
      expect(lost(limitMin - 1)).toMatchObject({ zoneFaultMinutes: 0, unknownMinutes: 40 });
      expect(lost(limitMin + 10).zoneFaultMinutes).toBe(limitMin + 10);
      // the same minutes while it runs are the zone's, for then the zone stopped it
      const running = cooled(stands(100, 109), (z, i) => (z === 0 && i >= 99 && i < 109 ? 12 : 0));
      expect(run(running, [cold(100, 109)]).minutesByZone[0]).toBe(9);
    });
    test('the last to come up is only slow, unless it stays cold long after the others', () => {
      const until = (own: number) =>
        cooled(stands(100, own), (z, i) => (i >= 99 && i < (z === 0 ? own : 130) ? 20 : 0));
      expect(run(until(134), [cold(100, 134)]).minutesByZone).toEqual([0, 0, 0]);
      expect(run(until(160), [cold(100, 160)]).minutesByZone).toEqual([30, 0, 0]);
    });
  });
  test('a machine that never cools stands in production time, whatever its set point was moved to', () => {
    const digest = makeDigest(400, (i) => (i >= 100 && i < 140 ? 0 : 1));
    const zonesOf = digest.zones.map((zone) => ({
      ...zone,
      meanDegC: zone.meanDegC.map((_, i) => (i < 250 ? 163 : 180)),
      setpointDegC: zone.setpointDegC.fill(NaN),
    }));
    expect(run({ ...digest, zones: zonesOf }, []).findings).toMatchObject({ plannedMinutes: 0, unknownMinutes: 40 });
  });
  test('heats off with the set point left on is planned: no output, and cold', () => {
    const off = (i: number) => i >= 200;
    const digest = makeDigest(400, (i) => (off(i) ? 0 : 1));
    const zonesOf = digest.zones.map((zone) => ({
      ...zone,
      meanDegC: zone.meanDegC.map((degC, i) => (off(i) ? 25 : degC)),
      outputPercent: zone.outputPercent.map((percent, i) => (off(i) ? 0 : percent)),
    }));
    expect(run({ ...digest, zones: zonesOf }, []).findings).toMatchObject({ plannedMinutes: 200, unknownMinutes: 0 });
  });
  test('cost by machine, from plant.yaml', () => {
    const digest = makeDigest(300, (i) => (i >= 100 && i < 160 ? 0 : 1));
    const plant = { zones: [], costPerHour: { M1: 500 }, currency: 'EUR' };
    expect(run(digest, [open(100, 160)], { plant }).findings).toMatchObject({ cost: 500, currency: 'EUR' });
  });
});

describe('without a running column', () => {
  const blind = makeDigest(300, () => NaN);
  test('the input alarm in production time is the stop; the note says so', () => {
    const { findings, minutesByZone } = run(blind, [open(100, 130)]);
    expect(minutesByZone).toEqual([30, 0]);
    expect(findings.from).toEqual(['alarms']);
    expect(findings.notes.join(' ')).toContain('M1');
  });
  test('a trip costs its reset; alarms shorter than the on-delay do not trip', () => {
    const tripMin = downtimeDefaults.tripMs / minute;
    expect(run(blind, [open(100, 100 + tripMin * 1.1)]).minutesByZone[0]).toBeCloseTo(
      downtimeDefaults.resetMs / minute,
    );
    expect(run(blind, [open(100, 100 + tripMin * 0.9)]).minutesByZone[0]).toBe(0);
  });
  describe('the machine’s own alarms tell whether it ran', () => {
    const long = makeDigest(1200, () => NaN);
    const jams = (from: number, to: number) =>
      Array.from({ length: (to - from) / 20 }, (_, i) => alarm(from + 20 * i, from + 20 * i + 1));
    const hot = (from: number, to: number) => ({ ...open(from, to), kind: 'temperature-high' as const });
    const inOrder = (alarms: AlarmSpan[]) => [...alarms].sort((a, b) => a.startMs - b.startMs);
    test('an open that stands on while it jams as ever stopped it only until it ran again', () => {
      const { minutesByZone } = run(long, inOrder([...jams(10, 410), open(420, 1190), ...jams(550, 1190)]));
      // the wait for the first jam, at 550, is the mean gap: 1200 min ÷ 52 jams = 23 min
      expect(minutesByZone[0]).toBeCloseTo(550 - 1200 / 52 - 420, 0);
    });
    test('one or two alarms while it stands come from people at work on it', () => {
      const { minutesByZone } = run(long, inOrder([...jams(10, 410), open(420, 1190), alarm(700, 700)]));
      expect(minutesByZone[0]).toBe(770);
    });
    test('too hot stopped it only where it falls silent for long', () => {
      const silent = inOrder([...jams(10, 410), hot(420, 700), ...jams(700, 1180)]);
      expect(run(long, silent).minutesByZone[0]).toBeGreaterThan(240);
      expect(run(long, inOrder([...jams(10, 1190), hot(425, 700)])).minutesByZone[0]).toBe(0);
    });
  });
  test('a stop list says what was planned, and which zone a stop was for', () => {
    const stop = (from: number, to: number, more: Partial<StopEntry>): StopEntry => ({
      ...{ startMs: from * minute, endMs: to * minute, machine: null, zone: null, reason: 'r', isPlanned: false },
      ...more,
    });
    const stops = [
      stop(60, 90, { isPlanned: true }),
      stop(120, 140, { reason: 'Jam' }),
      stop(200, 210, { zone: 0 }),
      stop(205, 230, { isPlanned: true }),
    ];
    const { findings, minutesByZone } = run(blind, [], { stops });
    expect(findings).toMatchObject({ plannedMinutes: 30 + 25, otherMinutes: 20, zoneFaultMinutes: 5 });
    expect(minutesByZone[0]).toBe(5);
    expect(findings.notes.join()).toContain('beside those of the stop list');
  });
  test('no running, no alarms: nothing is said to have stopped', () => {
    const { findings } = run(blind, []);
    expect(findings).toMatchObject({ from: [], stoppedMinutes: 0 });
    expect(findings.notes.length).toBeGreaterThan(0);
  });
});

test('every stopped minute is in exactly one bucket, whatever the alarms and stops', () => {
  const spans = fc.array(
    fc.tuple(fc.integer({ min: 0, max: 590 }), fc.integer({ min: 0, max: 120 }), fc.integer({ min: -1, max: 1 })),
    { maxLength: 25 },
  );
  const shares = fc.array(fc.constantFrom(0, 1, 1, 0.4, NaN), { minLength: 600, maxLength: 600 });
  fc.assert(
    fc.property(spans, shares, fc.boolean(), (drawn, running, isBlind) => {
      const alarms = drawn
        .map(([from, length, zone]) => (zone < 0 ? alarm(from, from + length) : open(from, from + length, zone)))
        .sort((a, b) => a.startMs - b.startMs);
      const stops = drawn.slice(0, 3).map(([from, length, zone]) => ({
        startMs: from * minute,
        endMs: (from + length + 1) * minute,
        machine: 'M1',
        zone: zone < 0 ? null : zone,
        reason: 'r',
        isPlanned: length % 2 === 0,
      }));
      const { findings, minutesByZone } = run(
        makeDigest(600, (i) => (isBlind ? NaN : running[i]!)),
        alarms,
        { stops },
      );
      const { stoppedMinutes, plannedMinutes, zoneFaultMinutes, otherMinutes, unknownMinutes } = findings;
      const sum = (rows: readonly { minutes: number }[]) => rows.reduce((total, row) => total + row.minutes, 0);
      expect(plannedMinutes + zoneFaultMinutes + otherMinutes + unknownMinutes).toBeCloseTo(stoppedMinutes, 6);
      expect(sum(findings.byMachine)).toBeCloseTo(stoppedMinutes, 6);
      expect(sum(findings.byWeek)).toBeCloseTo(stoppedMinutes, 6);
      expect(sum(findings.pareto)).toBeCloseTo(stoppedMinutes - plannedMinutes, 6);
      expect(sum(findings.byZone)).toBeCloseTo(zoneFaultMinutes, 6);
      expect(minutesByZone.reduce((a, b) => a + b, 0)).toBeCloseTo(zoneFaultMinutes, 6);
      expect(stoppedMinutes).toBeLessThanOrEqual(600 + 1e-6);
    }),
    { numRuns: 60, seed: 7 },
  );
});

test('pieces of a stop cover it once, in order', () => {
  const claim = fc.record({
    startMs: fc.integer({ min: 0, max: 4000 }),
    length: fc.integer({ min: 0, max: 2000 }),
    zone: fc.constantFrom(null, 0, 1),
    isQuiet: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(claim, { maxLength: 12 }), (drawn) => {
      const claims = drawn
        .map(({ startMs, length, zone, isQuiet }) => ({
          startMs: startMs * 1000,
          endMs: (startMs + length) * 1000,
          faultEndMs: (startMs + length) * 1000,
          name: 'n',
          zone,
          isQuiet,
        }))
        .sort((a, b) => a.startMs - b.startMs);
      const stop = { start: 1_000_000, end: 3_000_000 };
      const pieces = attributeStop(stop, claims, stop.start, downtimeDefaults);
      expect(pieces[0]!.start).toBe(stop.start);
      expect(pieces.at(-1)!.end).toBe(stop.end);
      pieces.slice(1).forEach((piece, i) => expect(piece.start).toBe(pieces[i]!.end));
    }),
    { numRuns: 300, seed: 11 },
  );
});

test('MTBF limits: NIST/SEMATECH e-Handbook 8.4.5.1, 800 h and 2 failures at 90 % give 400 h, 127 to 2251 h', () => {
  const limits = meanTimeBetween(800, 2, 0.9);
  expect([limits.mean, Math.round(limits.low), Math.round(limits.high)]).toEqual([400, 127, 2251]);
});

test('availability of 600 h with stops of 2 h and 3 h is 595/600 (arithmetic)', () => {
  const down = (i: number) => (i >= 6000 && i < 6120) || (i >= 20_000 && i < 20_180);
  const digest = makeDigest(36_000, (i) => (down(i) ? 0 : 1));
  const { findings } = run(digest, [open(6000, 6120), open(20_000, 20_180)]);
  const row = findings.reliability.find(({ name }) => name === 'M1')!;
  expect([row.operatingHours, row.failures, row.mtbfHours, row.mttrMinutes]).toEqual([595, 2, 297.5, 150]);
  expect(row.availability).toBeCloseTo(0.991667, 6);
});
