import { fileURLToPath } from 'node:url';
import { basename } from 'node:path';
import { analyse } from '../../src/pipeline.js';
import type { Findings, SymptomNote, ZoneFinding } from '../../src/model/findings.js';

export const goldenFile = fileURLToPath(new URL('sample-logs.findings.json', import.meta.url));
const sampleLogs = fileURLToPath(new URL('../../sample-logs', import.meta.url));

/** What is held of the findings on sample-logs: what a reader would notice, rounded to what a reader would see. */
export type Golden = ReturnType<typeof goldenOf>;

/** Reads sample-logs through the whole pipe. */
export async function currentGolden(): Promise<Golden> {
  return goldenOf(await analyse([sampleLogs]));
}

/**
 * The part of the findings that is reviewed. Zones stand in the order of their names, so that a zone that changes rank
 * changes its own lines only.
 */
export function goldenOf(findings: Findings) {
  const zones = [...findings.zones].sort((a, b) => a.zone.localeCompare(b.zone, 'en'));
  const { alarms, downtime } = findings;
  return {
    window: `${minute(findings.window.start)} to ${minute(findings.window.end)}`,
    sources: findings.sources
      .map(
        ({ file, kind, rowsRead, rowsRejected }) =>
          `${basename(file)}: ${kind}, ${rowsRead} rows, ${rowsRejected} left out`,
      )
      .sort(),
    problems: findings.problems.map(({ code, file, line }) =>
      [code, file && basename(file), line].filter((part) => part !== undefined).join(' '),
    ),
    zones: Object.fromEntries(zones.map((zone) => [zone.zone, goldenZone(zone)])),
    downtimeMinutes: {
      stopped: Math.round(downtime.stoppedMinutes),
      planned: Math.round(downtime.plannedMinutes),
      zoneFault: Math.round(downtime.zoneFaultMinutes),
      other: Math.round(downtime.otherMinutes),
      unknown: Math.round(downtime.unknownMinutes),
    },
    alarms: {
      activations: alarms.activations,
      floods: alarms.floods.length,
      clockShiftSeconds: alarms.clockShiftSeconds === null ? null : Math.round(alarms.clockShiftSeconds),
      contradictions: alarms.contradictions.map(({ zone, what, count }) => `${zone}: ${what}, ${count}`),
    },
  };
}

/** A healthy zone needs few lines; what a verdict rests on is written out. */
function goldenZone(zone: ZoneFinding) {
  const isFault = zone.status === 'faulty' || zone.status === 'watch';
  return {
    // The order of healthy zones hangs on the last digits.
    verdict: isFault ? `rank ${zone.rank}, ${zone.status}` : zone.status,
    probabilities: isFault ? shares(zone.probabilities) : `none ${rounded(zone.probabilities.none, 2)}`,
    ...(isFault
      ? {
          onset: minuteOrNull(zone.onset),
          fixed: minuteOrNull(zone.fixed),
          offsetDegC: rounded(zone.offsetDegC, 1),
          seriesOhm: rounded(zone.seriesOhm, 1),
          shuntOhm: rounded(zone.shuntOhm, -2),
          trend: zone.trend,
        }
      : {}),
    downtimeMinutes: Math.round(zone.downtimeMinutes),
    terms: Object.fromEntries(
      zone.terms
        .map(({ term, value }) => [term, rounded(value, 1)] as const)
        .filter(([, value]) => value !== 0)
        .sort(([a], [b]) => a.localeCompare(b, 'en')),
    ),
    symptoms: zone.symptoms.map(symptomText).sort(),
    repairs: zone.repairs.map(({ time, from, done }) => `${minute(time)} ${from}: ${done}`),
    soaks: zone.soaks.length,
    faultMarks: zone.faultMarks?.length ?? 0,
  };
}

function symptomText({ detector, start, end, count }: SymptomNote): string {
  return `${detector}, ${count}: ${minute(start)} to ${minute(end)}`;
}

/** Largest first; shares that round to nothing are left out. */
function shares(probabilities: Readonly<Record<string, number>>): string {
  return Object.entries(probabilities)
    .sort((a, b) => b[1] - a[1])
    .map(([cause, share]) => [cause, rounded(share, 2)!] as const)
    .filter(([, share]) => share > 0)
    .map(([cause, share]) => `${cause} ${share}`)
    .join(', ');
}

function rounded(value: number | null, digits: number): number | null {
  return value === null ? null : Math.round(value * 10 ** digits) / 10 ** digits || 0;
}

function minute(iso: string): string {
  return iso.slice(0, 16).replace('T', ' ');
}

function minuteOrNull(iso: string | null): string | null {
  return iso === null ? null : minute(iso);
}
