import { startDigest } from '../../src/digest/build-digest.js';
import { watchers } from '../../src/detect/index.js';
import { startWatchers } from '../../src/detect/run-watchers.js';
import { AlarmList } from '../../src/model/alarm-list.js';
import type { AlarmSpan, MaintenanceEntry, StopEntry } from '../../src/model/alarm.js';
import type { Evidence } from '../../src/model/detector.js';
import { readingState } from '../../src/model/sample-block.js';
import type { Zone } from '../../src/model/zone.js';
import { makeBlock, makeZone, type MadeSample } from './blocks.js';
import { Random } from './random.js';

export const MONDAY_MS = Date.UTC(2026, 2, 2);
export const MINUTE_MS = 60_000;
export const HOUR_MS = 3_600_000;
export const DAY_MS = 24 * HOUR_MS;

export interface ZoneLogPlan {
  readonly days: number;
  readonly everyS: number;
  readonly seed: number;
  readonly noiseDegC: number;
  readonly resolutionDegC: number;
  readonly setpointDegC: number;
  /** Added to the true temperature before the controller reads it: the loop answers. */
  readonly offsetDegC: (timeMs: number) => number;
  /** Changes what the recorder writes, not what the controller reads. */
  readonly recorded: (sample: MadeSample, before: MadeSample | undefined) => MadeSample | null;
}

const usual: ZoneLogPlan = {
  days: 4,
  everyS: 30,
  seed: 1,
  noiseDegC: 0.08,
  resolutionDegC: 0.1,
  setpointDegC: 180,
  offsetDegC: () => 0,
  recorded: (sample) => sample,
};

/** Heats from 6 to 22 o'clock, runs from 7 with a stop of 4 to 9 minutes in every hour; minutes into the day. */
function scheduleAt(timeMs: number): { isHeating: boolean; isRunning: boolean } {
  const minute = (timeMs % DAY_MS) / MINUTE_MS;
  const isHeating = minute >= 360 && minute < 1320;
  const hour = Math.floor(timeMs / HOUR_MS);
  const stopStart = 10 + ((hour * 7) % 37);
  const minuteOfHour = minute % 60;
  const isStopped = minuteOfHour >= stopStart && minuteOfHour < stopStart + 4 + (hour % 6);
  return { isHeating, isRunning: isHeating && minute >= 420 && !isStopped };
}

/**
 * A healthy zone under PI control unless the plan changes it: a lumped body of 1.2 kW that heats at 0.5 °C/s and loses
 * heat with a time constant of 20 minutes, a little more while product runs.
 */
export function zoneLog(part: Partial<ZoneLogPlan> = {}): MadeSample[] {
  const plan = { ...usual, ...part };
  const random = new Random(plan.seed);
  const samples: MadeSample[] = [];
  const stepS = Math.min(5, plan.everyS);
  let trueDegC = 22;
  let integral = 0;
  let outputPercent = 0;
  const steps = Math.round((plan.days * 86_400) / stepS);
  let before: MadeSample | undefined;
  for (let step = 0; step < steps; step++) {
    const timeMs = MONDAY_MS + step * stepS * 1000;
    const { isHeating, isRunning } = scheduleAt(timeMs);
    const seen = trueDegC + plan.offsetDegC(timeMs) + plan.noiseDegC * random.gauss();
    const readingDegC = Math.round(seen / plan.resolutionDegC) * plan.resolutionDegC;
    const error = plan.setpointDegC - readingDegC;
    const wanted = 4 * error + integral;
    if (isHeating && wanted > 0 && wanted < 100) integral += (error * stepS) / 60;
    if (!isHeating) integral = 0;
    outputPercent = isHeating ? Math.min(100, Math.max(0, wanted)) : 0;
    trueDegC += stepS * ((0.5 * outputPercent) / 100 - ((trueDegC - 22) / 1200) * (isRunning ? 1.15 : 1));
    if ((step * stepS) % plan.everyS !== 0) continue;
    const written = plan.recorded(
      {
        timeMs,
        degC: Number(readingDegC.toFixed(2)),
        setpointDegC: isHeating ? plan.setpointDegC : 0,
        outputPercent: Number(outputPercent.toFixed(1)),
        running: isRunning ? 1 : 0,
      },
      before,
    );
    if (!written) continue;
    samples.push(written);
    before = written;
  }
  return samples;
}

/** The zone as a list entry for logs made above. */
export function zoneOfLog(index: number, part: Partial<Zone> = {}): Zone {
  return makeZone({ index, samplingMs: usual.everyS * 1000, resolutionDegC: usual.resolutionDegC, ...part });
}

/** A sample turned into full-scale high. */
export function opened(sample: MadeSample): MadeSample {
  return { ...sample, degC: 3276.7, state: readingState.aboveScale };
}

export interface EvidenceParts {
  readonly alarms?: readonly AlarmSpan[];
  readonly maintenance?: readonly MaintenanceEntry[];
  readonly stops?: readonly StopEntry[];
  readonly zones?: readonly Zone[];
}

/** Runs digest and watchers over the logs of some zones, as the program does. */
export function evidenceOf(logs: readonly (readonly MadeSample[])[], parts: EvidenceParts = {}): Evidence {
  const zones = parts.zones ?? logs.map((_, index) => zoneOfLog(index));
  const digest = startDigest(zones);
  const watching = startWatchers(zones, watchers);
  logs.forEach((samples, zone) => {
    for (let from = 0; from < samples.length; from += 4096) {
      const block = makeBlock(samples.slice(from, from + 4096), zone);
      digest.take(block);
      watching.take(block);
    }
  });
  return {
    zones,
    digest: digest.finish(),
    episodes: watching.finish().episodes,
    alarms: AlarmList.of(parts.alarms ?? []),
    hasAlarmLog: parts.alarms !== undefined,
    maintenance: parts.maintenance ?? [],
    stops: parts.stops ?? [],
    plant: { zones: [] },
  };
}

/** A sensor alarm of one zone. */
export function sensorAlarm(zone: number, startMs: number, endMs: number): AlarmSpan {
  return {
    startMs,
    endMs,
    acknowledgedMs: NaN,
    source: 'M1',
    message: 'sensor open circuit',
    kind: 'sensor-open',
    zone,
    machine: 'M1',
    priority: null,
  };
}

/** A stop alarm of the machine. */
export function stopAlarm(startMs: number, endMs: number): AlarmSpan {
  return { ...sensorAlarm(0, startMs, endMs), message: 'Guard open', kind: 'machine-stop', zone: null };
}
