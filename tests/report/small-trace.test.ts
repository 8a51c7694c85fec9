import { expect, test } from 'vitest';
import { smallTrace } from '../../src/report/screens/small-trace.js';
import { madeFindings, madeZone } from '../make/made-findings.js';

const hour = 3_600_000;
const startMs = Date.parse('2026-03-02T00:00:00Z');
const iso = (hours: number) => new Date(startMs + hours * hour).toISOString();
const findings = madeFindings(iso(0), iso(90), []);
const nothing = Array.from({ length: 90 }, () => null);
const trace = {
  timeMs: Array.from({ length: 90 }, (_, i) => startMs + i * hour),
  minDegC: Array.from({ length: 90 }, (_, i) => (i === 50 ? null : i < 45 ? 20 : 180)),
  maxDegC: Array.from({ length: 90 }, (_, i) => (i === 50 ? null : i < 45 ? 21 : 182)),
  setpointDegC: nothing,
  outputPercent: nothing,
  runningShare: nothing,
};

/** Paths of the curve and the faults, a list of strokes each. */
function strokesOf(zone: Parameters<typeof smallTrace>[0]): string[][] {
  const markup = String(smallTrace(zone, findings));
  return [...markup.matchAll(/ d="([^"]*)"/g)].map((path) => path[1]!.split('M').slice(1));
}

test('a stroke for every place that holds a reading: cold low, hot high', () => {
  const [band] = strokesOf(madeZone('Zone 1', { trace }));
  expect(band).toHaveLength(89);
  expect(band![0]).toBe('0 29V28');
  expect(band!.at(-1)).toBe('178 6V5');
});

test('faults lie above where they were, those on one pixel once', () => {
  const mark = (from: number, to: number) => ({ start: iso(from), end: iso(to), kind: 'open' });
  const [, faults] = strokesOf(
    madeZone('Zone 1', { trace, faultMarks: [mark(11, 11.01), mark(11.02, 11.03), mark(45, 56)] }),
  );
  expect(faults).toEqual(['22 2.5h1', '90 2.5h22']);
});

test('no curve without a trace', () => {
  expect(smallTrace(madeZone('Zone 1', { trace: null }), findings)).toBeNull();
});
