import type { Findings, ZoneFinding } from '../model/findings.js';
import type { ChangeSinceLast, HistoryFindings } from '../model/history-findings.js';
import { HOUR_MS, DAY_MS } from '../model/time-units.js';
import { levelChangesOf } from './level-changes.js';
import { keyOf, type StoredRun } from './stored-run.js';
import { weeksOf } from './weeks.js';

/** A drift or a loss must change by this much to be called worse or better; common practice. */
const OFFSET_STEP_DEGC = 0.5;
const LOSS_STEP_MINUTES_PER_DAY = 2;

/**
 * How a run stands beside the runs before it.
 *
 * @param earlier Runs of the history, any order; a run over the same export is left out.
 * @returns Changes of zones that have or had a fault, offset curves, and the trend by week. Never throws.
 */
export function compareWithHistory(findings: Findings, earlier: readonly StoredRun[]): HistoryFindings {
  const key = keyOf(findings);
  const others = earlier.filter((run) => run.key !== key).map((run) => run.findings);
  const before = others
    .filter(({ window }) => window.end < findings.window.end)
    .sort((a, b) => a.window.end.localeCompare(b.window.end));
  const previous = before.at(-1) ?? null;
  const weeks = weeksOf([...before, findings]);
  return {
    runs: others.length + 1,
    previousEnd: previous?.window.end ?? null,
    changes: previous ? changesOf(findings, before) : [],
    offsets: offsetsOf([...before, findings]),
    weeks,
    levelChanges: levelChangesOf(weeks),
  };
}

/** @param before Earlier runs, at least one, the last one last. */
function changesOf(now: Findings, before: readonly Findings[]): HistoryFindings['changes'] {
  const previous = before.at(-1)!;
  const [nowDays, lastDays] = [daysIn(now), daysIn(previous)];
  return now.zones.flatMap((zone) => {
    const last = zoneIn(previous, zone);
    const told = last && stands(last) ? fromOpen(zone, last, nowDays, lastDays) : fromWell(zone, last, before);
    return told ? [{ zone: zone.zone, machine: zone.machine, ...told }] : [];
  });
}

function zoneIn({ zones }: Findings, { zone, machine }: ZoneFinding): ZoneFinding | null {
  return zones.find((other) => other.zone === zone && other.machine === machine) ?? null;
}

function isFault({ status }: ZoneFinding): boolean {
  return status === 'faulty' || status === 'watch';
}

/** A fault that has not been put right within its log. */
function stands(zone: ZoneFinding): boolean {
  return isFault(zone) && zone.fixed === null;
}

const statusWords: Readonly<Record<ZoneFinding['status'], string>> = {
  faulty: 'faulty',
  watch: 'one to keep an eye on',
  healthy: 'healthy',
  'insufficient-data': 'not to be judged',
};

type Told = { readonly change: ChangeSinceLast; readonly says: string };

/** A zone whose fault stood at the end of the last report. */
function fromOpen(now: ZoneFinding, last: ZoneFinding, nowDays: number, lastDays: number): Told {
  const was = `${now.zone} was ${statusWords[last.status]}`;
  if (now.status === 'insufficient-data') {
    return { change: 'still open', says: `${was}; this log holds too little of it to tell.` };
  }
  if (!isFault(now)) return { change: 'fixed', says: `${was} and shows no fault any more.` };
  if (now.fixed !== null) return { change: 'fixed', says: `${was} and was put right since.` };
  const is = statusWords[now.status];
  if (now.status !== last.status) {
    return { change: now.status === 'faulty' ? 'worse' : 'better', says: `${was} and is ${is} now.` };
  }
  return moved(now, last, nowDays, lastDays) ?? { change: 'still open', says: `${now.zone} is still ${is}.` };
}

/** Two overlapping exports may tell one repair some rows apart. */
const SAME_REPAIR_MS = HOUR_MS;

/** A zone that had no fault at the end of the last report, or was not in it. */
function fromWell(now: ZoneFinding, last: ZoneFinding | null, before: readonly Findings[]): Told | null {
  if (!isFault(now)) return null;
  if (now.fixed !== null) {
    const isTold = Math.abs(Date.parse(now.fixed) - Date.parse(last?.fixed ?? '')) < SAME_REPAIR_MS; // NaN is no repair
    return isTold ? null : { change: 'fixed', says: `A fault of ${now.zone} came and was put right since.` };
  }
  const earlier = before.findLast((run) => {
    const zone = zoneIn(run, now);
    return zone !== null && isFault(zone);
  });
  const is = `${now.zone} is ${statusWords[now.status]}`;
  if (earlier) {
    const day = earlier.window.end.slice(0, 10);
    return { change: 'new', says: `${is} again; it had a fault in the report up to ${day}, too.` };
  }
  return { change: 'new', says: `${is}; ${thenWords(last)}.` };
}

function thenWords(last: ZoneFinding | null): string {
  if (last === null) return 'it was not in the last report';
  return last.status === 'insufficient-data'
    ? 'the last report could not judge it'
    : 'in the last report it had no fault';
}

function moved(now: ZoneFinding, last: ZoneFinding, nowDays: number, lastDays: number): Told | null {
  if (now.offsetDegC !== null && last.offsetDegC !== null) {
    const growth = Math.abs(now.offsetDegC) - Math.abs(last.offsetDegC);
    const says = `Offset of ${now.zone}: ${signedText(last.offsetDegC)} then, ${signedText(now.offsetDegC)} now.`;
    const leastDegC = Math.max(OFFSET_STEP_DEGC, Math.hypot(halfWidthDegC(now), halfWidthDegC(last)));
    if (growth >= leastDegC) return { change: 'worse', says };
    if (growth <= -leastDegC) return { change: 'better', says };
  }
  const lossNow = now.downtimeMinutes / nowDays;
  const lossLast = last.downtimeMinutes / lastDays;
  const says = `${now.zone} cost ${lossLast.toFixed(0)} min a day then, ${lossNow.toFixed(0)} min a day now.`;
  if (lossNow - lossLast >= LOSS_STEP_MINUTES_PER_DAY) return { change: 'worse', says };
  if (lossLast - lossNow >= LOSS_STEP_MINUTES_PER_DAY) return { change: 'better', says };
  return null;
}

/** Half of the limits of an offset, 0 where they are not known: two that overlap by chance have not moved. */
function halfWidthDegC({ offsetBasis }: ZoneFinding): number {
  return offsetBasis ? (offsetBasis.highDegC - offsetBasis.lowDegC) / 2 : 0;
}

/** "+1.2 °C", "−0.4 °C", "0.0 °C". */
function signedText(degC: number): string {
  const size = Math.abs(degC).toFixed(1);
  const sign = Number(size) === 0 ? '' : degC < 0 ? '−' : '+';
  return `${sign}${size} °C`;
}

function daysIn({ window }: Findings): number {
  return Math.max(1 / 24, (Date.parse(window.end) - Date.parse(window.start)) / DAY_MS);
}

/** Two overlapping exports cut one soak at different minutes; a soak takes hours, so this near it is the same one. */
const SAME_SOAK_MS = 7_200_000;

/** Cold-soak offsets of all runs; a soak that two runs saw counts once, as the later run has it. */
function offsetsOf(runs: readonly Findings[]): HistoryFindings['offsets'] {
  const byZone = new Map<string, Curve>();
  for (const { zones } of runs) {
    for (const { zone, machine, soaks } of zones) {
      const key = JSON.stringify([machine, zone]);
      const curve = byZone.get(key) ?? { zone, machine, points: [], placesBySpan: new Map() };
      byZone.set(key, curve);
      for (const { time, offsetDegC } of soaks) addPoint(curve, { time, offsetDegC });
    }
  }
  return [...byZone.values()]
    .filter(({ points }) => points.length > 0)
    .map(({ zone, machine, points }) => ({
      zone,
      machine,
      points: [...points].sort((a, b) => a.time.localeCompare(b.time)),
    }));
}

type OffsetPoint = HistoryFindings['offsets'][number]['points'][number];

interface Curve {
  readonly zone: string;
  readonly machine: string;
  readonly points: OffsetPoint[];
  /** Places of the points by the span of `SAME_SOAK_MS` they lie in, so that a year is not searched for each. */
  readonly placesBySpan: Map<number, number[]>;
}

function addPoint({ points, placesBySpan }: Curve, point: OffsetPoint): void {
  const atMs = Date.parse(point.time);
  const span = Math.floor(atMs / SAME_SOAK_MS);
  const near = [span - 1, span, span + 1].flatMap((other) => placesBySpan.get(other) ?? []);
  const same = near.find((place) => Math.abs(Date.parse(points[place]!.time) - atMs) < SAME_SOAK_MS);
  if (same !== undefined) points[same] = point;
  else placesBySpan.set(span, [...(placesBySpan.get(span) ?? []), points.push(point) - 1]);
}
