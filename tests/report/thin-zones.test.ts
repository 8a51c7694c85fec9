import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Trace, ZoneFinding } from '../../src/model/findings.js';
import { thinTrace } from '../../src/report/embed/thin-trace.js';
import { thinZones } from '../../src/report/embed/thin-zones.js';
import { manyFindings } from '../make/report/findings.js';

const column = (length: number) =>
  fc.array(fc.option(fc.integer({ min: -50, max: 900 })), { minLength: length, maxLength: length });
const traces = fc.integer({ min: 1, max: 60 }).chain((length) =>
  fc
    .record({
      ...{ minDegC: column(length), maxDegC: column(length), setpointDegC: column(length) },
      ...{ outputPercent: column(length), runningShare: column(length) },
      badCount: fc.array(fc.nat(9), { minLength: length, maxLength: length }),
    })
    .map((columns): Trace => ({ timeMs: Array.from({ length }, (_, i) => i * 60_000), ...columns })),
);
const known = (values: readonly (number | null)[]) => values.filter((value) => value !== null);
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

describe('a trace with fewer places', () => {
  test('keeps every extreme, every bad sample and its beginning, whatever it holds', () => {
    fc.assert(
      fc.property(traces, fc.integer({ min: 1, max: 20 }), (trace, most) => {
        const thin = thinTrace(trace, most);
        for (const name of ['minDegC', 'maxDegC', 'setpointDegC', 'outputPercent', 'runningShare', 'badCount'] as const)
          expect(thin[name]).toHaveLength(thin.timeMs.length);
        expect(thin.timeMs.length).toBeLessThanOrEqual(most);
        expect(thin.timeMs[0]).toBe(0);
        expect(Math.min(...known(thin.minDegC))).toBe(Math.min(...known(trace.minDegC)));
        expect(Math.max(...known(thin.maxDegC))).toBe(Math.max(...known(trace.maxDegC)));
        expect(sum(thin.badCount!)).toBe(sum(trace.badCount!));
      }),
    );
  });

  test('comes back as it is where it has no more places', () => {
    const trace = manyFindings(1).zones[0]!.trace!;
    expect(thinTrace(trace, trace.timeMs.length)).toBe(trace);
  });
});

describe('the zones of a page', () => {
  const whole: ZoneFinding[] = manyFindings(200).zones.map((zone, i) => ({
    ...zone,
    status: i < 3 ? 'faulty' : 'healthy',
  }));
  const places = (zones: readonly ZoneFinding[]) => zones.map(({ trace }) => trace!.timeMs.length);

  test('up to 24 keep all places', () => {
    expect(places(thinZones(whole.slice(0, 24)))).toEqual(places(whole.slice(0, 24)));
  });

  test('of 200 those that need somebody keep all, the healthy ones get coarser, the newest duty stays', () => {
    const thin = thinZones(whole);
    expect(places(thin).slice(0, 3)).toEqual(places(whole).slice(0, 3));
    expect(Math.max(...places(thin).slice(3))).toBeLessThan(300);
    thin.forEach(({ duty, soaks }, i) => {
      expect(duty.at(-1)).toBe(whole[i]!.duty.at(-1));
      expect(soaks.at(-1)).toBe(whole[i]!.soaks.at(-1));
    });
  });
});
