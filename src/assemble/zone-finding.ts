import { opensOf } from '../detect/shared/opens/opens.js';
import { repairsOf } from '../detect/shared/opens/repair-lives.js';
import { thinSeries } from '../digest/thin.js';
import type { Check } from '../model/check.js';
import type { Evidence } from '../model/detector.js';
import type { ZoneSite } from '../sensors/zone-checks.js';
import type { RepairNote, UncheckedHeat, ZoneFinding } from '../model/findings.js';
import { nextCheck } from '../weigh/next-check.js';
import { symptomsOf } from '../weigh/term.js';
import { presenceOf } from '../weigh/presence.js';
import { likeliestFault } from '../weigh/verdict.js';
import type { Verdict } from '../weigh/weigh-plant.js';
import { checksFor } from './checks/checks-for.js';
import { driftOf, type Drift } from './drift.js';
import { isoOrNull } from './iso.js';
import { alarmMarks, faultMarks, opensByDay } from './marks.js';
import { ohmsOf } from './ohms.js';
import { dutySeries, setpointOf, soakSeries } from './series.js';
import { uncheckedHeat } from './unchecked-heat.js';

/** One zone's part of the findings, but for its rank. */
export function zoneFinding(evidence: Evidence, verdict: Verdict, downtimeMinutes: number): Omit<ZoneFinding, 'rank'> {
  const { zone, span, probabilities } = verdict;
  const isFault = verdict.status === 'faulty' || verdict.status === 'watch';
  const drift = driftOf(verdict);
  const soaks = soakSeries(evidence, zone.index);
  const setpointDegC = setpointOf(evidence, zone.index);
  const { symptoms, unable } = outcomesOf(verdict);
  const heat = uncheckedHeat(verdict);
  const signs = { isShared: isSharedByCard(verdict), isStuckOn: heat === 'stuck-on' };
  const checks = checksFor(zone, verdict, siteOf(evidence, soaks.roomDegC, setpointDegC), signs);
  const next = isFault ? firstCheck(verdict, checks, heat) : null;
  return {
    zone: zone.name,
    machine: zone.machine,
    status: verdict.status,
    probabilities,
    onset: isFault ? isoOrNull(span.onsetMs) : null,
    fixed: isFault ? isoOrNull(span.fixedMs) : null,
    offsetDegC: drift.offsetDegC,
    offsetBasis: drift.offsetBasis,
    ...ohmsOf(zone, verdict, setpointDegC),
    downtimeMinutes,
    symptoms,
    unable,
    checks,
    terms: verdict.terms,
    prior: verdict.prior,
    sensor: zone.sensor,
    wires: zone.wires,
    card: zone.card,
    setpointDegC,
    roomDegC: soaks.roomDegC,
    leavesTolerance: drift.leavesTolerance,
    trend: isFault ? trendOf(verdict, drift) : null,
    uncheckedHeat: heat,
    nextCheck: next?.says ?? null,
    nextCheckId: next?.id ?? null,
    repairs: repairNotes(evidence, zone.index),
    soaks: soaks.points,
    duty: dutySeries(evidence, zone.index),
    opensByDay: opensByDay(opensOf(evidence)[zone.index]!, evidence.plant.timezone ?? 'utc'),
    trace: thinSeries(evidence.digest.zones[zone.index]!, evidence.digest),
    faultMarks: faultMarks(evidence, zone, new Set(symptoms.map(({ detector }) => detector))),
    alarmMarks: alarmMarks(evidence, zone.index),
  };
}

interface FirstCheck {
  readonly id: string;
  readonly says: string;
}

/** Of a heater that does not go off. */
const askSwitch: FirstCheck = {
  id: 'heater-switch',
  says: 'Locked out, heater lead off: measure across the relay or contactor. Is it closed?',
};

/** A heater that does not go off is asked at its switch, zones that fail together at what they share; else what settles most. */
function firstCheck(verdict: Verdict, checks: readonly Check[], heat: UncheckedHeat | null): FirstCheck {
  const { probabilities, evidence, span } = verdict;
  if (heat === 'stuck-on') return askSwitch;
  const supply = checks.find(({ id }) => id === 'card-supply');
  if (supply && likeliestFault(probabilities) === 'input') return supply;
  return nextCheck(probabilities, presenceOf(evidence, span));
}

function isSharedByCard({ evidence }: Verdict): boolean {
  return ['card-events', 'card-offset'].some((detector) => symptomsOf(evidence, detector).length > 0);
}

function siteOf({ plant }: Evidence, soakDegC: number | null, setpointDegC: number | null): ZoneSite {
  return {
    roomDegC: soakDegC ?? plant.roomDegC,
    roomFrom: soakDegC === null ? 'stated' : 'soak',
    setpointDegC: setpointDegC ?? undefined,
    leadGauge: plant.leadGauge,
    leadLengthM: plant.leadLengthM,
  };
}

function outcomesOf({ evidence }: Verdict): Pick<ZoneFinding, 'symptoms' | 'unable'> {
  const outcomes = [...evidence.outcomes.values()];
  return {
    symptoms: outcomes.flatMap(({ symptoms }) =>
      symptoms.map(({ detector, startMs, endMs, count, facts }) => ({
        detector,
        start: new Date(startMs).toISOString(),
        end: new Date(endMs).toISOString(),
        count,
        facts,
      })),
    ),
    unable: outcomes.flatMap(({ detector, unable }) => (unable === undefined ? [] : [{ detector, why: unable }])),
  };
}

/** A repaired fault is better; growing opens, growing steps or a moving drift are worse. */
function trendOf(verdict: Verdict, drift: Drift): ZoneFinding['trend'] {
  if (!Number.isNaN(verdict.span.fixedMs)) return 'better';
  const isGrowing = verdict.terms.some(({ term, value }) => term === 'opens-grow' && value > 0.3);
  return isGrowing || drift.isMoving ? 'worse' : 'steady';
}

function repairNotes(evidence: Evidence, zone: number): RepairNote[] {
  return repairsOf(evidence)[zone]!.map(({ timeMs, from, listedMs }) => {
    const entry = evidence.maintenance.find((line) => line.zone === zone && line.timeMs === listedMs);
    return { time: new Date(timeMs).toISOString(), from, done: entry?.done ?? '', found: entry?.found ?? '' };
  });
}
