/** What the order of zones is made from. */
export interface RankInput {
  /** 1 − P(none). */
  readonly faultShare: number;
  readonly downtimeMinutes: number;
  readonly windowDays: number;
  /** True when the fault stands or grows at the end of the window; false once repaired. */
  readonly isStanding: boolean;
  readonly isWorse: boolean;
  /** The loop cannot hold the zone's heat back now. */
  readonly isHeatUnchecked: boolean;
  /** Days until a drift leaves tolerance; 0 when it has; NaN when there is none. */
  readonly daysToTolerance: number;
}

/** A zone that may overheat comes before all that is only lost: a week has no more hours. */
const DANGER_HOURS = 168;

/**
 * Probability × consequence. Consequence counts production hours lost per week, and what will be lost if nobody goes:
 * a standing fault counts more than a repaired one, a growing one more than a steady one, a drift out of tolerance
 * (product at risk without any stop) as a steady loss of its own. Weights are common practice, no source.
 */
export function actionScore(input: RankInput): number {
  const lostHoursPerWeek = (input.downtimeMinutes / 60) * (7 / Math.max(1, input.windowDays));
  const standing = input.isStanding ? 4 : 0;
  const growing = input.isStanding && input.isWorse ? 2 : 0;
  const productAtRisk = input.daysToTolerance <= 7 ? 2 : 0;
  const danger = input.isHeatUnchecked ? DANGER_HOURS : 0;
  return input.faultShare * (1 + lostHoursPerWeek + standing + growing + productAtRisk + danger);
}
