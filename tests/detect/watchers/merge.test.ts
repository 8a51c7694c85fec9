import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { watchers } from '../../../src/detect/index.js';
import { ZoneFacts } from '../../../src/detect/shared/blocks/block-facts.js';
import type { Episode } from '../../../src/model/detector.js';
import { readingState } from '../../../src/model/sample-block.js';
import { makeBlocks, makeZone, type MadeSample } from '../../make/blocks.js';

const zone = makeZone({ samplingMs: 60_000, resolutionDegC: 0.1 });

/** A few minutes between levels, so that runs, jumps, spikes, holes and bad samples all come often. */
const anySample = fc.record({
  stepMs: fc.oneof({ weight: 12, arbitrary: fc.constant(60_000) }, { weight: 1, arbitrary: fc.constant(900_000) }),
  degC: fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(180, 180, 180, 180.1, 180.2) },
    { weight: 2, arbitrary: fc.constantFrom(20, 186, 230, 183.4) },
    { weight: 1, arbitrary: fc.integer({ min: 0, max: 3000 }).map((n) => n / 10) },
  ),
  state: fc.oneof(
    { weight: 14, arbitrary: fc.constant(readingState.good) },
    { weight: 2, arbitrary: fc.constantFrom(readingState.aboveScale, readingState.openText, readingState.blank) },
  ),
  repeat: fc.oneof({ weight: 5, arbitrary: fc.constant(1) }, { weight: 2, arbitrary: fc.integer({ min: 2, max: 40 }) }),
  output: fc.constantFrom(30, 30, 31, 0, 100),
  setpoint: fc.constantFrom(180, 180, 180, 180, 150),
  running: fc.constantFrom(1, 1, 1, 0, NaN),
});

const anyLog = fc.array(anySample, { minLength: 1, maxLength: 60 }).map((parts) => {
  let timeMs = Date.UTC(2026, 2, 2);
  return parts.flatMap((p) =>
    Array.from({ length: p.repeat }, (_, i): MadeSample => ({
      timeMs: (timeMs += i === 0 ? p.stepMs : 60_000),
      degC: p.state === readingState.openText ? NaN : p.state === readingState.aboveScale ? 3276.7 : p.degC,
      state: p.state,
      outputPercent: p.output,
      setpointDegC: p.setpoint,
      running: p.running,
    })),
  );
});

describe.each(watchers.map((watcher) => [watcher.meta.id, watcher] as const))('watcher %s', (_id, watcher) => {
  function stateOf(samples: readonly MadeSample[], cuts: readonly number[] = []): unknown {
    const state: unknown = watcher.start(zone, watcher.meta.defaults);
    const facts = new ZoneFacts(zone);
    for (const block of makeBlocks(samples, cuts)) watcher.take(state, block, facts.of(block));
    return state;
  }
  const episodesOf = (samples: readonly MadeSample[], cuts: readonly number[] = []): readonly Episode[] =>
    watcher.finish(stateOf(samples, cuts));

  test('sees the same however the log is cut into blocks', () => {
    fc.assert(
      fc.property(anyLog, fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 8 }), (samples, parts) => {
        const cuts = parts.map((part) => Math.floor(part * samples.length));
        expect(episodesOf(samples, cuts)).toEqual(episodesOf(samples));
      }),
      { numRuns: 200 },
    );
  });

  test('gives for two halves, merged, what the whole gives', () => {
    fc.assert(
      fc.property(anyLog, fc.double({ min: 0, max: 1, noNaN: true }), (samples, part) => {
        const cut = Math.floor(part * samples.length);
        const merged = watcher.merge(stateOf(samples.slice(0, cut)), stateOf(samples.slice(cut)));
        expect(watcher.finish(merged)).toEqual(episodesOf(samples));
      }),
      { numRuns: 400 },
    );
  });

  test('gives for four pieces, merged from either end, what the whole gives, and goes on taking blocks', () => {
    fc.assert(
      fc.property(
        anyLog,
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 }),
        (samples, parts) => {
          const edges = [0, ...parts.map((part) => Math.floor(part * samples.length)).sort((a, b) => a - b)];
          const states = edges.slice(0, 4).map((from, i) => stateOf(samples.slice(from, edges[i + 1])));
          const fromLeft = states.reduce((merged, state) => watcher.merge(merged, state));
          const fromRight = states.reduceRight((merged, state) => watcher.merge(state, merged));
          expect(watcher.finish(fromLeft)).toEqual(watcher.finish(fromRight));
          const facts = new ZoneFacts(zone);
          for (const block of makeBlocks(samples.slice(edges[4]), [])) watcher.take(fromLeft, block, facts.of(block));
          expect(watcher.finish(fromLeft)).toEqual(episodesOf(samples));
        },
      ),
      { numRuns: 200 },
    );
  });

  test('sees something in such logs, so that the tests above compare more than nothing', () => {
    const logs = fc.sample(anyLog, { numRuns: 300, seed: 7 });
    expect(logs.filter((samples) => episodesOf(samples).length > 0).length).toBeGreaterThan(20);
  });
});
