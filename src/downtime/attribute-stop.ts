import type { Interval } from '../maths/intervals.js';
import type { Claim } from './claims.js';
import type { DowntimeSettings } from './settings.js';

/** A piece of a stop and the claim it goes to; null = no known cause. */
export interface Piece extends Interval {
  readonly claim: Claim | null;
}

/**
 * Shares one stop among the claims: first out, first counted. The cause that came first keeps the stop until it is
 * gone, then the earliest of those that still stand takes over; when all are gone the last one keeps the restart,
 * up to `longestRestartMs`.
 * A claim that stood while the machine ran has not stopped it and counts only where nothing else does.
 *
 * @param stop What stopped the machine must have come at most `lookBackMs` before it.
 * @param claims All claims of the machine, by start.
 * @param ranUntilMs When the machine last ran before the stop; −Infinity when it had not run yet.
 * @returns Pieces in order that cover the stop exactly once. Never throws.
 */
export function attributeStop(
  stop: Interval,
  claims: readonly Claim[],
  ranUntilMs: number,
  settings: DowntimeSettings,
): Piece[] {
  const near = claims.filter(({ startMs, endMs }) => startMs < stop.end && endMs >= stop.start - settings.lookBackMs);
  const fresh = near.filter(({ startMs }) => startMs >= ranUntilMs - settings.lookBackMs);
  const standing = near.filter((claim) => !fresh.includes(claim));
  const pieces: Piece[] = [];
  let at = stop.start;
  let owner: Claim | null = firstOwner(fresh, stop, settings) ?? null;
  while (at < stop.end) {
    const next: Claim | undefined = owner && owner.endMs > at ? owner : nextOwner(fresh, at);
    if (next && next.startMs <= at) {
      const end = Math.min(stop.end, next.endMs);
      pieces.push({ start: at, end, claim: next });
      owner = next;
      at = end;
    } else {
      const heldUntil = owner ? Math.max(owner.endMs, owner.startMs) + settings.longestRestartMs : Infinity;
      if (owner && heldUntil <= at) owner = null;
      const end = Math.min(stop.end, next?.startMs ?? Infinity, owner ? heldUntil : Infinity);
      pieces.push({ start: at, end, claim: owner ?? longestStanding(standing, at) });
      at = end;
      owner = next ?? owner;
    }
  }
  return joined(pieces);
}

/** The claim that the stop begins with: the earliest that had come by the time the stop was seen. */
function firstOwner(claims: readonly Claim[], stop: Interval, { lookAheadMs }: DowntimeSettings): Claim | undefined {
  return claims.find(({ startMs }) => startMs <= stop.start + lookAheadMs);
}

/** Of the claims that stand at a time or come later, the first to have come. */
function nextOwner(claims: readonly Claim[], at: number): Claim | undefined {
  return claims.find(({ endMs }) => endMs > at);
}

function longestStanding(claims: readonly Claim[], at: number): Claim | null {
  return claims.find(({ startMs, endMs }) => startMs <= at && endMs > at) ?? null;
}

function joined(pieces: readonly Piece[]): Piece[] {
  const all: Piece[] = [];
  for (const piece of pieces) {
    const last = all.at(-1);
    if (last && last.claim === piece.claim) all[all.length - 1] = { ...last, end: piece.end };
    else if (piece.end > piece.start) all.push(piece);
  }
  return all;
}
