import type { PlantDigest } from '../model/digest.js';
import type { Claim } from './claim.js';
import type { OutAlone } from './out-together.js';
import type { DowntimeSettings } from './settings.js';
import { usualLags } from './usual-lag.js';

/** What a claim is called when a zone is too cold together with its machine. */
const TOGETHER = 'several zones too cold';

/** An alarm of a zone too cold, or of its heater. */
export interface ColdAlarm {
  readonly startMs: number;
  readonly endMs: number;
  readonly name: string;
  readonly zone: number;
  /** The heater's own alarm: nothing of the machine as a whole. */
  readonly isHeater: boolean;
}

/**
 * A zone too cold answers for the stop from when it is cold alone; before that the machine is cold as a whole. The last
 * zone to come up after that is only the slowest, unless it takes much longer than the others and than it usually does.
 *
 * @param alarms All of one machine.
 */
export function coldClaims(
  alarms: readonly ColdAlarm[],
  isAlone: OutAlone,
  digest: PlantDigest,
  settings: DowntimeSettings,
): Claim[] {
  const aloneMs = new Float64Array(alarms.length);
  const lags: { readonly zone: number; readonly lagMs: number }[] = [];
  for (let i = 0; i < alarms.length; i++) {
    const { startMs, endMs, zone, isHeater } = alarms[i]!;
    aloneMs[i] = isHeater ? startMs : aloneFrom(alarms[i]!, isAlone, digest, settings);
    if (aloneMs[i]! > startMs) lags.push({ zone, lagMs: endMs - aloneMs[i]! });
  }
  const usualMs = usualLags(lags);
  const claims: Claim[] = []; // one list, since a list for each of a million alarms would take more than the claims
  for (let i = 0; i < alarms.length; i++)
    addClaims(claims, alarms[i]!, aloneMs[i]!, usualMs.get(alarms[i]!.zone) ?? 0, digest, settings);
  return claims;
}

function addClaims(
  claims: Claim[],
  { startMs, endMs, name, zone }: ColdAlarm,
  aloneMs: number,
  usualLagMs: number,
  digest: PlantDigest,
  settings: DowntimeSettings,
): void {
  const togetherUntil = (ms: number) => ({
    startMs,
    endMs: ms,
    name: TOGETHER,
    zone: null,
    faultEndMs: ms,
    isQuiet: false,
  });
  const isSlowest = aloneMs > startMs && endMs - aloneMs < settings.slowestHeatUpMs + usualLagMs;
  if (isSlowest) {
    claims.push(togetherUntil(endMs));
    return;
  }
  const isShort = endMs - startMs < settings.longestRecoveryMs;
  const hotMs = isShort ? hotAgain(zone, startMs, endMs, digest, settings) : endMs;
  if (aloneMs > startMs) claims.push(togetherUntil(aloneMs));
  claims.push({ startMs: aloneMs, endMs, name, zone, faultEndMs: Math.max(endMs, hotMs), isQuiet: false });
}

/**
 * First moment of an alarm from which the zone stays cold alone for as long as others need to follow it down; the end of
 * the alarm when there is none.
 */
function aloneFrom(
  { startMs, endMs, zone }: ColdAlarm,
  isAlone: OutAlone,
  { startMs: logStartMs, periodMs, length }: PlantDigest,
  { othersFollowMs }: DowntimeSettings,
): number {
  const first = Math.max(0, Math.floor((startMs - logStartMs) / periodMs));
  const following = Math.ceil(othersFollowMs / periodMs);
  const last = Math.min(length - 1, Math.max(first, Math.ceil((endMs - logStartMs) / periodMs) - 1));
  let from = first;
  for (let place = first; place <= last && place - from <= following; place++) {
    if (!isAlone(zone, place, -1)) from = place + 1;
  }
  if (from > last) return Math.max(startMs, endMs);
  return Math.max(startMs, logStartMs + from * periodMs);
}

/**
 * When a zone that was too cold let the machine run again. It recovers while the machine stands and falls again under
 * load, so the top of its reading marks the restart, and the restart time before it is not the fault's.
 */
function hotAgain(
  zone: number,
  startMs: number,
  endMs: number,
  digest: PlantDigest,
  settings: DowntimeSettings,
): number {
  const top = topOfRecovery(digest, zone, startMs, endMs + settings.longestRecoveryMs);
  return Number.isNaN(top) ? endMs : top - settings.restartMs;
}

/** End of the minute in which a rising reading turned; NaN when it never rose. */
function topOfRecovery(
  { startMs, periodMs, length, zones }: PlantDigest,
  zone: number,
  fromMs: number,
  toMs: number,
): number {
  const { meanDegC } = zones[zone]!;
  const first = Math.max(0, Math.floor((fromMs - startMs) / periodMs));
  const last = Math.min(length - 1, Math.floor((toMs - startMs) / periodMs));
  let lowest = Infinity;
  for (let i = first; i < last; i++) {
    const now = meanDegC[i]!;
    lowest = Math.min(lowest, Number.isNaN(now) ? Infinity : now);
    if (now > lowest && meanDegC[i + 1]! < now) return startMs + (i + 0.5) * periodMs;
  }
  return NaN;
}
