import type { Interval } from '../maths/intervals.js';
import type { Claim } from './claim.js';
import type { DowntimeSettings } from './settings.js';

/** A piece of a stop and the claim it goes to; null = no known cause. */
export interface Piece extends Interval {
  readonly claim: Claim | null;
  /** True when the cause was gone and the machine only waited to run again. */
  readonly isRestart: boolean;
}

/**
 * Shares one stop among the claims: first out, first counted. The cause that came first keeps the stop until it is
 * gone, then the earliest of those that still stand takes over; when all are gone the last one keeps the restart,
 * up to `longestRestartMs`. A claim that stood while the machine ran has not stopped it: people run on without a zone
 * that cannot be mended at once. Only the stop in which such a fault ends is its repair.
 *
 * @param stop What stopped the machine must have come at most `lookBackMs` before it.
 * @param claims All claims of the machine that can reach the stop, by start.
 * @param ranUntilMs When the machine last ran before the stop; −Infinity when it had not run yet.
 * @returns Pieces in order that cover the stop exactly once. Never throws.
 */
export function attributeStop(
  stop: Interval,
  claims: readonly Claim[],
  ranUntilMs: number,
  settings: DowntimeSettings,
): Piece[] {
  const { lookBackMs, lookAheadMs, longestRestartMs } = settings;
  const near = claims.filter(({ startMs, faultEndMs }) => startMs < stop.end && faultEndMs >= stop.start - lookBackMs);
  const fresh = near.filter(({ startMs, isQuiet }) => !isQuiet && startMs >= ranUntilMs - lookBackMs);
  const lastResort = near.filter((claim) => isLastResort(claim, stop, ranUntilMs, settings));
  const pieces: Piece[] = [];
  let owner = tripOf(
    fresh.find(({ startMs }) => startMs <= stop.start + lookAheadMs),
    stop,
    settings,
  );
  let at = stop.start;
  while (at < stop.end) {
    if (!owner || owner.faultEndMs <= at) owner = firstStanding(fresh, at) ?? owner;
    const next = firstAfter(fresh, at)?.startMs ?? Infinity;
    if (owner && owner.faultEndMs > at) {
      pieces.push({ start: at, end: Math.min(stop.end, owner.faultEndMs), claim: owner, isRestart: false });
    } else if (owner && owner.faultEndMs + longestRestartMs > at) {
      const end = Math.min(stop.end, owner.faultEndMs + longestRestartMs, next);
      pieces.push({ start: at, end, claim: owner, isRestart: true });
    } else {
      owner = firstStanding(lastResort, at) ?? null;
      if (owner) continue;
      const end = Math.min(stop.end, next, firstAfter(lastResort, at)?.startMs ?? Infinity);
      pieces.push({ start: at, end, claim: null, isRestart: false });
    }
    at = pieces.at(-1)!.end;
  }
  return joined(pieces);
}

/**
 * What explains a stop when nothing fresh does: an alarm with words unknown that came with it, a zone whose reading left
 * its band not long before the machine last ran, one that left it later and that the machine waited for to the end, or a
 * fault that people ran on with and that ends in this stop.
 */
function isLastResort(
  { startMs, endMs, zone, isQuiet }: Claim,
  stop: Interval,
  ranUntilMs: number,
  { lookAheadMs, lookBackMs, outOfBandLeadMs, restartMs, slowestHeatUpMs }: DowntimeSettings,
): boolean {
  if (isQuiet && zone === null) return startMs >= ranUntilMs - lookBackMs && startMs <= stop.start + lookAheadMs;
  if (isQuiet) {
    if (startMs <= stop.start) return startMs >= ranUntilMs - outOfBandLeadMs;
    // Without load, or on its way to a new set point, a sound zone leaves its band for some minutes, too.
    return endMs >= stop.end - restartMs && endMs - startMs >= slowestHeatUpMs;
  }
  return startMs < ranUntilMs - lookBackMs && endMs > stop.start && endMs <= stop.end;
}

/** The claim that stopped the machine; a zone's trip holds it at least until it is seen and reset. */
function tripOf(claim: Claim | undefined, stop: Interval, { resetMs }: DowntimeSettings): Claim | null {
  if (!claim) return null;
  if (claim.zone === null) return claim;
  return { ...claim, faultEndMs: Math.max(claim.faultEndMs, Math.max(stop.start, claim.startMs) + resetMs) };
}

/** Of the claims that stand at a time, the first to have come. */
function firstStanding(claims: readonly Claim[], at: number): Claim | undefined {
  return claims.find(({ startMs, faultEndMs }) => startMs <= at && faultEndMs > at);
}

function firstAfter(claims: readonly Claim[], at: number): Claim | undefined {
  return claims.find(({ startMs }) => startMs > at);
}

function joined(pieces: readonly Piece[]): Piece[] {
  const all: Piece[] = [];
  for (const piece of pieces) {
    const last = all.at(-1);
    if (last && last.claim === piece.claim && last.isRestart === piece.isRestart) {
      all[all.length - 1] = { ...last, end: piece.end };
    } else all.push(piece);
  }
  return all;
}
