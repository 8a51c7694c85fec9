import { readingState, type SampleBlock } from '../../src/model/sample-block.js';
import type { Zone } from '../../src/model/zone.js';

/** One sample of a made log; what is left out is not logged (or good, for the state). */
export interface MadeSample {
  readonly timeMs: number;
  readonly degC: number;
  readonly state?: number;
  readonly setpointDegC?: number;
  readonly outputPercent?: number;
  readonly running?: number;
}

/** A zone with nothing stated but its name; columns as given. */
export function makeZone(part: Partial<Zone> = {}): Zone {
  return {
    index: 0,
    name: `Zone ${(part.index ?? 0) + 1}`,
    machine: 'M1',
    sensor: null,
    wires: null,
    card: null,
    heaterW: null,
    toleranceClass: null,
    has: { reading: true, setpoint: true, output: true, running: true },
    samplingMs: 1000,
    resolutionDegC: 0.1,
    ...part,
  };
}

/** All samples of one zone as one block. */
export function makeBlock(samples: readonly MadeSample[], zone = 0): SampleBlock {
  return {
    zone,
    length: samples.length,
    timeMs: Float64Array.from(samples, (s) => s.timeMs),
    readingDegC: Float64Array.from(samples, (s) => s.degC),
    state: Uint8Array.from(samples, (s) => s.state ?? readingState.good),
    setpointDegC: Float64Array.from(samples, (s) => s.setpointDegC ?? NaN),
    outputPercent: Float64Array.from(samples, (s) => s.outputPercent ?? NaN),
    running: Float64Array.from(samples, (s) => s.running ?? NaN),
  };
}

/** The samples cut into blocks at the given places. */
export function makeBlocks(samples: readonly MadeSample[], cuts: readonly number[], zone = 0): SampleBlock[] {
  const edges = [0, ...[...cuts].sort((a, b) => a - b), samples.length];
  return edges.slice(1).map((to, i) => makeBlock(samples.slice(edges[i], to), zone));
}
