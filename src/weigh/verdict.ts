import { causes, type Cause, type Probabilities } from '../model/cause.js';
import type { Symptom } from '../model/detector.js';
import type { TermNote } from '../model/findings.js';
import { MINUTE_MS, HOUR_MS } from '../model/time-units.js';
import { symptomsOf, type Term, type ZoneEvidence } from './term.js';
import { highest, lowest } from '../maths/extremes.js';

/** Beginning and end of what the verdict rests on; NaN = not known. */
export interface FaultSpan {
  readonly onsetMs: number;
  /** When it was put right; NaN while it stands or where the log does not tell. */
  readonly fixedMs: number;
  /** Last sign of it. */
  readonly lastMs: number;
}

const NO_FAULT: FaultSpan = { onsetMs: NaN, fixedMs: NaN, lastMs: NaN };

/** The cause with the highest probability; `none` when nothing beats it. */
export function topCause(probabilities: Probabilities): Cause {
  return causes.reduce((best, cause) => (probabilities[cause] > probabilities[best] ? cause : best), 'none' as Cause);
}

/** The most likely fault, whatever the chance of none. */
export function likeliestFault(probabilities: Probabilities): Exclude<Cause, 'none'> {
  const faults = causes.filter((cause): cause is Exclude<Cause, 'none'> => cause !== 'none');
  return faults.reduce((best, cause) => (probabilities[cause] > probabilities[best] ? cause : best), 'sensor');
}

/** A sign that makes its cause twenty times as likely as no fault is firm ("strong": Kass & Raftery 1995). */
const FIRM_LOG_ODDS = Math.log(20);

/**
 * When the fault began: by the earliest of the firm signs of the likeliest cause and of the loudest one, for a contact
 * jumps long before it parts. When it was repaired: the last repair that no sign of the loudest detector follows, and
 * that holds.
 */
export function faultSpan(
  evidence: ZoneEvidence,
  probabilities: Probabilities,
  notes: readonly TermNote[],
  terms: readonly Term[],
): FaultSpan {
  const cause = likeliestFault(probabilities);
  const loudest = notes.reduce<TermNote | null>(
    (best, note) => ((note.adds[cause] ?? 0) > (best?.adds[cause] ?? 0) ? note : best),
    null,
  );
  if (loudest === null) return NO_FAULT;
  const signsOf = ({ term }: TermNote) => symptomsOf(evidence, terms.find(({ id }) => id === term)?.detector ?? '');
  const symptoms = signsOf(loudest);
  if (symptoms.length === 0) return NO_FAULT;
  const firm = notes.filter(({ adds }) => (adds[cause] ?? 0) > 0 && adds[cause]! - (adds.none ?? 0) >= FIRM_LOG_ODDS);
  const onsetMs = lowest([...symptoms, ...firm.flatMap(signsOf)].map(({ startMs }) => startMs));
  const lastMs = highest(symptoms.map(({ endMs }) => endMs));
  const repairs = symptomsOf(evidence, 'repairs').filter(({ endMs }) => endMs > onsetMs);
  const repair = repairs.at(-1);
  const isFixed = repair !== undefined && repair.endMs >= lastMs - SAME_MOMENT_MS && holds(repair, repairs.length);
  if (isFixed) return { onsetMs, fixedMs: repair.endMs, lastMs };
  return { onsetMs, fixedMs: symptoms.some(isPartReplaced) ? lastMs : NaN, lastMs };
}

/** A shift of good work proves that a part that cannot mend itself was replaced (own choice). */
const PROVEN_HOURS = 8;

/** Of a dead heater, a welded contact, a shorted lead: it was there, and the zone has worked well since for long. */
function isPartReplaced({ startMs, endMs, count, facts }: Symptom): boolean {
  const gapHours = count > 1 ? (endMs - startMs) / count / HOUR_MS : 0;
  return facts.settledHoursSince! >= Math.max(PROVEN_HOURS, SILENT_GAPS * gapHours);
}

/** Silence of three mean gaps has a chance of e⁻³, 5 %, where nothing was mended (Poisson process, from memory). */
const SILENT_GAPS = 3;

/**
 * Whether a fault that came back after earlier ends stays away long enough to be called put right. One that ended for
 * the first time is believed, and so is the maintenance list: somebody did something.
 */
function holds({ facts }: Symptom, repairCount: number): boolean {
  if (repairCount < 2 || facts.listedCount! > 0) return true;
  return facts.afterHours! >= (SILENT_GAPS * facts.beforeHours!) / Math.max(1, facts.opensBeforeCount!);
}

/** A repair and the last bad sample are told from rows a sampling time or two apart. */
const SAME_MOMENT_MS = 5 * MINUTE_MS;
