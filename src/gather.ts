import { correctAlarmsAcrossChange, type SideShift } from './detect/shared/opens/clock-change.js';
import type { MachineShift } from './detect/shared/opens/clock-shift.js';
import { watchers } from './detect/index.js';
import { startWatchers } from './detect/run-watchers.js';
import { startDigest } from './digest/build-digest.js';
import { readEvents } from './intake/read-events.js';
import { pourSamples } from './intake/pour-samples.js';
import type { Evidence } from './model/detector.js';
import type { Gathered } from './model/gathered.js';
import type { PlantFile } from './model/plant-file.js';
import { demandZones, survey, type Survey, type SurveyOptions } from './read/survey/survey.js';
import { clockChanges } from './normalise/clock.js';
import { flagKind } from './normalise/events/flag-kind.js';
import { joinFlagAlarms } from './normalise/events/join-flags.js';
import { unknownSensorTypes, withSensorId } from './sensors/unknown-types.js';

export interface GatherOptions extends SurveyOptions {
  /** Called now and then with bytes read and bytes in all, for a progress bar. */
  readonly onProgress?: (doneBytes: number, totalBytes: number) => void;
}

/**
 * Reads all logs once: samples go to the digest and the watchers block by block and are not kept.
 *
 * @throws LogProblem when nothing readable is found or plant.yaml cannot be used.
 */
export async function gather(paths: readonly string[], options: GatherOptions): Promise<Gathered> {
  const found = await survey(paths, options);
  demandZones(found);
  const digest = startDigest(found.zones);
  const watching = startWatchers(found.zones, watchers);
  const poured = await pourSamples(found, {
    block(block) {
      digest.take(block);
      watching.take(block);
    },
    ...(options.onProgress ? { progress: options.onProgress } : {}),
  });
  const events = await readEvents(found.files, poured.zones, found.plant, {
    ...poured.eventOptions,
    logMs: { start: poured.startMs, end: poured.endMs },
  });
  const watched = watching.finish();
  const evidence: Evidence = {
    zones: poured.zones.map(withSensorId),
    digest: digest.finish(),
    episodes: watched.episodes,
    alarms: events.alarms,
    hasAlarmLog: events.sources.some(({ kind }) => kind === 'alarm') || haveSensorFlags(found),
    maintenance: events.maintenance,
    stops: events.stops,
    plant: onClock(found.plant, found.timezone),
  };
  const changesMs = await clockChanges(found.timezone, poured.startMs, poured.endMs);
  const clockShift = correctAlarmsAcrossChange(evidence, changesMs);
  // Flags stand in rows of readings, on their clock.
  const isOneClock = events.alarms.length === 0 && poured.flagAlarms.length > 0;
  return {
    evidence: { ...evidence, alarms: joinFlagAlarms(clockShift.alarms, poured.flagAlarms, poured.zones) },
    clockShiftSeconds: clockShift.isSure ? clockShift.shiftMs / 1000 : isOneClock ? 0 : null,
    clockShiftsByMachine: clockShift.byMachine.map(({ machine, shiftMs }) => ({
      machine,
      shiftSeconds: shiftMs / 1000,
    })),
    sources: [...poured.sources, ...events.sources],
    problems: [
      ...found.problems,
      ...unknownSensorTypes(found.plant),
      ...poured.problems,
      ...events.problems,
      ...watched.problems,
    ],
    assumptions: [
      ...found.assumptions,
      ...poured.assumptions,
      ...clockShift.byMachine.map(saidOfClock),
      ...saidOfSides(clockShift.bySide),
    ],
    timezone: found.timezone,
  };
}

/** Whether every zone has a flag that a broken sensor would raise. */
function haveSensorFlags({ files, zones }: Survey): boolean {
  const flags = files.flatMap(({ columns, tags }) => [...columns, ...tags]).filter(({ role }) => role === 'alarm');
  const isOfSensor = (kind: string): boolean => kind === 'sensor-open' || kind === 'sensor-fault' || kind === 'other';
  const told = flags.filter(({ name, alarmKind }) => isOfSensor(flagKind(name, alarmKind)));
  const covered = new Set(told.flatMap((column) => column.zones));
  return zones.every(({ index }) => covered.has(index));
}

/** Days and shifts are counted on the clock that was given, as an option or in plant.yaml. */
function onClock(plant: PlantFile, timezone: string | null): PlantFile {
  return timezone === null ? plant : { ...plant, timezone };
}

function saidOfClock({ machine, shiftMs }: MachineShift): string {
  const seconds = Math.round(Math.abs(shiftMs) / 1000);
  return `The alarm clock of ${machine} runs ${seconds} s ${shiftMs < 0 ? 'ahead of' : 'behind'} the temperature log; its alarms were moved by as much.`;
}

function saidOfSides([before, after]: readonly SideShift[]): string[] {
  if (!before || !after) return [];
  const [first, second] = [before, after].map(({ shiftMs }) => Math.round(shiftMs / 1000));
  const day = new Date(after.fromMs).toISOString().slice(0, 10);
  return [
    `The alarm log does not follow the clock change of ${day} as the temperature log does: ${first} s were added to its times before it and ${second} s after it.`,
  ];
}
